#include "hostile_zip.h"

#include <exchange/csv.h>
#include <exchange/formula_guard.h>
#include <exchange/package_writer.h>
#include <exchange/zip_package.h>
#include <rapidcheck.h>
#include <QtTest>
#include <ctime>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace ohmkin;
using namespace ohmkin::exchange;
using nlohmann::json;

namespace {

class Folder {
 public:
  [[nodiscard]] std::filesystem::path path(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  [[nodiscard]] std::filesystem::path write(const std::string& name, const QByteArray& bytes) const {
    QFile file(folder_.filePath(QString::fromStdString(name)));
    if (!file.open(QIODevice::WriteOnly)) qFatal("cannot write");
    file.write(bytes);
    return path(name);
  }
  [[nodiscard]] QStringList names() const {
    return QDir(folder_.path()).entryList(QDir::AllEntries | QDir::NoDotAndDotDot | QDir::Hidden, QDir::Name);
  }

 private:
  QTemporaryDir folder_;
};

std::string bytes(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

Table tableOf(const char* name, std::vector<std::string> columns, std::vector<Cell> cells) {
  Table table;
  table.definition = tableDefinition(name);
  table.file = std::string(name) + ".csv";
  table.columns = std::move(columns);
  table.cells = std::move(cells);
  for (std::size_t i = 0; i < table.cells.size() / table.columns.size(); ++i) table.lines.push_back(i + 2);
  return table;
}

Cell text(const char* t) { return Cell{std::string(t)}; }

/// Two tables; the name of the make is the caller's.
Package package(const std::string& name = "Tarn") {
  Package p;
  p.descriptor = {"small", "Small", "1.0.0", "CC BY 4.0, ODbL-1.0", {}};
  p.tables.push_back(tableOf("source", {"id", "kind", "citation", "confidence"},
                             {text("d"), text("demo"), text("say \"made up\", twice"), Cell{0.5}}));
  p.tables.push_back(tableOf("make", {"id", "name"}, {text("m"), Cell{name}}));
  return p;
}

std::vector<WrittenFile> written(const Package& p) {
  auto files = writePackage(p);
  if (!files) qFatal("%s", files.error().text().c_str());
  return *std::move(files);
}

Expected<Package> readBack(const PackageSource& source) {
  auto read = readPackage(source, [](std::string_view, std::string_view) { return true; });
  if (!read) return tl::make_unexpected(read.error().list().front());
  return *std::move(read);
}

QString openingZip(const std::filesystem::path& file, const ZipPackage::Limits& limits = {}) {
  const auto zip = ZipPackage::open(file, limits);
  return zip ? QString("opened") : QString::fromStdString(zip.error().code);
}

}  // namespace

class PackageWriterTest : public QObject {
  Q_OBJECT
 private slots:
  void whatIsWrittenReadsBack();
  void theDescriptorIsATabularDataPackage();
  void formulasAreTextToASpreadsheetAndComeBack_data();
  void formulasAreTextToASpreadsheetAndComeBack();
  void everyTextSurvivesItsGuard();
  void numbersStayNumbers();
  void whatCouldNotBeReadAgainIsNotWritten();
  void aReferenceOutsideThePackageIsNotPromised();
  void folderAndZipHoldTheSame();
  void aZipIsTheSameWheneverItIsWritten();
  void nothingIsReplaced();
  void aFolderInsideTheZipIsFine();
  void hostileZipsAreRefused_data();
  void hostileZipsAreRefused();
  void aBombIsRefused();
  void aDamagedZipIsRefused();
};

void PackageWriterTest::whatIsWrittenReadsBack() {
  const auto files = written(package());
  QCOMPARE(files.size(), std::size_t{3});
  QCOMPARE(files[1].text, std::string("id,kind,citation,confidence\r\nd,demo,\"say \"\"made up\"\", twice\",0.5\r\n"));
  std::vector<PackageFile> views;
  views.reserve(files.size());
  for (const auto& file : files) views.push_back({file.name, file.text});
  const auto back = readBack(PackageSource::memory(views));
  if (!back) QFAIL(back.error().sentence().c_str());
  QVERIFY(back->tables[0].cells == package().tables[0].cells);
  QCOMPARE(back->descriptor.licence, std::string("CC BY 4.0, ODbL-1.0"));
  QCOMPARE(back->descriptor.title, std::string("Small"));
}

/// specs.frictionlessdata.io: Tabular Data Package, Tabular Data Resource, Table Schema, licenses. By their text; the
/// published JSON schemas are not at hand here.
void PackageWriterTest::theDescriptorIsATabularDataPackage() {
  const json document = json::parse(written(package())[0].text);
  QVERIFY(document["profile"] == "tabular-data-package");
  QVERIFY(QRegularExpression("^[-a-z0-9._/]+$").match(QString::fromStdString(document["name"])).hasMatch());
  for (const auto& licence : document["licenses"])
    QVERIFY(QRegularExpression("^[-a-zA-Z0-9._]+$").match(QString::fromStdString(licence["name"])).hasMatch());
  QVERIFY(document["licenses"][0]["title"] == "CC BY 4.0" && document["licenses"][1]["name"] == "ODbL-1.0");
  const std::set<std::string> types{"string", "number", "integer", "boolean", "date"};
  const std::set<std::string> constraints{"required", "minimum", "maximum", "enum", "pattern"};
  QCOMPARE(document["resources"].size(), std::size_t{2});
  for (const auto& resource : document["resources"]) {
    QVERIFY(resource["profile"] == "tabular-data-resource");
    QVERIFY(resource["encoding"] == "utf-8");
    QVERIFY(resource["path"].get<std::string>() == resource["name"].get<std::string>() + ".csv");
    QVERIFY(resource["schema"]["missingValues"] == json::array({""}));
    std::set<std::string> names;
    for (const auto& field : resource["schema"]["fields"]) {
      QVERIFY(types.contains(field["type"]));
      names.insert(field["name"].get<std::string>());
      const json said = field.value("constraints", json::object());
      for (const auto& [name, value] : said.items()) QVERIFY2(constraints.contains(name), name.c_str());
    }
    for (const auto& key : resource["schema"]["primaryKey"]) QVERIFY(names.contains(key));
  }
}

void PackageWriterTest::formulasAreTextToASpreadsheetAndComeBack_data() {
  QTest::addColumn<QString>("name");
  QTest::addColumn<QString>("cell");
  // OWASP, "CSV Injection": cells beginning with these; tab and carriage return cannot be in a package's text at all.
  QTest::newRow("equals") << "=cmd|' /C calc'!A0"
                          << "'=cmd|' /C calc'!A0";
  QTest::newRow("plus") << "+1+2"
                        << "'+1+2";
  QTest::newRow("minus") << "-2+3"
                         << "'-2+3";
  QTest::newRow("at") << "@SUM(A1)"
                      << "'@SUM(A1)";
  QTest::newRow("one that was guarded before") << "'=1"
                                               << "''=1";
  QTest::newRow("an apostrophe of its own") << "'tis"
                                            << "'tis";
  QTest::newRow("a sign inside") << "a-b=c"
                                 << "a-b=c";
  QTest::newRow("a comma beside it") << "=1,2"
                                     << "\"'=1,2\"";
}

void PackageWriterTest::formulasAreTextToASpreadsheetAndComeBack() {
  QFETCH(QString, name);
  QFETCH(QString, cell);
  const auto files = written(package(name.toStdString()));
  QCOMPARE(QString::fromStdString(files[2].text), "id,name\r\nm," + cell + "\r\n");
  const auto back = readBack(PackageSource::memory(
      {{files[0].name, files[0].text}, {files[1].name, files[1].text}, {files[2].name, files[2].text}}));
  QVERIFY(back && back->tables[1].cells[1] == Cell{name.toStdString()});
}

void PackageWriterTest::everyTextSurvivesItsGuard() {
  QVERIFY(rc::check("guarded and back, and never a formula", [] {
    const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("'=+-@\t\ra1")));
    const std::string safe = guarded(text);
    RC_ASSERT(unguarded(safe) == text);
    RC_PRE(!safe.empty());  // RC_ASSERT's || looks at both its sides
    RC_ASSERT(std::string("=+-@\t\r").find(safe.front()) == std::string::npos);
  }));
}

void PackageWriterTest::numbersStayNumbers() {
  Package p = package();
  p.tables.push_back(tableOf("family",
                             {"id", "name", "measurand", "direction", "cold_ohms", "hot_ohms", "cold_low", "cold_high",
                              "hot_low", "hot_high", "source"},
                             {text("f"), text("F"), text("coolant temperature"), text("falling"), Cell{700.1},
                              Cell{90.0}, Cell{-20.5}, Cell{-20.5}, Cell{100.0}, Cell{1e2}, text("d")}));
  p.tables.push_back(tableOf(
      "curve", {"id", "family", "model", "coefficients", "floor", "valid_low", "valid_high", "source"},
      {text("c"), text("f"), text("polynomial"), text("-1.5 2e-4"), Cell{1e-7}, Cell{-20.0}, Cell{120.0}, text("d")}));
  const auto files = written(p);
  QVERIFY2(files[3].text.find(",700.1,90,-20.5,-20.5,100,100,d") != std::string::npos, files[3].text.c_str());
  QVERIFY2(files[4].text.find(",-1.5 2e-4,1e-07,-20,120,d") != std::string::npos, files[4].text.c_str());
}

void PackageWriterTest::whatCouldNotBeReadAgainIsNotWritten() {
  const auto firstCode = [](const Package& p) {
    const auto files = writePackage(p);
    return files ? std::string("written")
                 : files.error().list().front().where + " " + files.error().list().front().code;
  };
  QCOMPARE(firstCode(package("two\nlines")), std::string("make.csv:2:name cell-control-character"));
  QCOMPARE(firstCode(package(" blank")), std::string("make.csv:2:name cell-blank-at-end"));
  QCOMPARE(firstCode(package("\xFF")), std::string("make.csv:2:name cell-not-utf-8"));
  Package shop = package();
  shop.descriptor.id = "shop";
  QCOMPARE(firstCode(shop), std::string("datapackage.json:name descriptor-name"));
}

void PackageWriterTest::aReferenceOutsideThePackageIsNotPromised() {
  Package p = package();
  p.tables.push_back(tableOf("engine_family", {"id", "make", "name", "thermostat", "cap", "source"},
                             {text("e"), text("m"), text("six"), Cell{82.0}, Cell{90.0}, text("elsewhere")}));
  const json document = json::parse(written(p)[0].text);
  const json keys = document["resources"][2]["schema"]["foreignKeys"];
  QCOMPARE(keys.size(), std::size_t{1});
  QVERIFY(keys[0]["fields"] == "make");
}

void PackageWriterTest::folderAndZipHoldTheSame() {
  const Folder folder;
  const auto files = written(package("Tarn & Söhne"));
  QVERIFY(writeFolder(files, folder.path("pack")));
  QVERIFY(writeZip(files, folder.path("pack.zip")));
  QCOMPARE(folder.names(), (QStringList{"pack", "pack.zip"}));
  QVERIFY(isZip(folder.path("pack.zip")) && !isZip(folder.path("pack")));
  const auto zip = PackageAt::open(folder.path("pack.zip"));
  if (!zip) QFAIL(zip.error().sentence().c_str());
  for (const auto& file : files) {
    QCOMPARE(bytes(folder.path("pack") / file.name), file.text);
    QCOMPARE(zip->source().read(file.name, 1U << 20U).value(), file.text);
  }
  QVERIFY(readBack(PackageAt::open(folder.path("pack"))->source()));
}

void PackageWriterTest::aZipIsTheSameWheneverItIsWritten() {
  const Folder folder;
  const auto files = written(package());
  qputenv("TZ", "Pacific/Kiritimati");
  tzset();
  QVERIFY(writeZip(files, folder.path("a.zip")));
  qputenv("TZ", "America/Anchorage");
  tzset();
  QVERIFY(writeZip(files, folder.path("b.zip")));
  qunsetenv("TZ");
  tzset();
  QCOMPARE(bytes(folder.path("a.zip")), bytes(folder.path("b.zip")));
}

void PackageWriterTest::nothingIsReplaced() {
  const Folder folder;
  const auto files = written(package());
  (void)folder.write("here.zip", "mine");
  QCOMPARE(writeZip(files, folder.path("here.zip")).error().code, std::string("file-exists"));
  QCOMPARE(writeFolder(files, folder.path("here.zip")).error().code, std::string("file-exists"));
  QCOMPARE(bytes(folder.path("here.zip")), std::string("mine"));
  QCOMPARE(writeZip(files, folder.path("no/such/a.zip")).error().code, std::string("file-unwritable"));
  QCOMPARE(folder.names(), QStringList{"here.zip"});
}

void PackageWriterTest::aFolderInsideTheZipIsFine() {
  const Folder folder;
  const auto file = folder.write(
      "a.zip", test::zipOf({{"pack/", "", 040755}, {"pack/make.csv", "id,name\n"}, {"pack/datapackage.json", "{}"}}));
  const auto zip = ZipPackage::open(file);
  if (!zip) QFAIL(zip.error().sentence().c_str());
  QCOMPARE(zip->files().at("make.csv"), std::string("id,name\n"));
}

void PackageWriterTest::hostileZipsAreRefused_data() {
  QTest::addColumn<QByteArray>("zip");
  QTest::addColumn<QString>("code");
  const auto row = [](const char* label, const std::vector<test::ZipEntry>& entries, const char* code) {
    QTest::newRow(label) << test::zipOf(entries) << QString(code);
  };
  row("up and away", {{"../make.csv", "x"}}, "zip-name");
  row("up from inside", {{"pack/../../make.csv", "x"}}, "zip-name");
  row("from the root", {{"/etc/make.csv", "x"}}, "zip-name");
  row("with backslashes", {{"..\\make.csv", "x"}}, "zip-name");
  row("with a drive", {{"C:make.csv", "x"}}, "zip-name");
  row("hidden", {{".make.csv", "x"}}, "zip-name");
  row("a folder that leads up", {{"../", "", 040755}}, "zip-name");
  row("two folders", {{"a/make.csv", "x"}, {"b/sender.csv", "x"}}, "zip-name");
  row("folder in folder", {{"a/b/make.csv", "x"}}, "zip-name");
  row("beside the folder", {{"a/make.csv", "x"}, {"sender.csv", "x"}}, "zip-name");
  row("a control character", {{"ma\nke.csv", "x"}}, "zip-name");
  row("a link", {{"make.csv", "/etc/passwd", 0120777}}, "zip-link");
  row("a device", {{"make.csv", "", 0020644}}, "zip-link");
  row("one name twice", {{"make.csv", "x"}, {"make.csv", "y"}}, "zip-twice");
  row("one name in two cases", {{"make.csv", "x"}, {"MAKE.csv", "y"}}, "zip-twice");
  row("with a password", {{"make.csv", std::string(40, 'x'), 0100644, 1}}, "zip-locked");
  row("nothing in it", {}, "zip-unreadable");
  QTest::newRow("not a zip") << QByteArray("id,name\n") << "zip-unreadable";
  QTest::newRow("empty") << QByteArray() << "zip-unreadable";
}

void PackageWriterTest::hostileZipsAreRefused() {
  QFETCH(QByteArray, zip);
  QFETCH(QString, code);
  const Folder folder;
  const auto file = folder.write("a.zip", zip);
  QCOMPARE(openingZip(file), code);
  QCOMPARE(folder.names(), QStringList{"a.zip"});
}

void PackageWriterTest::aBombIsRefused() {
  const Folder folder;
  // Zeros pack a thousandfold (deflate's limit is 1032 to 1).
  QVERIFY(writeZip({{"make.csv", std::string(40U << 20U, '0')}}, folder.path("dense.zip")));
  QCOMPARE(openingZip(folder.path("dense.zip")), QString("zip-too-dense"));
  ZipPackage::Limits loose;
  loose.ratio = 1e9;
  QCOMPARE(openingZip(folder.path("dense.zip"), loose), QString("opened"));
  loose.fileBytes = 1U << 20U;
  QCOMPARE(openingZip(folder.path("dense.zip"), loose), QString("zip-too-large"));
  loose.fileBytes = 64U << 20U;
  loose.totalBytes = 30U << 20U;
  QCOMPARE(openingZip(folder.path("dense.zip"), loose), QString("zip-too-large"));
  loose.packedBytes = 100;
  QCOMPARE(openingZip(folder.path("dense.zip"), loose), QString("zip-too-large"));
  std::vector<test::ZipEntry> many;
  many.reserve(300);
  for (int i = 0; i < 300; ++i) many.push_back({"a" + std::to_string(i), "x"});
  QCOMPARE(openingZip(folder.write("many.zip", test::zipOf(many))), QString("zip-too-large"));
}

void PackageWriterTest::aDamagedZipIsRefused() {
  const Folder folder;
  QVERIFY(writeZip(written(package()), folder.path("a.zip")));
  const QByteArray whole = QByteArray::fromStdString(bytes(folder.path("a.zip")));
  QCOMPARE(openingZip(folder.write("cut.zip", whole.left(whole.size() / 2))), QString("zip-unreadable"));
  QByteArray wrong = test::zipOf({{"make.csv", "id,name\n"}});
  wrong.replace("id,name", "id,nama");  // its checksum no longer fits
  QCOMPARE(openingZip(folder.write("crc.zip", wrong)), QString("zip-unreadable"));
  QCOMPARE(openingZip(folder.path("none.zip")), QString("file-missing"));
}

QTEST_APPLESS_MAIN(PackageWriterTest)
#include "tst_package_writer.moc"
