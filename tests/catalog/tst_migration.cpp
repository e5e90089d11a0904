#include "small_catalogue.h"

#include <catalog/migration.h>
#include <catalog/vehicles.h>
#include <QtTest>
#include <array>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::Migration;

namespace {

constexpr Migration kFirst{"001", "CREATE TABLE a (x INTEGER PRIMARY KEY) STRICT; INSERT INTO a VALUES (1)"};
constexpr Migration kSecond{"002", "CREATE TABLE b (x INTEGER REFERENCES a) STRICT; INSERT INTO b VALUES (1)"};

/// A catalogue as the first release made it, with rows in it.
void makeVersionOne(const std::filesystem::path& file) {
  SQLite::Database database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  const auto all = catalog::migrations();
  catalog::migrate(database, std::span(all).first(1));
  QString rows = test::kSmallCatalogue;
  database.exec(rows.replace("'d', 'p', 0.02, -60, 90);", "'d', 'p');").toStdString());  // a gauge had no magnet yet
}

QString allRows(SQLite::Database& database) {
  QString all;
  SQLite::Statement tables(database,
                           "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'bench%' AND name "
                           "NOT LIKE 'sqlite%' AND name NOT "
                           "IN ('meter', 'meter_range', 'thermometer', 'bath', 'reading_habit') ORDER BY name");
  while (tables.executeStep()) {
    SQLite::Statement asked(database, "SELECT * FROM " + tables.getColumn(0).getString());
    while (asked.executeStep()) {
      for (int c = 0; c < asked.getColumnCount(); ++c)
        if (!std::string(asked.getColumnName(c)).starts_with("magnet"))
          all += QString::fromStdString(asked.getColumn(c).getString()) + "|";
      all += "\n";
    }
  }
  return all;
}

SQLite::Database fresh(const std::filesystem::path& file) {
  return {file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
}

}  // namespace

class MigrationTest : public QObject {
  Q_OBJECT
 private slots:
  void aFreshFileHasAllOfThem();
  void onlyWhatIsDueIsRun();
  void aScriptThatFailsLeavesTheVersionBefore();
  void aScriptThatLeavesReferencesNowhereIsRolledBack();
  void anOlderCatalogueIsBroughtUpToDateAtOpening();
  void aCatalogueOfVersionOneKeepsItsRows();
  void anOlderOneThatWasEditedByHandIsRefused();
  void jobsAndStockOfVersionTwoAreKept();
  void whoeverAsksBringsAnOlderCatalogueUpToDate();
  void foreignKeysAreOnAgainAfterwards();
};

void MigrationTest::aFreshFileHasAllOfThem() {
  const test::Folder folder;
  const Catalogue catalogue = Catalogue::create(folder.path("a.ohmkin"));
  auto& database = catalogue.connection().database();
  QCOMPARE(catalog::userVersion(database), Catalogue::newestVersion());
  QCOMPARE(database.execAndGet("PRAGMA journal_mode").getString(), std::string("delete"));
  catalogue.connection().useWriteAheadLog();  // as the first writer does
  QCOMPARE(database.execAndGet("PRAGMA journal_mode").getString(), std::string("wal"));
  QCOMPARE(database.execAndGet("PRAGMA synchronous").getInt(), 3);  // EXTRA: a deleted journal stays deleted
  QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
  QCOMPARE(database.execAndGet("SELECT id FROM pack").getString(), std::string("shop"));
}

void MigrationTest::onlyWhatIsDueIsRun() {
  const test::Folder folder;
  auto database = fresh(folder.path("a"));
  const std::array one{kFirst};
  const std::array both{kFirst, kSecond};
  catalog::migrate(database, one);
  QCOMPARE(catalog::userVersion(database), 1);
  catalog::migrate(database, both);
  QCOMPARE(catalog::userVersion(database), 2);
  catalog::migrate(database, both);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM a").getInt(), 1);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM b").getInt(), 1);
}

void MigrationTest::aScriptThatFailsLeavesTheVersionBefore() {
  const test::Folder folder;
  auto database = fresh(folder.path("a"));
  const std::array all{
      kFirst, Migration{"002", "CREATE TABLE b (x); INSERT INTO a VALUES (2); INSERT INTO nowhere VALUES (1)"}};
  QVERIFY_THROWS_EXCEPTION(SQLite::Exception, catalog::migrate(database, all));
  QCOMPARE(catalog::userVersion(database), 1);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM a").getInt(), 1);
  QVERIFY(!database.tableExists("b"));
}

void MigrationTest::aScriptThatLeavesReferencesNowhereIsRolledBack() {
  const test::Folder folder;
  auto database = fresh(folder.path("a"));
  const std::array all{kFirst, kSecond, Migration{"003", "DELETE FROM a"}};
  QVERIFY_THROWS_EXCEPTION(SQLite::Exception, catalog::migrate(database, all));
  QCOMPARE(catalog::userVersion(database), 2);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM a").getInt(), 1);
}

void MigrationTest::anOlderCatalogueIsBroughtUpToDateAtOpening() {
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  fresh(file).exec("PRAGMA application_id = " + std::to_string(static_cast<qint32>(Catalogue::kApplicationId)) +
                   "; PRAGMA user_version = 0");
  {
    const Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    QCOMPARE(catalog::userVersion(catalogue.connection().database()), Catalogue::newestVersion());
  }
  QCOMPARE(catalog::lines(Catalogue::open(file, Access::readOnly)).size(), std::size_t{0});
}

void MigrationTest::aCatalogueOfVersionOneKeepsItsRows() {
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  makeVersionOne(file);
  QString before;
  {
    SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
    QCOMPARE(catalog::userVersion(database), 1);
    before = allRows(database);
    QVERIFY(before.contains("Gauge one"));
  }
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  auto& database = catalogue.connection().database();
  QCOMPARE(catalog::userVersion(database), Catalogue::newestVersion());
  QCOMPARE(allRows(database), before);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
  QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
  // The same tables as a fresh one has.
  Catalogue fresh = Catalogue::create(folder.path("fresh.ohmkin"));
  const char* tables = "SELECT group_concat(sql, char(10)) FROM (SELECT sql FROM sqlite_schema ORDER BY type, name)";
  QCOMPARE(database.execAndGet(tables).getString(), fresh.connection().database().execAndGet(tables).getString());
}

void MigrationTest::jobsAndStockOfVersionTwoAreKept() {
  const test::Folder folder;
  auto database = fresh(folder.path("a"));
  const auto all = catalog::migrations();
  catalog::migrate(database, std::span(all).first(2));
  database.exec(test::kSmallCatalogue);
  database.exec(
      "INSERT INTO job VALUES (7, '2026-01-02T03:04:05Z', 'Blue Pickup', 'asks for a sender');"
      "INSERT INTO job_document VALUES (7, 1, 'match', '2026-01-02T03:05:00Z', '{\"a\": 1}'),"
      "                                (7, 2, 'sketch', '2026-01-02T03:06:00Z', '{}')");
  const auto asked = [&](const char* sql) { return QString::fromStdString(database.execAndGet(sql).getString()); };
  const QString shelf = asked("SELECT group_concat(sender || bin || quantity || minimum || pack) FROM stock");
  catalog::migrate(database, all);
  QCOMPARE(asked("SELECT group_concat(sender || bin || quantity || minimum || pack) FROM stock"), shelf);
  QVERIFY(shelf.contains("SN-10.1"));
  QCOMPARE(asked("SELECT reference || ',' || note || ',' || state || ',' || opened || ',' || changed FROM job"),
           QString("Blue Pickup,asks for a sender,open,2026-01-02T03:04:05Z,2026-01-02T03:04:05Z"));
  QCOMPARE(asked("SELECT group_concat(ordinal || kind || document) FROM job_document WHERE job = 7"),
           QString("1match{\"a\": 1},2other{}"));
  QCOMPARE(asked("SELECT words FROM job_search WHERE job = 7"), QString("blue pickup asks for a sender"));
  QCOMPARE(asked("SELECT count(*) FROM pragma_foreign_key_check"), QString("0"));
  QCOMPARE(asked("PRAGMA integrity_check"), QString("ok"));
  database.exec("DELETE FROM job_search; DELETE FROM job_document; DELETE FROM job");
  database.exec("INSERT INTO job (opened, changed, reference) VALUES ('x', 'x', 'next')");
  QCOMPARE(asked("SELECT id FROM job"), QString("8"));  // a number is never given twice
}

void MigrationTest::anOlderOneThatWasEditedByHandIsRefused() {
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  makeVersionOne(file);
  SQLite::Database(file.string(), SQLite::OPEN_READWRITE).exec("ALTER TABLE stock ADD COLUMN shelf TEXT");
  const QByteArray before = test::Folder::bytes(file);
  try {
    (void)Catalogue::openToRead(file);
    QFAIL("opened");
  } catch (const catalog::CatalogueError& error) {
    QCOMPARE(error.refusal().sentence(),
             file.string() +
                 ": found the table 'stock' other than version 1 has it, expected the tables as Ohmkin "
                 "makes them; go back to your last copy, or let 'ohmkin backup salvage' copy its rows into "
                 "a new one");
  }
  QCOMPARE(test::Folder::bytes(file), before);
}

void MigrationTest::whoeverAsksBringsAnOlderCatalogueUpToDate() {
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  makeVersionOne(file);
  QCOMPARE(catalog::lines(Catalogue::openToRead(file)).size(), std::size_t{2});
  const Catalogue again = Catalogue::open(file, Access::readOnly);
  QVERIFY(again.access() == Access::readOnly);
  QCOMPARE(folder.names(), (QStringList{"old.ohmkin", "old.ohmkin.backups"}));
}

void MigrationTest::foreignKeysAreOnAgainAfterwards() {
  const test::Folder folder;
  auto database = fresh(folder.path("a"));
  database.exec("PRAGMA foreign_keys = ON");
  const std::array both{kFirst, kSecond};
  catalog::migrate(database, both);
  QCOMPARE(database.execAndGet("PRAGMA foreign_keys").getInt(), 1);
}

QTEST_APPLESS_MAIN(MigrationTest)
#include "tst_migration.moc"
