#include "small_catalogue.h"

#include <catalog/backup.h>
#include <catalog/families.h>
#include <catalog/salvage.h>
#include <catalog/shop.h>
#include <catalog/vehicles.h>
#include <QtTest>
#include <algorithm>
#include <array>
#include <thread>

using namespace ohmkin;
using catalog::Access;
using catalog::Backup;
using catalog::BackupReason;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

namespace fs = std::filesystem;

fs::path earlier(const test::Folder& folder, int version) {
  const fs::path file = folder.path("old.ohmkin");
  fs::copy_file(OHMKIN_TEST_DATA "/catalogues/version-" + std::to_string(version) + ".ohmkin", file);
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  return file;
}

std::string codeOf(const std::function<void()>& task) {
  try {
    task();
  } catch (const CatalogueError& error) {
    return error.refusal().code;
  }
  return "done";
}

void changeQuantity(const fs::path& file, int to) {
  const Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  catalogue.connection().useWriteAheadLog();  // as every change begins
  catalogue.connection().database().exec("UPDATE stock SET quantity = " + std::to_string(to));
}

int quantity(const fs::path& file) {
  return catalog::stock(Catalogue::openToRead(file), catalog::SenderKey{"SN-10.1"}).front().quantity;
}

Backup dailyOf(int year, unsigned month, unsigned day, BackupReason reason = BackupReason::daily) {
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
  Backup backup;
  backup.taken = std::chrono::sys_days(date) + std::chrono::hours(9);
  backup.file = std::to_string(year) + "-" + std::to_string(month) + "-" + std::to_string(day);
  backup.reason = reason;
  return backup;
}

}  // namespace

class BackupTest : public QObject {
  Q_OBJECT
 private slots:
  void everyEarlierVersionIsBroughtUpToDateAfterABackup_data();
  void everyEarlierVersionIsBroughtUpToDateAfterABackup();
  void threadsThatOpenAnEarlierVersionAtOnceAllGetIt();
  void theFirstChangeOfADayIsPrecededByABackup();
  void aCatalogueMadeTodayNeedsNone();
  void whatIsKeptOfManyDays();
  void whatAPersonMadeIsAPersonsToDelete();
  void aClockSetBackLosesNothing();
  void theHashIsReadByOthers();
  void aChangedBackupIsFoundAndNotRestored_data();
  void aChangedBackupIsFoundAndNotRestored();
  void restoringKeepsWhatItReplaces();
  void restoringReplacesALostOrDamagedFile();
  void restoringWaitsForNobody();
  void aDamagedCatalogueIsNotBackedUp();
  void salvageCopiesWhatReads();
  void salvageLeavesOutADateThatIsNone();
  void salvageOfAWholeFileLosesNothing();
};

void BackupTest::everyEarlierVersionIsBroughtUpToDateAfterABackup_data() {
  QTest::addColumn<int>("version");
  // One file a released version; tests/data/catalogues says how they were made.
  QTest::newRow("version 1") << 1;
  QTest::newRow("version 2") << 2;
}

void BackupTest::everyEarlierVersionIsBroughtUpToDateAfterABackup() {
  QFETCH(int, version);
  const test::Folder folder;
  const auto file = earlier(folder, version);
  const QByteArray before = test::Folder::bytes(file);
  {
    const Catalogue catalogue = Catalogue::openToRead(file);
    auto& database = catalogue.connection().database();
    QCOMPARE(catalog::userVersion(database), Catalogue::newestVersion());
    QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
    QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
    QCOMPARE(database.execAndGet("SELECT count(*) FROM sender").getInt(), 4);
    QCOMPARE(catalog::lines(catalogue).size(), std::size_t{2});
    if (version >= 2) QCOMPARE(database.execAndGet("SELECT sum(ohms) FROM bench_reading").getInt(), 700 + 210 + 95);
  }
  const auto all = catalog::backups(file);
  QCOMPARE(all.size(), std::size_t{1});
  QVERIFY(all.front().reason == BackupReason::beforeMigration);
  QCOMPARE(all.front().version, version);
  QCOMPARE(codeOf([&] { catalog::check(all.front()); }), std::string("done"));
  // Back to it, and forward again.
  const auto restored = catalog::restore(file, all.front());
  QVERIFY(fs::exists(restored.kept));
  {
    SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
    QCOMPARE(catalog::userVersion(database), version);
  }
  QCOMPARE(test::Folder::bytes(file).size(), before.size());
  QCOMPARE(catalog::lines(Catalogue::openToRead(file)).size(), std::size_t{2});
}

/// As the pages of a window do.
void BackupTest::threadsThatOpenAnEarlierVersionAtOnceAllGetIt() {
  for (int round = 0; round < 10; ++round) {
    const test::Folder folder;
    const fs::path file = earlier(folder, 2);
    std::array<std::string, 4> codes;
    std::vector<std::thread> threads;
    threads.reserve(codes.size());
    for (std::string& code : codes) threads.emplace_back([&] { code = codeOf([&] { Catalogue::openToRead(file); }); });
    for (std::thread& each : threads) each.join();
    for (const std::string& code : codes) QCOMPARE(code, std::string("done"));
    QVERIFY(!catalog::backups(file).empty());
    for (const Backup& backup : catalog::backups(file)) catalog::check(backup);
  }
}

void BackupTest::theFirstChangeOfADayIsPrecededByABackup() {
  const test::Folder folder;
  const auto file = earlier(folder, 2);
  changeQuantity(file, 41);
  const auto daily = [&] {
    auto all = catalog::backups(file);
    std::erase_if(all, [](const Backup& backup) { return backup.reason != BackupReason::daily; });
    return all;
  };
  QCOMPARE(daily().size(), std::size_t{1});
  catalog::check(daily().front());
  QCOMPARE(quantity(daily().front().file), 5);  // as it was before the change
  changeQuantity(file, 42);
  QCOMPARE(daily().size(), std::size_t{1});
  QCOMPARE(quantity(file), 42);
}

void BackupTest::aCatalogueMadeTodayNeedsNone() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  changeQuantity(file, 41);
  QVERIFY(catalog::backups(file).empty());
  QCOMPARE(folder.names(), QStringList{"a.ohmkin"});
}

void BackupTest::whatIsKeptOfManyDays() {
  std::vector<Backup> all;
  for (std::chrono::sys_days day = std::chrono::year(2025) / 1 / 1; day <= std::chrono::year(2026) / 11 / 25;
       day += std::chrono::days(1)) {
    const std::chrono::year_month_day date{day};
    all.push_back(
        dailyOf(static_cast<int>(date.year()), static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day())));
  }
  const auto over = catalog::outdated(all);
  std::vector<std::string> kept;
  for (const Backup& one : all)
    if (std::none_of(over.begin(), over.end(), [&](const Backup& gone) { return gone.file == one.file; }))
      kept.push_back(one.file.string());
  // By the calendar: 2026-11-25 is a Wednesday. Seven days; the Sundays of the two weeks before those; the ends of the
  // eleven months before.
  const std::vector<std::string> expected{"2025-12-31", "2026-1-31",  "2026-2-28",  "2026-3-31",  "2026-4-30",
                                          "2026-5-31",  "2026-6-30",  "2026-7-31",  "2026-8-31",  "2026-9-30",
                                          "2026-10-31", "2026-11-8",  "2026-11-15", "2026-11-19", "2026-11-20",
                                          "2026-11-21", "2026-11-22", "2026-11-23", "2026-11-24", "2026-11-25"};
  QCOMPARE(kept, expected);
}

void BackupTest::whatAPersonMadeIsAPersonsToDelete() {
  std::vector<Backup> all;
  for (unsigned day = 1; day <= 28; ++day) {
    all.push_back(dailyOf(2020, 2, day, BackupReason::byHand));
    all.push_back(dailyOf(2020, 3, day, BackupReason::replaced));
  }
  for (unsigned day = 1; day <= 5; ++day) all.push_back(dailyOf(2020, 1, day, BackupReason::beforeMigration));
  const auto over = catalog::outdated(all);
  QCOMPARE(over.size(), std::size_t{2});
  QCOMPARE(over[0].file, fs::path("2020-1-2"));
  QCOMPARE(over[1].file, fs::path("2020-1-1"));
}

void BackupTest::aClockSetBackLosesNothing() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const auto made = test::smallCatalogue(file);
  fs::create_directory(catalog::backupFolder(file));
  for (int day = 10; day < 25; ++day)
    fs::copy_file(file, catalog::backupFolder(file) / ("2099-03-" + std::to_string(day) + "T090000Z-daily.ohmkin"));
  const Backup today = catalog::backUp(made, BackupReason::daily);
  QVERIFY(fs::exists(today.file));
  QCOMPARE(codeOf([&] { catalog::check(today); }), std::string("done"));
  QVERIFY(fs::exists(catalog::backupFolder(file) / "2099-03-24T090000Z-daily.ohmkin"));
  QVERIFY(!fs::exists(catalog::backupFolder(file) / "2099-03-10T090000Z-daily.ohmkin"));
}

void BackupTest::theHashIsReadByOthers() {
  if (std::system("sha256sum --version > /dev/null 2>&1") != 0) QSKIP("no sha256sum here");
  const test::Folder folder;
  const auto made = test::smallCatalogue(folder.path("a.ohmkin"));
  const Backup backup = catalog::backUp(made);
  QCOMPARE(
      std::system(
          ("cd '" + backup.file.parent_path().string() + "' && sha256sum --check --strict --quiet *.sha256").c_str()),
      0);
}

void BackupTest::aChangedBackupIsFoundAndNotRestored_data() {
  QTest::addColumn<int>("how");
  QTest::newRow("one bit") << 0;
  QTest::newRow("cut off") << 1;
  QTest::newRow("no hash") << 2;
  QTest::newRow("gone") << 3;
  QTest::newRow("another program's database with a hash of its own") << 4;
}

void BackupTest::aChangedBackupIsFoundAndNotRestored() {
  QFETCH(int, how);
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Backup backup;
  {
    const auto made = test::smallCatalogue(file);
    backup = catalog::backUp(made);
  }
  const std::string hashFile = backup.file.string() + ".sha256";
  QByteArray bytes = test::Folder::bytes(backup.file);
  const QString name = QString::fromStdString(backup.file.string());
  if (how == 0) {
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    QFile out(name);
    QVERIFY(out.open(QIODevice::WriteOnly) && out.write(bytes) == bytes.size());
  } else if (how == 1) {
    fs::resize_file(backup.file, fs::file_size(backup.file) - 4096);
  } else if (how == 2) {
    fs::remove(hashFile);
  } else if (how == 3) {
    fs::remove(backup.file);
  } else {
    fs::remove(backup.file);
    SQLite::Database(backup.file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec("CREATE TABLE t (x)");
    QCOMPARE(std::system(("cd '" + backup.file.parent_path().string() + "' && sha256sum '" +
                          backup.file.filename().string() + "' > '" + hashFile + "'")
                             .c_str()),
             0);
  }
  const QByteArray before = test::Folder::bytes(file);
  const std::string expected = how == 4 ? "catalogue-foreign-tables" : "backup-damaged";
  QCOMPARE(codeOf([&] { catalog::check(backup); }), expected);
  QCOMPARE(codeOf([&] { (void)catalog::restore(file, backup); }), expected);
  QCOMPARE(test::Folder::bytes(file), before);
  QCOMPARE(folder.names(), (QStringList{"a.ohmkin", "a.ohmkin.backups"}));
}

void BackupTest::restoringKeepsWhatItReplaces() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Backup backup;
  {
    const auto made = test::smallCatalogue(file);
    backup = catalog::backUp(made);
  }
  changeQuantity(file, 99);
  const auto restored = catalog::restore(file, backup);
  QCOMPARE(quantity(file), 5);
  QCOMPARE(quantity(restored.kept), 99);
  const auto all = catalog::backups(file);
  QCOMPARE(all.size(), std::size_t{2});
  const auto kept =
      std::find_if(all.begin(), all.end(), [](const Backup& b) { return b.reason == BackupReason::replaced; });
  QVERIFY(kept != all.end());
  (void)catalog::restore(file, *kept);  // and back again
  QCOMPARE(quantity(file), 99);
}

void BackupTest::restoringReplacesALostOrDamagedFile() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Backup backup;
  {
    const auto made = test::smallCatalogue(file);
    backup = catalog::backUp(made);
  }
  folder.write("a.ohmkin", "dear diary");
  folder.write("a.ohmkin-wal", "and more");
  const auto restored = catalog::restore(file, backup);
  QCOMPARE(test::Folder::bytes(restored.kept), QByteArray("dear diary"));
  QCOMPARE(test::Folder::bytes(restored.kept.string() + "-wal"), QByteArray("and more"));
  QCOMPARE(quantity(file), 5);
  fs::remove(file);
  QVERIFY(catalog::restore(file, backup).kept.empty());
  QCOMPARE(quantity(file), 5);
  QCOMPARE(folder.names(), (QStringList{"a.ohmkin", "a.ohmkin.backups"}));
}

void BackupTest::restoringWaitsForNobody() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const auto made = test::smallCatalogue(file);
  const Backup backup = catalog::backUp(made);
  made.connection().useWriteAheadLog();
  made.connection().database().exec("UPDATE stock SET quantity = 99");
  QCOMPARE(codeOf([&] { (void)catalog::restore(file, backup); }), std::string("catalogue-busy"));
  QCOMPARE(quantity(file), 99);
}

void BackupTest::aDamagedCatalogueIsNotBackedUp() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const Catalogue open = Catalogue::open(file, Access::readWrite);
  QByteArray bytes = test::Folder::bytes(file);
  const auto page = bytes.indexOf("made up") / 4096 * 4096;
  bytes[page + 3] = '\x7f';  // its cell count
  folder.write("a.ohmkin", bytes);
  QCOMPARE(codeOf([&] { (void)catalog::backUp(open); }), std::string("catalogue-damaged"));
  QVERIFY(catalog::backups(file).empty());
}

void BackupTest::salvageCopiesWhatReads() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  {
    const auto made = test::smallCatalogue(file);
    // So many that the table has pages of its own, of which one is lost.
    made.connection().database().exec(
        "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n LIMIT 3000) INSERT INTO change_log SELECT x, "
        "'2025', 'who', 'row changed', 'subject ' || x, 'before', 'after' FROM n");
  }
  QByteArray bytes = test::Folder::bytes(file);
  const auto page = bytes.indexOf("subject 1500") / 4096 * 4096;
  for (int i = 0; i < 4096; ++i) bytes[page + i] = '\x5A';
  folder.write("a.ohmkin", bytes);
  const auto salvaged = catalog::salvage(file, folder.path("new.ohmkin"));
  QVERIFY(!salvaged.whole());
  for (const auto& table : salvaged.tables) {
    if (table.table != "change_log") QVERIFY2(table.whole, (table.table + ": " + table.fault).c_str());
    else QVERIFY2(!table.whole && table.rows > 2800 && table.rows < 3000, std::to_string(table.rows).c_str());
  }
  QCOMPARE(test::Folder::bytes(file), bytes);
  QCOMPARE(quantity(folder.path("new.ohmkin")), 5);
  SQLite::Database database(folder.path("new.ohmkin").string(), SQLite::OPEN_READONLY);
  QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
  QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
  QCOMPARE(database.execAndGet("SELECT max(id) FROM change_log").getInt(), 3000);
  QCOMPARE(codeOf([&] { (void)catalog::salvage(file, folder.path("new.ohmkin")); }), std::string("catalogue-exists"));
}

void BackupTest::salvageLeavesOutADateThatIsNone() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  int all = 0;
  {
    const auto made = test::smallCatalogue(file);
    SQLite::Database& database = made.connection().database();
    all = database.execAndGet("SELECT count(*) FROM casting").getInt();
    // One bit of a day: the table's own rule does not see it.
    QCOMPARE(database.exec("UPDATE casting SET cast_from = substr(cast_from, 1, 9) || '!' WHERE rowid IN (SELECT "
                           "min(rowid) FROM casting)"),
             1);
  }
  const auto salvaged = catalog::salvage(file, folder.path("new.ohmkin"));
  for (const auto& table : salvaged.tables)
    if (table.table == "casting") QVERIFY(!table.whole && table.rows == all - 1 && table.broken == 1);
  SQLite::Database database(folder.path("new.ohmkin").string(), SQLite::OPEN_READONLY);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM casting").getInt(), all - 1);
  QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
}

void BackupTest::salvageOfAWholeFileLosesNothing() {
  const test::Folder folder;
  const auto old = earlier(folder, 2);
  const auto salvaged = catalog::salvage(old, folder.path("new.ohmkin"));
  for (const auto& table : salvaged.tables)
    QVERIFY2(table.whole || table.fault == "it is not in the list of tables",
             (table.table + ": " + table.fault + " " + std::to_string(table.broken)).c_str());
  QCOMPARE(quantity(folder.path("new.ohmkin")), 5);
  SQLite::Database database(folder.path("new.ohmkin").string(), SQLite::OPEN_READONLY);
  QCOMPARE(database.execAndGet("SELECT sum(ohms) FROM bench_reading").getInt(), 700 + 210 + 95);
}

QTEST_APPLESS_MAIN(BackupTest)
#include "tst_backup.moc"
