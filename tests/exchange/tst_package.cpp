#include "package_in_memory.h"

#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <QtTest>

using namespace ohmkin;
using exchange::readPackage;
using test::PackageInMemory;

class PackageTest : public QObject {
  Q_OBJECT
 private slots:
  void aSoundPackageIsReadWhole();
  void eachSpoiltPlaceIsNamed_data();
  void eachSpoiltPlaceIsNamed();
  void eachSpoiltDescriptorIsNamed_data();
  void eachSpoiltDescriptorIsNamed();
  void everythingIsReportedAtOnceAndTheRestCounted();
  void aReferenceMayBeFulfilledElsewhere();
  void anUnreadTableDoesNotMakeItsRowsDangle();
  void sizesAreBounded();
  void aFolderIsReadLikeBytesInMemory();
};

void PackageTest::aSoundPackageIsReadWhole() {
  const auto package = readPackage(PackageInMemory().source());
  if (!package) QFAIL(package.error().text().c_str());
  QCOMPARE(package->descriptor.id, std::string("small"));
  QCOMPARE(package->descriptor.licence, std::string("CC0-1.0"));
  QCOMPARE(package->tables.size(), std::size_t{7});
  const auto& thread = package->tables[1];
  QCOMPARE(thread.definition->name, std::string("thread"));
  QCOMPARE(thread.size(), std::size_t{2});
  QCOMPARE(thread.lines[1], std::size_t{3});
  QVERIFY(thread.row(0)[6] == exchange::Cell{std::int64_t{1}});
  QVERIFY(thread.row(1)[6] == exchange::Cell{std::int64_t{0}});
  QVERIFY(thread.row(1)[5] == exchange::Cell{12.0});
  QVERIFY(thread.row(1)[0] == exchange::Cell{std::string("M12x1.5")});
}

void PackageTest::eachSpoiltPlaceIsNamed_data() {
  QTest::addColumn<QString>("file");
  QTest::addColumn<QByteArray>("what");
  QTest::addColumn<QByteArray>("by");
  QTest::addColumn<QString>("where");
  QTest::addColumn<QString>("code");
  QTest::addColumn<QString>("words");  // in the sentence
  const auto row = [](const char* label, const char* file, const char* what, const QByteArray& by, const char* where,
                      const char* code, const char* words) {
    QTest::newRow(label) << file << QByteArray(what) << by << where << code << words;
  };
  row("not a number", "thread.csv", "1.4111", "fine", "thread.csv:2:pitch", "cell-not-a-number", "'fine'");
  row("decimal comma", "thread.csv", "1.4111", "\"1,4111\"", "thread.csv:2:pitch", "cell-not-a-number",
      "decimal point");
  row("NaN", "thread.csv", "13.616", "NaN", "thread.csv:2:diameter", "cell-not-a-number", "'NaN'");
  row("infinite", "thread.csv", "13.616", "inf", "thread.csv:2:diameter", "cell-not-a-number", "'inf'");
  row("too large to be a double", "thread.csv", "13.616", "1e999", "thread.csv:2:diameter", "cell-not-a-number",
      "1e999");
  row("number with text behind", "thread.csv", "13.616", "13.6mm", "thread.csv:2:diameter", "cell-not-a-number",
      "13.6mm");
  row("not above the least", "thread.csv", "1.4111", "0", "thread.csv:2:pitch", "cell-out-of-range", "above 0");
  row("above the most", "source.csv", "0.5", "1.5", "source.csv:2:confidence", "cell-out-of-range",
      "at least 0 and at most 1");
  row("none of the numbers allowed", "thread.csv", "NPT,60", "NPT,58", "thread.csv:2:flank_angle", "cell-not-allowed",
      "55 or 60");
  row("not whole", "date_field.csv", "dl,1", "dl,1.5", "date_field.csv:2:ordinal", "cell-not-a-whole-number", "'1.5'");
  row("none of the words", "source.csv", "demo", "demoo", "source.csv:2:kind", "cell-not-allowed", "perhaps demo");
  row("neither yes nor no", "thread.csv", "false", "perhaps", "thread.csv:3:tapered", "cell-not-yes-or-no",
      "true or false");
  row("no date", "date_layout.csv", "1971-08-22", "22.8.71", "date_layout.csv:2:example_date", "cell-not-a-date",
      "year-month-day");
  row("no such day", "date_layout.csv", "1971-08-22", "1971-02-29", "date_layout.csv:2:example_date", "cell-not-a-date",
      "exists in the calendar");
  row("nothing where something must be", "source.csv", "made up", "", "source.csv:2:citation", "cell-empty",
      "an empty cell");
  row("blank at the end", "source.csv", "made up", "made up ", "source.csv:2:citation", "cell-blank-at-end",
      "blank at either end");
  row("not UTF-8", "source.csv", "made up", QByteArray("made \xFF"), "source.csv:2:citation", "cell-not-utf-8",
      "\\xFF");
  row("control character", "source.csv", "made up", QByteArray("made\x1B[2Jup"), "source.csv:2:citation",
      "cell-control-character", "\\x1B");
  row("break in a cell", "source.csv", "made up", "\"made\nup\"", "source.csv:2:citation", "cell-control-character",
      "line breaks");
  row("coefficients that are none", "curve.csv", "3.72e3", "about 3720", "curve.csv:2:coefficients",
      "cell-of-another-form", "of the form");
  row("unknown column", "source.csv", "citation", "citatoin", "source.csv:1", "column-unknown", "perhaps citation");
  row("column twice", "thread.csv", "tapered,", "pitch,", "thread.csv:1", "column-twice", "each column once");
  row("missing column", "adapter.csv", ",source\nAD-1,1/4-18 NPT,M12x1.5,6.5,d", "\nAD-1,1/4-18 NPT,M12x1.5,6.5",
      "adapter.csv:1", "column-missing", "a column source");
  row("a cell too few", "adapter.csv", "6.5,d", "6.5", "adapter.csv:2", "row-width", "4 cells, expected 5");
  row("a cell too many", "adapter.csv", "6.5,d", "6.5,d,", "adapter.csv:2", "row-width", "6 cells");
  row("key twice", "thread.csv", "M12x1.5", "1/4-18 NPT", "thread.csv:3:id", "key-twice", "line 2 has it");
  row("key of two parts twice", "date_field.csv", "dl,2", "dl,1", "date_field.csv:3:layout", "key-twice", "'dl, 1'");
  row("dangling reference", "adapter.csv", "M12x1.5", "M13x1.5", "adapter.csv:2:sender", "reference-dangling",
      "'M13x1.5', expected the id of a row of thread");
  row("not different", "adapter.csv", "M12x1.5", "1/4-18 NPT", "adapter.csv:2:sender", "row-rule", "other than port");
  row("not rising", "family.csv", "100,120", "30,120", "family.csv:2:hot_low", "row-rule", "above cold_high (40)");
  row("falling", "family.csv", "100,120", "100,90", "family.csv:2:hot_high", "row-rule", "not below hot_low (100)");
  row("not all together", "family.csv", "700,90", "700,", "family.csv:2:hot_ohms", "row-rule", "or none of them");
  row("neither of two", "curve.csv", "ca,fa,", "ca,,", "curve.csv:2:family", "row-rule", "exactly one of them");
  row("a quote out of place", "adapter.csv", "AD-1", "AD\"1", "adapter.csv:2", "csv-unreadable", "double quote");
  row("an empty file", "adapter.csv", "id,port,sender,immersion_lost,source\nAD-1,1/4-18 NPT,M12x1.5,6.5,d\n", "",
      "adapter.csv", "table-empty", "names of the columns");
}

void PackageTest::eachSpoiltPlaceIsNamed() {
  QFETCH(QString, file);
  QFETCH(QByteArray, what);
  QFETCH(QByteArray, by);
  QFETCH(QString, where);
  QFETCH(QString, code);
  QFETCH(QString, words);
  PackageInMemory package;
  package.replace(file.toStdString(), what.toStdString(), by.toStdString());
  const auto read = readPackage(package.source());
  QVERIFY(!read);
  const auto& first = read.error().list().front();
  QCOMPARE(QString::fromStdString(first.where), where);
  QCOMPARE(QString::fromStdString(first.code), code);
  QVERIFY2(QString::fromStdString(first.sentence()).contains(words), first.sentence().c_str());
}

void PackageTest::eachSpoiltDescriptorIsNamed_data() {
  QTest::addColumn<QByteArray>("what");
  QTest::addColumn<QByteArray>("by");
  QTest::addColumn<QString>("where");
  QTest::addColumn<QString>("code");
  const auto row = [](const char* label, const char* what, const char* by, const char* where, const char* code) {
    QTest::newRow(label) << QByteArray(what) << QByteArray(by) << where << code;
  };
  row("a number without end", "[{", "[1e999,{", "datapackage.json", "descriptor-unreadable");
  row("not JSON", "[{", "[[{", "datapackage.json:3", "descriptor-unreadable");
  row("the shop's name", "\"small\"", "\"shop\"", "datapackage.json:name", "descriptor-name");
  row("a name with a path in it", "\"small\"", "\"../small\"", "datapackage.json:name", "descriptor-name");
  row("no version", "\"1.0.0\"", "\"\"", "datapackage.json:version", "descriptor-version");
  row("a version that is no text", "\"1.0.0\"", "1", "datapackage.json:version", "descriptor-text");
  row("an unknown table", "\"name\": \"adapter\"", "\"name\": \"adaptor\"", "datapackage.json:resources[0]:name",
      "resource-unknown");
  row("a table twice", "\"name\": \"curve\"", "\"name\": \"adapter\"", "datapackage.json:resources[1]",
      "resource-twice");
  row("a path out of the folder", "\"adapter.csv\"", "\"../adapter.csv\"", "datapackage.json", "file-name");
  row("an absolute path", "\"adapter.csv\"", "\"/etc/hostname\"", "datapackage.json", "file-name");
  row("a missing file", "\"adapter.csv\"", "\"adaptor.csv\"", "adaptor.csv", "file-missing");
  row("another encoding", "\"adapter.csv\"", "\"adapter.csv\", \"encoding\": \"latin-1\"",
      "datapackage.json:resources[0]:encoding", "resource-encoding");
  row("another delimiter", "\"adapter.csv\"", "\"adapter.csv\", \"dialect\": {\"delimiter\": \";\"}",
      "datapackage.json:resources[0]:dialect", "resource-delimiter");
  row("no resources", "\"resources\"", "\"sources\"", "datapackage.json:resources", "descriptor-resources");
}

void PackageTest::eachSpoiltDescriptorIsNamed() {
  QFETCH(QByteArray, what);
  QFETCH(QByteArray, by);
  QFETCH(QString, where);
  QFETCH(QString, code);
  PackageInMemory package;
  package.replace("datapackage.json", what.toStdString(), by.toStdString());
  const auto read = readPackage(package.source());
  QVERIFY(!read);
  QStringList found;
  for (const auto& refusal : read.error().list()) found << QString::fromStdString(refusal.where + " " + refusal.code);
  QVERIFY2(found.contains(where + " " + code), qPrintable(found.join("; ")));
}

void PackageTest::everythingIsReportedAtOnceAndTheRestCounted() {
  PackageInMemory package;
  std::string text = "id,kind,citation,confidence\n";
  for (int i = 0; i < 300; ++i) text += "s" + std::to_string(i) + ",hearsay,x,0.5\n";
  package.set("source.csv", text + "d,demo,x,0.5\n");
  package.replace("thread.csv", "1.4111", "0");
  const auto read = readPackage(package.source());
  QVERIFY(!read);
  QCOMPARE(read.error().list().size(), std::size_t{200});
  QCOMPARE(read.error().notListed(), std::size_t{101});
  QCOMPARE(read.error().list()[199].where, std::string("source.csv:201:kind"));
  QVERIFY(read.error().text().ends_with("… and 101 more\n"));
}

void PackageTest::aReferenceMayBeFulfilledElsewhere() {
  PackageInMemory package;
  package.remove("thread.csv");
  package.describe();
  QVERIFY(!readPackage(package.source()));
  QVERIFY(readPackage(package.source(), [](std::string_view table, std::string_view) { return table == "thread"; }));
}

void PackageTest::anUnreadTableDoesNotMakeItsRowsDangle() {
  PackageInMemory package;
  package.remove("thread.csv");  // but still described
  const auto read = readPackage(package.source());
  QVERIFY(!read);
  QCOMPARE(read.error().list().size(), std::size_t{1});
  QCOMPARE(read.error().list()[0].code, std::string("file-missing"));
}

void PackageTest::sizesAreBounded() {
  const PackageInMemory package;
  const auto code = [&](const exchange::Limits& limits) {
    const auto read = readPackage(package.source(), {}, limits);
    return read ? std::string("read") : read.error().list().front().code;
  };
  exchange::Limits limits;
  limits.descriptorBytes = 100;
  QCOMPARE(code(limits), std::string("file-too-large"));
  limits = {};
  limits.fileBytes = 10;
  QCOMPARE(code(limits), std::string("file-too-large"));
  limits = {};
  limits.rows = 1;
  QCOMPARE(code(limits), std::string("table-too-long"));
  limits = {};
  limits.cellBytes = 6;
  QCOMPARE(code(limits), std::string("cell-too-long"));
}

void PackageTest::aFolderIsReadLikeBytesInMemory() {
  const QTemporaryDir folder;
  const PackageInMemory sound;
  for (const auto& [name, text] : sound.files()) {
    QFile file(folder.filePath(QString::fromStdString(name)));
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write(QByteArray::fromStdString(text));
  }
  const auto source = exchange::PackageSource::folder(folder.path().toStdString());
  QVERIFY(readPackage(source));
  QVERIFY(QFile::remove(folder.filePath("adapter.csv")));
  QVERIFY(QFile::link("/etc/hostname", folder.filePath("adapter.csv")));
  const auto linked = readPackage(source);
  QVERIFY(!linked);
  QCOMPARE(linked.error().list().front().code, std::string("file-not-plain"));
  QVERIFY(!readPackage(exchange::PackageSource::folder(folder.filePath("nowhere").toStdString())));
}

QTEST_APPLESS_MAIN(PackageTest)
#include "tst_package.moc"
