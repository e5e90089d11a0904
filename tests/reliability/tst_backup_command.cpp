#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

using namespace ohmkin;
using Json = nlohmann::json;

/// ohmkin backup, from the first copy to a catalogue that is lost and put back.
class BackupCommandTest : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  std::string file_;

  test::Ran run(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"backup", "--catalog", file_});
    return test::run(arguments);
  }

 private slots:
  void init() {
    const auto copy = demo_.beside("backed-up.ohmkin");
    std::filesystem::remove_all(demo_.beside("backed-up.ohmkin.backups"));
    std::filesystem::copy_file(demo_.file(), copy, std::filesystem::copy_options::overwrite_existing);
    file_ = copy.string();
  }

  void withoutAnyItSaysHowToMakeOne() {
    const auto listed = run({});
    QCOMPARE(listed.exit, 1);  // no answer, as the JSON section of DEVELOPERS.md has it
    QVERIFY2(listed.out.starts_with("No backup of " + file_ + " yet. 'ohmkin backup make' makes one"),
             listed.out.c_str());
    QCOMPARE(run({"check"}).exit, 1);
    const auto asJson = run({"--json"});
    QCOMPARE(asJson.exit, 1);
    QVERIFY(Json::parse(asJson.out)["backups"].empty());
    const auto restored = run({"restore"});
    QCOMPARE(restored.exit, 2);
    QVERIFY2(restored.err.find(file_ + ".backups: found no backup, expected one; 'ohmkin backup make' makes it") !=
                 std::string::npos,
             restored.err.c_str());
    QCOMPARE(run({"nonsense"}).exit, 2);
  }

  void aLostCatalogueIsPutBack() {
    const auto made = run({"make", "--json"});
    QVERIFY2(made.exit == 0, made.err.c_str());
    QCOMPARE(Json::parse(made.out)["backup"]["reason"].get<std::string>(), std::string("by hand"));
    QCOMPARE(Json::parse(run({"list", "--json"}).out)["backups"].size(), std::size_t{1});
    QVERIFY(Json::parse(run({"check", "--json"}).out)["backups"][0]["holds"].get<bool>());
    std::ofstream(file_, std::ios::trunc) << "spilt coffee";
    QCOMPARE(test::run({"match", "--catalog", file_, "1968"}).exit, 2);
    const auto restored = run({"restore", "newest"});
    QVERIFY2(restored.exit == 0, restored.err.c_str());
    QVERIFY2(restored.out.find("The file that was there is kept as ") != std::string::npos, restored.out.c_str());
    QVERIFY(test::run({"match", "--catalog", file_, "1968", "ridgeway", "utility"}).exit != 2);
  }

  void aDamagedBackupIsNamedAndNotPutBack() {
    const auto file = Json::parse(run({"make", "--json"}).out)["backup"]["file"].get<std::string>();
    std::filesystem::resize_file(file, std::filesystem::file_size(file) - 1);
    const auto checked = run({"check"});
    QCOMPARE(checked.exit, 1);
    QVERIFY2(checked.out.find("damaged: found other bytes than were written") != std::string::npos,
             checked.out.c_str());
    const auto restored = run({"restore", std::filesystem::path(file).filename().string()});
    QCOMPARE(restored.exit, 2);
    QVERIFY2(restored.err.find(file) != std::string::npos, restored.err.c_str());
  }

  void whatReadsIsSalvaged() {
    const auto into = demo_.beside("salvaged.ohmkin").string();
    std::filesystem::remove(into);
    const auto salvaged = run({"salvage", into});
    QVERIFY2(salvaged.exit == 0, salvaged.err.c_str());
    QVERIFY2(salvaged.out.find("Nothing was lost.") != std::string::npos, salvaged.out.c_str());
    QCOMPARE(test::run({"match", "--catalog", into, "1968", "ridgeway", "utility", "--json"}).out,
             test::run({"match", "--catalog", file_, "1968", "ridgeway", "utility", "--json"}).out);
    QCOMPARE(run({"salvage", into}).exit, 2);
    QCOMPARE(run({"salvage"}).exit, 2);
  }
};

QTEST_APPLESS_MAIN(BackupCommandTest)
#include "tst_backup_command.moc"
