#include "demo_catalogue.h"

#include <catalog/bench_writer.h>
#include <catalog/families.h>
#include <catalog/pack_writer.h>
#include <catalog/senders.h>
#include <exchange/zip_package.h>
#include <rapidcheck.h>
#include <sqlite3.h>
#include <workflow/export_pack.h>
#include <workflow/load_pack.h>
#include <QDir>
#include <QtTest>
#include <map>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;

namespace {

class Folder {
 public:
  [[nodiscard]] std::filesystem::path path(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }

 private:
  QTemporaryDir folder_;
};

/// Rows as only somebody at the file could put them.
void run(const std::filesystem::path& file, const std::string& sql) {
  sqlite3* handle = nullptr;
  char* error = nullptr;
  if (sqlite3_open(file.c_str(), &handle) != SQLITE_OK ||
      sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &error) != SQLITE_OK)
    qFatal("%s", error);
  sqlite3_close(handle);
}

QString ask(const std::filesystem::path& file, const char* sql) {
  sqlite3* handle = nullptr;
  sqlite3_stmt* statement = nullptr;
  sqlite3_open(file.c_str(), &handle);
  if (sqlite3_prepare_v2(handle, sql, -1, &statement, nullptr) != SQLITE_OK) qFatal("%s", sqlite3_errmsg(handle));
  sqlite3_step(statement);
  QString text = QString::fromUtf8(reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)));
  sqlite3_finalize(statement);
  sqlite3_close(handle);
  return text;
}

using Files = std::map<std::string, std::string>;

Files filesOf(const workflow::ExportedPack& pack) {
  Files files;
  for (const auto& file : pack.files) files[file.name] = file.text;
  return files;
}

workflow::ExportedPack exported(const Catalogue& catalogue, const workflow::PackToExport& asked) {
  auto pack = workflow::exportPack(catalogue, asked);
  if (!pack) qFatal("%s", pack.error().text().c_str());
  return *std::move(pack);
}

exchange::PackageSource sourceOf(const workflow::ExportedPack& pack) {
  std::vector<exchange::PackageFile> views;
  views.reserve(pack.files.size());
  for (const auto& file : pack.files) views.push_back({file.name, file.text});
  return exchange::PackageSource::memory(std::move(views));
}

workflow::Loading loadFrom(Catalogue& catalogue, const std::filesystem::path& path) {
  const auto package = exchange::PackageAt::open(path);
  if (package) return workflow::loadPack(catalogue, package->source(), "Ann");
  exchange::Complaints complaints;
  complaints.add(package.error());
  return tl::make_unexpected(std::move(complaints));
}

std::string demoId(const Catalogue& catalogue) { return catalog::packs(catalogue).front().id; }

/// The file again with `from` replaced in one of its tables, as a package's next version has it.
workflow::ExportedPack nextVersion(workflow::ExportedPack pack, const std::string& file, const std::string& from,
                                   const std::string& to) {
  for (auto& one : pack.files) {
    if (one.name == file) {
      const auto at = one.text.find(from);
      if (at == std::string::npos) qFatal("no %s in %s", from.c_str(), file.c_str());
      one.text.replace(at, from.size(), to);
    }
    if (one.name == "datapackage.json") {
      const std::string version = "\"version\": \"" + pack.version + "\"";
      one.text.replace(one.text.find(version), version.size(), "\"version\": \"next\"");
    }
  }
  return pack;
}

constexpr const char* kSmallPack = R"sql(
INSERT INTO pack VALUES ('p', 'A pack', '1', 'CC0-1.0', '2020-01-01T00:00:00Z');
INSERT INTO source VALUES ('d', 'demo', 'made up', 0.5, 'p');
INSERT INTO thread VALUES ('M12x1.5', 'ISO 261', 'M', 60, 1.5, 12, 0, 'd', 'p');
INSERT INTO terminal VALUES ('blade', 'blade 6.3 mm', 'blade', 6.3, 1, 'flat', 'd', 'p');
INSERT INTO family (id, name, measurand, direction, source, pack) VALUES ('fa', 'Family A', 'coolant temperature', 'falling', 'd', 'p');
INSERT INTO sender (id, name, kind, family, thread, terminal, grounding, source, pack) VALUES ('SN-1', 'one', 'variable sender', 'fa', 'M12x1.5', 'blade', 'case', 'd', 'p'),
  ('SN-2', 'two', 'variable sender', 'fa', 'M12x1.5', 'blade', 'case', 'd', 'p');
INSERT INTO gauge (id, name, family, movement, key_off, low_stop, high_stop, source, pack) VALUES ('g1', 'Gauge', 'fa', 'unknown', 'stays', -50, 50, 'd', 'p');
INSERT INTO dial_mark VALUES ('g1', 1, 'cold', 'C', 40, -45, 'p'), ('g1', 2, 'hot', 'H', 120, 45, 'p');
)sql";

constexpr const char* kShopsOwn =
    "UPDATE sender SET name = 'ours', hex = 19.5, pack = 'shop' WHERE id = 'SN-1';"
    "UPDATE gauge SET pack = 'shop' WHERE id = 'g1'; DELETE FROM dial_mark WHERE gauge = 'g1';"
    "INSERT INTO dial_mark VALUES ('g1', 1, 'cold', 'ours', 50, -40, 'shop')";

}  // namespace

class ExportPackTest : public QObject {
  Q_OBJECT
 private slots:
  void theDemoSurvivesARoundTripByteForByte();
  void folderAndZipLoadAlike();
  void anyTextSurvives();
  void theShopsOwnRowsGoOutUnderANameAndComeBack();
  void benchCurvesGoOutWithTheShopsRows();
  void whatCannotBeExportedIsRefused();
  void conflictsAreShownSideBySide();
  void theShopsRowStaysUnlessItIsToGiveWay();
  void aRowThatGivesWayTakesItsPartsAlong();
  void choicesAreTakenForAVersionThatIsThere();
  void aMeasuredRunOutlivesTheCurveThatGaveWay();
  void aBadZipIsComplainedOf();

 private:
  test::DemoCatalogue demo_;
};

void ExportPackTest::theDemoSurvivesARoundTripByteForByte() {
  const Folder folder;
  const Catalogue catalogue = demo_.open();
  const auto first = exported(catalogue, {demoId(catalogue), "", "", "", ""});
  QVERIFY(first.rows > 500 && first.needs.empty());
  Catalogue empty = Catalogue::create(folder.path("empty.ohmkin"));
  const auto loaded = workflow::loadPack(empty, sourceOf(first), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QCOMPARE(loaded->rows(), first.rows);
  const auto second = exported(empty, {first.id, "", "", "", ""});
  QVERIFY(filesOf(first) == filesOf(second));
}

void ExportPackTest::folderAndZipLoadAlike() {
  const Folder folder;
  const Catalogue catalogue = demo_.open();
  const workflow::PackToExport asked{demoId(catalogue), "", "", "", ""};
  for (const char* target : {"pack", "pack.zip"}) {
    const auto pack = workflow::exportPackTo(catalogue, asked, folder.path(target));
    if (!pack) QFAIL(pack.error().text().c_str());
    Catalogue empty = Catalogue::create(folder.path(std::string(target) + ".ohmkin"));
    const auto loaded = loadFrom(empty, folder.path(target));
    if (!loaded) QFAIL(loaded.error().text().c_str());
    QCOMPARE(loaded->rows(), pack->rows);
    QCOMPARE(workflow::exportPackTo(catalogue, asked, folder.path(target)).error().list().front().code,
             std::string("file-exists"));
  }
}

void ExportPackTest::anyTextSurvives() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, kSmallPack);
  Catalogue other = Catalogue::create(folder.path("b"));
  int version = 1;
  QVERIFY(rc::check("names with signs, quotes, commas and letters of all kinds", [&] {
    const auto part =
        rc::gen::elementOf(std::vector<std::string>{"=", "'", "\"", ",", "-", "@", "+", "a", "1", "é", "Ω", " x", ";"});
    std::string name;
    for (const std::string& piece : *rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(part)))
      name += piece;
    RC_PRE(name.front() != ' ');
    const double ohms = *rc::gen::map(rc::gen::inRange(1, 1'000'000), [](int i) { return i / 977.0; });
    std::string quoted;
    for (const char c : name) quoted += c == '\'' ? std::string("''") : std::string(1, c);
    run(file, "UPDATE sender SET name = '" + quoted + "', reach = " + std::to_string(ohms) +
                  "; UPDATE pack SET version = " + std::to_string(++version) + " WHERE id = 'p'");
    const auto first = exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""});
    const auto loaded = workflow::loadPack(other, sourceOf(first), "test");
    RC_ASSERT(loaded.has_value() && !loaded->alreadyThere);
    RC_ASSERT(catalog::sender(other, catalog::SenderKey{"SN-1"})->name == name);
    RC_ASSERT(filesOf(exported(other, {"p", "", "", "", ""})) == filesOf(first));
  }));
}

void ExportPackTest::theShopsOwnRowsGoOutUnderANameAndComeBack() {
  const Folder folder;
  { Catalogue::create(folder.path("a")); }
  run(folder.path("a"), std::string(kSmallPack) + kShopsOwn + "; INSERT INTO stock VALUES ('SN-2', 'A', 3, 0, 'shop')");
  const Catalogue catalogue = Catalogue::open(folder.path("a"), Access::readOnly);
  const auto first = exported(catalogue, {"shop", "our-bench", "What we know", "2024-05", ""});
  QCOMPARE(first.rows, std::size_t{4});
  QVERIFY(first.needs == std::vector<std::string>{"p"});
  QCOMPARE(first.sentence(), std::string("'our-bench' 2024-05: 4 rows in 4 tables. It loads where these are: p."));

  // Elsewhere it is a pack of its own: rows of the pack it leads to stay, those of the same key clash.
  { Catalogue::create(folder.path("b")); }
  run(folder.path("b"),
      std::string(kSmallPack) + "DELETE FROM dial_mark; DELETE FROM gauge; DELETE FROM sender WHERE id = 'SN-1'");
  Catalogue other = Catalogue::open(folder.path("b"), Access::readWrite);
  const auto loaded = workflow::loadPack(other, sourceOf(first), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QVERIFY(filesOf(exported(other, {"our-bench", "", "", "", ""})) == filesOf(first));
  Catalogue bare = Catalogue::create(folder.path("c"));
  QCOMPARE(workflow::loadPack(bare, sourceOf(first), "test").error().list().front().code,
           std::string("reference-dangling"));
}

void ExportPackTest::benchCurvesGoOutWithTheShopsRows() {
  const Folder folder;
  { Catalogue::create(folder.path("a")); }
  run(folder.path("a"), kSmallPack);
  Catalogue catalogue = Catalogue::open(folder.path("a"), Access::readWrite);
  auto writer =
      catalog::BenchWriter::begin(catalogue, {"=evil.csv", std::string(64, 'e'), 1, ""}, {"Ann", "meter", "bath"});
  const auto number = writer->beginRun({"SN-1", "-7", "", {}, "", ""});
  catalog::BenchCurve curve;
  curve.valid = {celsius(20), celsius(90)};
  curve.samples = {{celsius(20), ohms(700), catalog::RunDirection::heating},
                   {celsius(90), ohms(95), catalog::RunDirection::cooling}};
  QVERIFY(writer->addCurve(number, curve));
  writer->keep();
  const auto pack = exported(catalogue, {"shop", "our-bench", "", "1", ""});
  QVERIFY(filesOf(pack).at("curve.csv").find(",'-7,") != std::string::npos);
  run(folder.path("a"),
      "DELETE FROM bench_run; DELETE FROM sample; DELETE FROM curve; DELETE FROM source WHERE kind = 'bench'");
  const auto loaded = workflow::loadPack(catalogue, sourceOf(pack), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  const auto back = catalog::benchCurves(catalogue, catalog::SenderKey{"SN-1"}, "-7");
  QCOMPARE(back.size(), std::size_t{1});
  QCOMPARE(back.front().samples.size(), std::size_t{2});
}

void ExportPackTest::whatCannotBeExportedIsRefused() {
  const Folder folder;
  const Catalogue catalogue = Catalogue::create(folder.path("a"));
  const auto code = [&](const workflow::PackToExport& asked) {
    return workflow::exportPack(catalogue, asked).error().list().front().code;
  };
  QCOMPARE(code({"none", "", "", "", ""}), std::string("pack-unknown"));
  QCOMPARE(code({"shop", "", "", "1", ""}), std::string("pack-not-named"));
  QCOMPARE(code({"shop", "shop", "", "1", ""}), std::string("pack-not-named"));
  QCOMPARE(code({"shop", "ours", "", "", ""}), std::string("pack-not-named"));
  QCOMPARE(code({"shop", "ours", "", "1", ""}), std::string("pack-empty"));
}

void ExportPackTest::conflictsAreShownSideBySide() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, kSmallPack);
  const auto pack = exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""});
  QVERIFY(workflow::conflictsWith(Catalogue::open(file, Access::readOnly), sourceOf(pack))->empty());
  run(file, kShopsOwn);
  const Catalogue catalogue = Catalogue::open(file, Access::readOnly);
  const auto conflicts = workflow::conflictsWith(catalogue, sourceOf(pack));
  if (!conflicts) QFAIL(conflicts.error().text().c_str());
  QCOMPARE(conflicts->size(), std::size_t{2});
  const auto& sender = (*conflicts)[0];
  QVERIFY(sender.row == (workflow::RowName{"sender", {"SN-1"}}));
  QCOMPARE(
      sender.sentence(),
      std::string("sender SN-1: name is 'ours' in the shop, 'one' in the package; hex is '19.5' in the shop, '' in "
                  "the package."));
  QCOMPARE(std::count_if(sender.cells.begin(), sender.cells.end(), [](const auto& c) { return c.differs(); }),
           std::ptrdiff_t{2});
  const auto& gauge = (*conflicts)[1];
  QVERIFY(gauge.row == (workflow::RowName{"gauge", {"g1"}}));
  QCOMPARE(gauge.sentence(), std::string("gauge g1: 1 rows of dial_mark in the shop, 2 in the package."));
}

void ExportPackTest::theShopsRowStaysUnlessItIsToGiveWay() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, kSmallPack);
  const auto pack = nextVersion(exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""}), "sender.csv",
                                "SN-2,two", "SN-2,deux");
  run(file, kShopsOwn);
  run(file, "UPDATE sender SET name = 'ours too', pack = 'shop' WHERE id = 'SN-2'");
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  const auto loaded = workflow::loadPack(catalogue, sourceOf(pack), "Ann", {{"sender", {"SN-2"}}});
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QCOMPARE(ask(file, "SELECT group_concat(id || ' ' || name || ' ' || pack) FROM sender"),
           QString("SN-1 ours shop,SN-2 deux p"));
  QVERIFY(QString::fromStdString(loaded->sentence()).endsWith(" 1 of the shop's own rows gave way."));
  QVERIFY(ask(file, "SELECT before FROM change_log WHERE what = 'shop row gave way'")
              .startsWith("sender: id=SN-2; name=ours too; kind=variable sender;"));
  QCOMPARE(ask(file, "SELECT group_concat(text) FROM dial_mark"), QString("ours"));
}

void ExportPackTest::aRowThatGivesWayTakesItsPartsAlong() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, kSmallPack);
  const auto pack = nextVersion(exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""}), "gauge.csv",
                                "Gauge", "Renamed");
  run(file, kShopsOwn);
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  QVERIFY(workflow::loadPack(catalogue, sourceOf(pack), "Ann", {{"gauge", {"g1"}}}));
  QCOMPARE(ask(file, "SELECT group_concat(text || ' ' || pack) FROM dial_mark"), QString("C p,H p"));
  QCOMPARE(ask(file, "SELECT name FROM gauge"), QString("Renamed"));
  QCOMPARE(ask(file, "SELECT name FROM sender WHERE id = 'SN-1'"), QString("ours"));
  QCOMPARE(ask(file, "SELECT count(*) FROM pragma_foreign_key_check"), QString("0"));
}

void ExportPackTest::choicesAreTakenForAVersionThatIsThere() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, kSmallPack);
  const auto pack = exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""});
  run(file, kShopsOwn);
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  QVERIFY(workflow::loadPack(catalogue, sourceOf(pack), "Ann")->alreadyThere);
  QVERIFY(!workflow::loadPack(catalogue, sourceOf(pack), "Ann", {{"sender", {"SN-1"}}})->alreadyThere);
  QCOMPARE(ask(file, "SELECT name || pack FROM sender WHERE id = 'SN-1'"), QString("onep"));
  QVERIFY(workflow::conflictsWith(catalogue, sourceOf(pack))->size() == 1);
}

void ExportPackTest::aMeasuredRunOutlivesTheCurveThatGaveWay() {
  const Folder folder;
  const auto file = folder.path("a");
  { Catalogue::create(file); }
  run(file, std::string(kSmallPack) +
                "INSERT INTO curve (id, sender, model, coefficients, valid_low, valid_high, source, pack) VALUES ('c', "
                "'SN-1', 'beta', '620 313.15 3720', 20, 90, 'd', 'p')");
  const auto pack = exported(Catalogue::open(file, Access::readOnly), {"p", "", "", "", ""});
  run(file,
      "UPDATE curve SET floor = 0.1, pack = 'shop'; INSERT INTO bench_run (part, at, who, meter, bath, rows, curve) "
      "VALUES ('SN-1', '', '', '', '', 0, 'c')");
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  QVERIFY(workflow::loadPack(catalogue, sourceOf(nextVersion(pack, "terminal.csv", "flat", "thin")), "Ann",
                             {{"curve", {"c"}}}));
  QCOMPARE(ask(file, "SELECT curve FROM bench_run"), QString("c"));  // the package's now
  // The next version no longer has it.
  run(file, "UPDATE pack SET version = '0' WHERE id = 'p'");
  auto without = pack;
  for (auto& one : without.files)
    if (one.name == "curve.csv") one.text = one.text.substr(0, one.text.find("\r\n") + 2);
  const auto loaded = workflow::loadPack(catalogue, sourceOf(without), "Ann");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QCOMPARE(ask(file, "SELECT count(*) || coalesce(max(curve), '-') FROM bench_run"), QString("1-"));
  QCOMPARE(ask(file, "SELECT count(*) FROM pragma_foreign_key_check"), QString("0"));
}

void ExportPackTest::aBadZipIsComplainedOf() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  QFile file(QString::fromStdString(folder.path("bad.zip").string()));
  QVERIFY(file.open(QIODevice::WriteOnly) && file.write("nothing") > 0);
  file.close();
  QCOMPARE(loadFrom(catalogue, folder.path("bad.zip")).error().list().front().code, std::string("zip-unreadable"));
  QCOMPARE(loadFrom(catalogue, folder.path("none")).error().list().front().code, std::string("file-missing"));
}

QTEST_APPLESS_MAIN(ExportPackTest)
#include "tst_export_pack.moc"
