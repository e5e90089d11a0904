#include "small_catalogue.h"

#include <catalog/pack_writer.h>
#include <catalog/senders.h>
#include <QtTest>

using namespace ohmkin;
using namespace ohmkin::catalog;

class PackWriterTest : public QObject {
  Q_OBJECT
 private slots:
  void nothingIsKeptUnlessSaidSo();
  void onlyTheCataloguesOwnTablesAndColumnsAreWritten();
  void aRowThatBreaksARuleIsRefusedAndOthersMayFollow();
  void anEmptyCellBecomesTheColumnsDefault();
  void aFinderLooksPastAPack();
  void aReaderCannotWrite();
};

namespace {

const std::vector<std::string> kMake{"id", "name"};
Pack packNamed(std::string id) { return {std::move(id), "Title", "1", ""}; }
int count(const Catalogue& catalogue, const std::string& sql) {
  return catalogue.connection().database().execAndGet(sql).getInt();
}

}  // namespace

void PackWriterTest::nothingIsKeptUnlessSaidSo() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  {
    PackWriter writer(catalogue, packNamed("p"));
    QCOMPARE(count(catalogue, "SELECT count(*) FROM sender"), 0);
    const std::vector<Cell> row{std::string("n"), std::string("New")};
    QVERIFY(writer.write("make", kMake, row) == RowFate::written);
  }
  QCOMPARE(count(catalogue, "SELECT count(*) FROM sender"), 4);
  QCOMPARE(count(catalogue, "SELECT count(*) FROM make"), 2);
  QCOMPARE(count(catalogue, "PRAGMA foreign_keys"), 1);
}

void PackWriterTest::onlyTheCataloguesOwnTablesAndColumnsAreWritten() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  PackWriter writer(catalogue, packNamed("q"));
  const std::vector<Cell> row{std::string("n"), std::string("New")};
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, (void)writer.write("job", kMake, row));
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, (void)writer.write("make; DROP TABLE make", kMake, row));
  const std::vector<std::string> wrong{"id", "name) VALUES (1, 2); --"};
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, (void)writer.write("make", wrong, row));
  const std::vector<std::string> owner{"id", "pack"};
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, (void)writer.write("make", owner, row));
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, PackWriter(catalogue, packNamed("shop")));
}

void PackWriterTest::aRowThatBreaksARuleIsRefusedAndOthersMayFollow() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  PackWriter writer(catalogue, packNamed("q"));
  const std::vector<std::string> columns{"id", "kind", "citation", "confidence"};
  const std::vector<Cell> bad{std::string("s"), std::string("hearsay"), std::string("x"), 0.5};
  const auto refused = writer.write("source", columns, bad);
  QVERIFY(!refused);
  QCOMPARE(refused.error().code, std::string("row-refused"));
  QVERIFY(refused.error().expected.find("kind IN") != std::string::npos);
  const std::vector<Cell> good{std::string("s"), std::string("bench"), std::string("x"), 0.5};
  QVERIFY(writer.write("source", columns, good) == RowFate::written);
  QVERIFY(!writer.write("source", columns, good));  // its own key again
  const std::vector<Cell> others{std::string("d"), std::string("bench"), std::string("x"), 0.5};
  QVERIFY(writer.write("source", columns, others) == RowFate::ownedByOtherPack);
  writer.keep("test");
  QCOMPARE(count(catalogue, "SELECT count(*) FROM source WHERE pack = 'q'"), 1);
  QCOMPARE(count(catalogue, "SELECT count(*) FROM change_log WHERE who = 'test' AND subject = 'q'"), 1);
}

void PackWriterTest::anEmptyCellBecomesTheColumnsDefault() {
  const test::Folder folder;
  Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  PackWriter writer(catalogue, packNamed("q"));
  const std::vector<std::string> columns{"sender", "bin", "quantity", "minimum"};
  const std::vector<Cell> row{std::string("SN-102"), std::string("C"), std::int64_t{3}, Cell{}};
  QVERIFY(writer.write("stock", columns, row) == RowFate::written);
  const std::vector<std::string> curve{"id",           "sender",    "lot",        "model",
                                       "coefficients", "valid_low", "valid_high", "source"};
  const std::vector<Cell> cells{
      std::string("cq"), std::string("SN-102"), Cell{}, std::string("table"), Cell{}, 0.0, 100.0, std::string("d")};
  QVERIFY(writer.write("curve", curve, cells) == RowFate::written);
  writer.keep("test");
  QCOMPARE(count(catalogue, "SELECT minimum FROM stock WHERE bin = 'C'"), 0);
  QCOMPARE(count(catalogue, "SELECT lot = '' AND coefficients = '' AND floor = 0 FROM curve WHERE id = 'cq'"), 1);
}

void PackWriterTest::aFinderLooksPastAPack() {
  const test::Folder folder;
  const Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  RowFinder finder(catalogue);
  QVERIFY(finder.holds("sender", "SN-102"));
  QVERIFY(finder.holds("sender", "SN-102", "other"));
  QVERIFY(!finder.holds("sender", "SN-102", "p"));
  QVERIFY(!finder.holds("sender", "SN-999"));
  QVERIFY_THROWS_EXCEPTION(std::invalid_argument, finder.holds("dial_mark", "g1"));
}

void PackWriterTest::aReaderCannotWrite() {
  const test::Folder folder;
  test::smallCatalogue(folder.path("a.ohmkin"));
  Catalogue reader = Catalogue::open(folder.path("a.ohmkin"), Access::readOnly);
  try {
    PackWriter writer(reader, packNamed("q"));
    QFAIL("a reader wrote");
  } catch (const CatalogueError& error) {
    QCOMPARE(error.refusal().code, std::string("catalogue-read-only"));
  }
}

QTEST_APPLESS_MAIN(PackWriterTest)
#include "tst_pack_writer.moc"
