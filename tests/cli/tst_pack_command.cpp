#include "command_runner.h"
#include "demo_catalogue.h"

#include <QTest>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace ohmkin;
using Json = nlohmann::json;

/// ohmkin pack: out, in, and rows that both sides have.
class TestPackCommand : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  std::string catalogue_;
  int copies_ = 0;

  test::Ran run(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin() + 1, {"--catalog", catalogue_});
    return test::run(arguments);
  }
  std::string beside(const std::string& name) { return demo_.beside(name.c_str()).string(); }
  /// A layout that the shop has made its own, and a later version of the demo package beside it.
  std::string packWithAConflict() {
    const auto folder = beside("pack-" + std::to_string(copies_));
    const auto out = run({"pack", "export", demoId(), folder, "--version-is", "9.9.9"});
    if (out.exit != 0) qFatal("%s", out.err.c_str());
    const auto kept = run({"layout", "--id", layoutId(), "--name", "as we read it", "--field", "month letter",
                           "--field", "day:00", "--field", "year digit", "--example", "H221", "--example-date",
                           "1981-08-22", "--source", "bench: seen on three heads", "--replace"});
    if (kept.exit != 0) qFatal("%s", kept.err.c_str());
    return folder;
  }
  std::string demoId() { return Json::parse(run({"pack", "list", "--json"}).out)["packs"][0]["id"].get<std::string>(); }
  std::string layoutId() {
    return Json::parse(run({"layout", "--list", "--json"}).out)["layouts"][0]["id"].get<std::string>();
  }
  std::string layoutName() {
    const Json all = Json::parse(run({"layout", "--list", "--json"}).out);
    return all["layouts"][0]["name"].get<std::string>();
  }

 private slots:
  void init() {
    const auto copy = demo_.beside(("pack-" + std::to_string(++copies_) + ".ohmkin").c_str());
    std::filesystem::copy_file(demo_.file(), copy, std::filesystem::copy_options::overwrite_existing);
    catalogue_ = copy.string();
  }

  void whatGoesOutComesInAgain() {
    const std::string zip = beside("out.zip");
    const auto out = run({"pack", "export", demoId(), zip, "--json"});
    QVERIFY2(out.exit == 0, out.err.c_str());
    QVERIFY(Json::parse(out.out)["rows"].get<int>() > 500);
    const auto again = run({"pack", "load", zip, "--json"});
    QVERIFY2(again.exit == 0, again.err.c_str());
    QVERIFY(Json::parse(again.out)["already_there"].get<bool>());
    QCOMPARE(run({"pack", "export", demoId(), zip}).exit, 2);  // nothing is ever replaced
  }

  void rowsThatBothHaveAreShownAndNothingIsChanged() {
    const std::string folder = packWithAConflict();
    const auto before = layoutName();
    const auto asked = run({"pack", "load", folder});
    QCOMPARE(asked.exit, 1);
    QVERIFY(asked.out.find("date_layout:") != std::string::npos);
    QVERIFY(asked.out.find("the shop's") != std::string::npos && asked.out.find("as we read it") != std::string::npos);
    QVERIFY(asked.out.find("Nothing was changed") != std::string::npos);
    QCOMPARE(layoutName(), before);
  }

  void theShopsStaysOrGivesWay_data() {
    QTest::addColumn<QString>("keep");
    QTest::addColumn<bool>("shops");
    QTest::newRow("all the shop's") << "shop" << true;
    QTest::newRow("all the package's") << "pack" << false;
    QTest::newRow("one row the shop's") << "ROW=shop" << true;
    QTest::newRow("one row the package's") << "ROW=pack" << false;
  }
  void theShopsStaysOrGivesWay() {
    QFETCH(QString, keep);
    QFETCH(bool, shops);
    const std::string folder = packWithAConflict();
    const Json conflicts = Json::parse(run({"pack", "load", folder, "--json"}).out)["conflicts"];
    std::vector<std::string> words{"pack", "load", folder};
    for (const auto& conflict : conflicts) {
      QString said = keep;
      words.insert(
          words.end(),
          {"--keep", said.replace("ROW", QString::fromStdString(conflict["row"].get<std::string>())).toStdString()});
    }
    const auto loaded = run(words);
    QVERIFY2(loaded.exit == 0, (loaded.err + loaded.out).c_str());
    QCOMPARE(layoutName() == "as we read it", shops);
  }

  void hostilePackagesAndBadWordsAreRefused() {
    const auto junk = beside("junk.zip");
    std::ofstream(junk, std::ios::binary) << "PK\x03\x04 not a zip";
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{"pack", "load", junk},
                                               {"pack", "load", "/nowhere"},
                                               {"pack", "load"},
                                               {"pack", "frob"},
                                               {"pack", "export", "no-such-pack", beside("x.zip")},
                                               {"pack", "export", "shop", beside("y.zip")}}) {
      const auto ran = run(words);
      QVERIFY2(ran.exit == 2, words.back().c_str());
      QVERIFY(!ran.err.empty() && ran.out.empty());
    }
    const auto keep = run({"pack", "load", packWithAConflict(), "--keep", "mine"});
    QCOMPARE(keep.exit, 2);
  }
};

QTEST_APPLESS_MAIN(TestPackCommand)
#include "tst_pack_command.moc"
