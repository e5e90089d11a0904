#include "changes.h"
#include "failing_disk.h"

#include <catalog/backup.h>
#include <QtTest>
#include <cstdlib>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;
using test::DiskCall;
using test::FailingDisk;

namespace {

namespace fs = std::filesystem;

/// SQLite's allocations, of which the n-th fails, once or from then on.
struct Memory {
  static inline sqlite3_mem_methods real{};
  static inline int countdown = 0;  ///< 0: none fails
  static inline bool forGood = false;
  static inline int failures = 0;

  static bool fails() {
    if (countdown == 0) return false;
    if (countdown > 1) {
      --countdown;
      return false;
    }
    if (failures > 0 && !forGood) return false;
    ++failures;
    return true;
  }
  static void* allocate(int bytes) { return fails() ? nullptr : real.xMalloc(bytes); }
  static void* reallocate(void* old, int bytes) { return fails() ? nullptr : real.xRealloc(old, bytes); }
  static void install() {
    if (sqlite3_config(SQLITE_CONFIG_GETMALLOC, &real) != SQLITE_OK) qFatal("too late");
    static sqlite3_mem_methods ours = real;
    ours.xMalloc = allocate;
    ours.xRealloc = reallocate;
    if (sqlite3_config(SQLITE_CONFIG_MALLOC, &ours) != SQLITE_OK) qFatal("too late");
  }
};

/// Opens and makes two changes; how many were acknowledged, and what stopped it.
struct Attempt {
  int acknowledged = 0;
  bool refused = false;
  std::string wrong;  ///< not a sentence naming the file
};
Attempt attempt(const fs::path& file, const test::KindOfChange& kind) {
  Attempt result;
  try {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    for (; result.acknowledged < 2; ++result.acknowledged) kind.change(catalogue, result.acknowledged + 1);
  } catch (const CatalogueError& error) {
    result.refused = true;
    const Refusal& refusal = error.refusal();
    if (refusal.where != file.string() || refusal.found.empty() || refusal.expected.empty())
      result.wrong = "no clear sentence: " + refusal.sentence();
  } catch (const std::exception& failure) {
    result.wrong = std::string("not caught: ") + failure.what();
  }
  return result;
}

/// Rises until nothing fails any more; every step by itself at first, then in growing steps unless in the long form.
int after(int n) { return test::longForm() || n < 40 ? n + 1 : n + n / 12; }

}  // namespace

/// Any n-th call fails, once and for good, n rising until success: never a crash, always a sentence that names the
/// file, and nothing lost.
class FailingCalls : public QObject {
  Q_OBJECT
 private slots:
  void initTestCase();
  void ofTheDisk_data();
  void ofTheDisk();
  void ofMemory_data();
  void ofMemory();
  void ofMemoryDuringAnUpdate_data();
  void ofMemoryDuringAnUpdate();
};

void FailingCalls::initTestCase() {
  Memory::install();  // before SQLite's first use
  FailingDisk::install();
}

void FailingCalls::ofTheDisk_data() {
  QTest::addColumn<int>("which");
  QTest::addColumn<int>("call");
  QTest::addColumn<bool>("forGood");
  struct Call {
    DiskCall call;
    const char* name;
  };
  for (int i = 0; i < static_cast<int>(test::kKinds.size()); ++i)
    for (const Call& call : {Call{DiskCall::open, "open"},
                             {DiskCall::read, "read"},
                             {DiskCall::write, "write"},
                             {DiskCall::truncate, "truncate"},
                             {DiskCall::sync, "sync"},
                             {DiskCall::remove, "remove"},
                             {DiskCall::any, "any"}})
      for (const bool forGood : {false, true})
        QTest::addRow("%s, %s, %s", test::kKinds[static_cast<std::size_t>(i)].name, call.name,
                      forGood ? "for good" : "once")
            << i << static_cast<int>(call.call) << forGood;
}

void FailingCalls::ofTheDisk() {
  QFETCH(int, which);
  QFETCH(int, call);
  QFETCH(bool, forGood);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  FailingDisk& disk = FailingDisk::install();
  const test::Folder folder;
  { const auto made = test::smallCatalogue(folder.path("whole.ohmkin")); }
  int refused = 0;
  for (int n = 1;; n = after(n)) {
    const test::Folder place;
    const auto file = place.path("a.ohmkin");
    fs::copy_file(folder.path("whole.ohmkin"), file);
    disk.failFrom(static_cast<DiskCall>(call), n, forGood);
    const Attempt tried = attempt(file, kind);
    const int failures = disk.failures();
    disk.failNever();
    QVERIFY2(tried.wrong.empty(), (std::to_string(n) + ": " + tried.wrong).c_str());
    const std::string wrong = test::wrongWith(file, kind, tried.acknowledged);
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    refused += tried.refused;
    if (failures == 0) {
      QCOMPARE(tried.acknowledged, 2);
      qInfo("%d calls, %d refusals", n, refused);
      return;
    }
  }
}

void FailingCalls::ofMemory_data() {
  QTest::addColumn<int>("which");
  QTest::addColumn<bool>("forGood");
  for (int i = 0; i < static_cast<int>(test::kKinds.size()); ++i)
    for (const bool forGood : {false, true})
      QTest::addRow("%s, %s", test::kKinds[static_cast<std::size_t>(i)].name, forGood ? "for good" : "once")
          << i << forGood;
}

void FailingCalls::ofMemory() {
  QFETCH(int, which);
  QFETCH(bool, forGood);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  const test::Folder folder;
  { const auto made = test::smallCatalogue(folder.path("whole.ohmkin")); }
  int refused = 0;
  for (int n = 1;; n = after(n)) {
    const test::Folder place;
    const auto file = place.path("a.ohmkin");
    fs::copy_file(folder.path("whole.ohmkin"), file);
    Memory::failures = 0;
    Memory::forGood = forGood;
    Memory::countdown = n;
    const Attempt tried = attempt(file, kind);
    Memory::countdown = 0;
    QVERIFY2(tried.wrong.empty(), (std::to_string(n) + ": " + tried.wrong).c_str());
    const std::string wrong = test::wrongWith(file, kind, tried.acknowledged);
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    refused += tried.refused;
    if (Memory::failures == 0) {
      QCOMPARE(tried.acknowledged, 2);
      qInfo("%d allocations, %d refusals", n, refused);
      return;
    }
  }
}

void FailingCalls::ofMemoryDuringAnUpdate_data() {
  QTest::addColumn<int>("version");
  QTest::addColumn<bool>("forGood");
  for (const int version : {1, 2})
    for (const bool forGood : {false, true})
      QTest::addRow("version %d, %s", version, forGood ? "for good" : "once") << version << forGood;
}

/// The disk's calls fail in tst_cut_short.
void FailingCalls::ofMemoryDuringAnUpdate() {
  QFETCH(int, version);
  QFETCH(bool, forGood);
  const fs::path old = OHMKIN_TEST_DATA "/catalogues/version-" + std::to_string(version) + ".ohmkin";
  int refused = 0;
  for (int n = 1;; n = after(n)) {
    const test::Folder place;
    const auto file = place.path("a.ohmkin");
    fs::copy_file(old, file);
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
    Memory::failures = 0;
    Memory::forGood = forGood;
    Memory::countdown = n;
    std::string wrong;
    try {
      (void)Catalogue::open(file, Access::readWrite);
    } catch (const CatalogueError& error) {
      ++refused;
      if (!error.refusal().where.starts_with(file.string()) || error.refusal().found.empty())
        wrong = "no clear sentence: " + error.refusal().sentence();
    } catch (const std::exception& failure) {
      wrong = std::string("not caught: ") + failure.what();
    }
    Memory::countdown = 0;
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    int found = 0;
    {
      SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
      found = catalog::userVersion(database);
    }
    const auto backups = catalog::backups(file);
    if (found > version) QVERIFY2(!backups.empty() && backups.back().version == version, "no backup before");
    for (const auto& backup : backups) catalog::check(backup);
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);  // looks its tables over, goes on
    QCOMPARE(catalog::userVersion(catalogue.connection().database()), Catalogue::newestVersion());
    QCOMPARE(test::number(catalogue, "SELECT count(*) FROM sender"), 4);
    if (Memory::failures == 0) {
      QCOMPARE(found, Catalogue::newestVersion());
      qInfo("%d allocations, %d refusals", n, refused);
      return;
    }
  }
}

QTEST_APPLESS_MAIN(FailingCalls)
#include "tst_failing_calls.moc"
