#include "changes.h"
#include "system_calls.h"

#include <catalog/backup.h>
#include <catalog/shop.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <algorithm>
#include <fstream>

using namespace ohmkin;
using catalog::Access;
using catalog::Backup;
using catalog::BackupReason;
using catalog::Catalogue;
using catalog::CatalogueError;
using test::CallKind;
using test::SystemCalls;

namespace {

namespace fs = std::filesystem;

constexpr int kOld = 99;      // pieces in B4 in the file that is replaced
constexpr int kRestored = 5;  // and in the backup

int piecesIn(const fs::path& file) {
  const Catalogue catalogue = Catalogue::openToRead(file);
  auto& database = catalogue.connection().database();
  if (const std::string pages = database.execAndGet("PRAGMA integrity_check(1)").getString(); pages != "ok")
    throw std::runtime_error(pages);
  if (database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt() != 0)
    throw std::runtime_error("rows refer to nothing");
  return database.execAndGet("SELECT quantity FROM stock WHERE bin = 'B4'").getInt();
}

void setPieces(const fs::path& file, int to, bool killed) {
  const pid_t child = fork();
  if (child == 0) {
    const Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    catalogue.connection().useWriteAheadLog();
    catalogue.connection().database().exec("UPDATE stock SET quantity = " + std::to_string(to) + " WHERE bin = 'B4'");
    if (killed) kill(getpid(), SIGKILL);  // the change stands in the log only
    catalogue.connection().database().exec("PRAGMA wal_checkpoint(TRUNCATE)");
    _exit(0);
  }
  int status = 0;
  waitpid(child, &status, 0);
}

std::vector<Backup> backupsFor(const fs::path& file, BackupReason reason) {
  auto all = catalog::backups(file);
  std::erase_if(all, [&](const Backup& backup) { return backup.reason != reason; });
  return all;
}

// What is done to a file; `wrongWith` says, as a sentence, what is wrong with the file and its backups after it was cut
// short (or was not); empty: nothing.
struct Work {
  const char* name;
  void (*prepare)(const fs::path& file);
  void (*run)(const fs::path& file);
  std::string (*wrongWith)(const fs::path& file, bool done);
};

void restoreIt(const fs::path& file) { (void)catalog::restore(file, backupsFor(file, BackupReason::byHand).front()); }

void prepareRestore(const fs::path& file) {
  {
    const auto made = test::smallCatalogue(file);
    (void)catalog::backUp(made);
  }
  setPieces(file, kOld, true);
}
void prepareDamaged(const fs::path& file) {
  prepareRestore(file);
  fs::remove(file.string() + "-wal");
  std::ofstream(file, std::ios::binary) << "dear diary";
  std::ofstream(file.string() + "-wal", std::ios::binary) << "and more";
}
void prepareLost(const fs::path& file) {
  prepareRestore(file);
  fs::remove(file);
}

std::string wrongWithKept(const fs::path& file) {
  const auto kept = backupsFor(file, BackupReason::replaced);
  if (kept.empty()) return "the old file is gone";
  catalog::check(kept.back());
  return piecesIn(kept.back().file) == kOld ? "" : "the file kept is not the old one";
}
std::string wrongWithRestored(const fs::path& file, bool done) {
  const int pieces = piecesIn(file);
  if (pieces == kOld) return done ? "acknowledged, and the old file is there" : "";
  if (pieces != kRestored) return "neither the old file nor the restored one";
  return wrongWithKept(file);
}
std::string wrongWithDamaged(const fs::path& file, bool done) {
  const QByteArray bytes = test::Folder::bytes(file);
  if (bytes == "dear diary") return done ? "acknowledged, and the old file is there" : "";
  if (piecesIn(file) != kRestored) return "neither the old file nor the restored one";
  const auto kept = backupsFor(file, BackupReason::replaced);
  const auto isKept = [&](const char* ending, const char* content) {
    return std::any_of(kept.begin(), kept.end(), [&](const Backup& backup) {
      return test::Folder::bytes(backup.file.string() + ending) == content;
    });
  };
  return isKept("", "dear diary") && isKept("-wal", "and more") ? "" : "the old file is gone";
}
std::string wrongWithLost(const fs::path& file, bool done) {
  if (!fs::exists(file)) return done ? "acknowledged, and no file is there" : "";
  return piecesIn(file) == kRestored ? "" : "not the restored file";
}

/// A catalogue as an earlier version had it: those that are kept, and from the newest of them on what the migrations
/// make of it.
template <int version>
void prepareVersion(const fs::path& file) {
  constexpr int kNewestKept = 2;
  const int kept = std::min(version, kNewestKept);
  fs::copy_file(OHMKIN_TEST_DATA "/catalogues/version-" + std::to_string(kept) + ".ohmkin", file);
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
  const auto all = catalog::migrations();
  catalog::migrate(database, std::span(all).first(version));
}
void update(const fs::path& file) { (void)Catalogue::open(file, Access::readWrite); }
template <int version>
std::string wrongWithUpdated(const fs::path& file, bool done) {
  int found = 0;
  {
    // Looked at without being brought up to date; what was cut short is taken back.
    SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
    found = catalog::userVersion(database);
    if (found < version || found > Catalogue::newestVersion() || (done && found != Catalogue::newestVersion()))
      return "version " + std::to_string(found);
    if (database.execAndGet("SELECT count(*) FROM sender").getInt() != 4) return "rows were lost";
  }
  const auto before = backupsFor(file, BackupReason::beforeMigration);
  if (found > version) {
    if (before.empty()) return "no backup was made before";
    if (before.back().version != version) return "a backup of another version";
  }
  for (const Backup& backup : before) catalog::check(backup);
  // Opening looks the tables over against those of the version that is found, and brings it up to date.
  return piecesIn(file) == kRestored ? "" : "rows were lost";
}

void backUpIt(const fs::path& file) { (void)catalog::backUp(Catalogue::openToRead(file)); }
std::string wrongWithBackup(const fs::path& file, bool done) {
  const auto all = backupsFor(file, BackupReason::byHand);
  if (all.size() < std::size_t{1} + done) return "acknowledged, and no backup is there";
  for (const Backup& backup : all) {
    catalog::check(backup);  // what has its name is whole, with its hash
    const int pieces = piecesIn(backup.file);
    if (pieces != kOld && pieces != kRestored) return "neither the old rows nor the new ones";
  }
  return piecesIn(file) == kOld ? "" : "the catalogue itself was changed";
}

constexpr std::array kWorks{Work{"a restore", prepareRestore, restoreIt, wrongWithRestored},
                            Work{"a restore over a damaged file", prepareDamaged, restoreIt, wrongWithDamaged},
                            Work{"a restore of a lost file", prepareLost, restoreIt, wrongWithLost},
                            Work{"a backup", prepareRestore, backUpIt, wrongWithBackup},
                            Work{"an update of version 1", prepareVersion<1>, update, wrongWithUpdated<1>},
                            Work{"an update of version 2", prepareVersion<2>, update, wrongWithUpdated<2>},
                            Work{"an update of version 3", prepareVersion<3>, update, wrongWithUpdated<3>},
                            Work{"an update of version 4", prepareVersion<4>, update, wrongWithUpdated<4>}};

constexpr int kOldestUpdate = 4;

std::string judged(const Work& work, const fs::path& file, bool done) {
  try {
    return work.wrongWith(file, done);
  } catch (const CatalogueError& error) {
    return error.refusal().sentence();
  } catch (const std::exception& failure) {
    return failure.what();
  }
}

void copyInto(const fs::path& from, const fs::path& to) {
  for (const auto& entry : fs::directory_iterator(to)) fs::remove_all(entry.path());
  fs::copy(from, to, fs::copy_options::recursive);
  fs::permissions(to, fs::perms::owner_all);
}

/// Long: every one; else the first ones, then growing steps.
int after(int n) { return test::longForm() || n < 12 ? n + 1 : n + n / 6; }

/// Long: all; else without the updates of the versions between the oldest and the newest.
std::vector<int> theWorks() {
  std::vector<int> all;
  for (int i = 0; i < static_cast<int>(kWorks.size()); ++i)
    if (test::longForm() || kWorks[static_cast<std::size_t>(i)].run != update || i == kOldestUpdate ||
        i + 1 == static_cast<int>(kWorks.size()))
      all.push_back(i);
  return all;
}

/// The process ends itself before the n-th call that changes anything. Returns whether it was done before that.
bool runKilledAt(const Work& work, const fs::path& file, int nth) {
  const pid_t child = fork();
  if (child == 0) {
    int calls = 0;
    SystemCalls::watch([&](CallKind kind, int) {
      if (kind != CallKind::reading && ++calls == nth) kill(getpid(), SIGKILL);
      return true;
    });
    try {
      work.run(file);
    } catch (const std::exception& failure) {
      fprintf(stderr, "child: %s\n", failure.what());
      _exit(1);
    }
    _exit(0);
  }
  int status = 0;
  waitpid(child, &status, 0);
  if (WIFEXITED(status) && WEXITSTATUS(status) != 0) qFatal("the child failed by itself");
  return WIFEXITED(status);
}

}  // namespace

/// Restoring, backing up and bringing up to date, cut short at any call that they make: by the process being killed, by
/// the call failing, by the power going. The old state or the new one, never neither; and what is replaced is kept.
class CutShort : public QObject {
  Q_OBJECT
 private slots:
  void byBeingKilled_data() { works(); }
  void byBeingKilled();
  void byACallThatFails_data();
  void byACallThatFails();
  void byLossOfPower_data() { works(); }
  void byLossOfPower();

 private:
  static void works() {
    QTest::addColumn<int>("which");
    for (const int i : theWorks()) QTest::newRow(kWorks[static_cast<std::size_t>(i)].name) << i;
  }
};

void CutShort::byBeingKilled() {
  QFETCH(int, which);
  const Work& work = kWorks[static_cast<std::size_t>(which)];
  const test::Folder whole, place;
  work.prepare(whole.path("a.ohmkin"));
  const auto file = place.path("a.ohmkin");
  for (int n = 1;; n = after(n)) {
    copyInto(whole.path(""), place.path(""));
    const bool done = runKilledAt(work, file, n);
    const std::string wrong = judged(work, file, done);
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    if (done) {
      qInfo("%d calls", n);
      return;
    }
    if (work.run != update || n % 7 == 0) {  // and it can be done again
      work.run(file);
      const std::string after = judged(work, file, true);
      QVERIFY2(after.empty(), (std::to_string(n) + ", again: " + after).c_str());
    }
  }
}

void CutShort::byACallThatFails_data() {
  QTest::addColumn<int>("which");
  QTest::addColumn<bool>("forGood");
  for (const int i : theWorks())
    for (const bool forGood : {false, true})
      QTest::addRow("%s, %s", kWorks[static_cast<std::size_t>(i)].name, forGood ? "for good" : "once") << i << forGood;
}

void CutShort::byACallThatFails() {
  QFETCH(int, which);
  QFETCH(bool, forGood);
  const Work& work = kWorks[static_cast<std::size_t>(which)];
  const test::Folder whole, place;
  work.prepare(whole.path("a.ohmkin"));
  const auto file = place.path("a.ohmkin");
  int refused = 0;
  for (int n = 1;; n = after(n)) {
    copyInto(whole.path(""), place.path(""));
    int calls = 0;
    int failures = 0;
    bool done = false;
    std::string wrong;
    SystemCalls::watch([&](CallKind, int) {
      const bool fails = forGood ? ++calls >= n : ++calls == n;
      failures += fails;
      return !fails;
    });
    try {
      work.run(file);
      done = true;
    } catch (const CatalogueError& error) {
      ++refused;
      const Refusal& refusal = error.refusal();
      if (!refusal.where.starts_with(file.string()) || refusal.found.empty() || refusal.expected.empty())
        wrong = "no clear sentence: " + refusal.sentence();
    } catch (const std::exception& failure) {
      wrong = std::string("not caught: ") + failure.what();
    }
    SystemCalls::watchNoMore();
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    wrong = judged(work, file, done);
    QVERIFY2(wrong.empty(), (std::to_string(n) + ": " + wrong).c_str());
    if (failures == 0) {
      QVERIFY(done);
      qInfo("%d calls, %d refusals", n, refused);
      return;
    }
  }
}

void CutShort::byLossOfPower() {
  QFETCH(int, which);
  const Work& work = kWorks[static_cast<std::size_t>(which)];
  std::mt19937 random(static_cast<unsigned>(1959 + which));
  const test::Folder found;
  int calls = 0;
  int cuts = 0;
  for (int round = 0; round < (test::longForm() ? 10 : 1); ++round) {
    const test::Folder place;
    const auto file = place.path("a.ohmkin");
    work.prepare(file);
    test::PowerCut power(file.parent_path());
    std::vector<test::PowerCut::Image> images;
    calls = 0;
    int next = 1;
    SystemCalls::watch([&](CallKind kind, int descriptor) {
      if (kind == CallKind::reading) return true;
      power.before();
      if (++calls == next) {
        next = after(next);
        for (int i = 0; i < 2; ++i) images.push_back(power.image(random));
      }
      if (kind == CallKind::syncing) power.synced(descriptor);
      return true;
    });
    work.run(file);
    SystemCalls::watchNoMore();
    power.before();
    const std::size_t done = images.size();
    for (int i = 0; i < 4; ++i) images.push_back(power.image(random));
    for (std::size_t i = 0; i < images.size(); ++i, ++cuts) {
      for (const auto& entry : fs::directory_iterator(found.path(""))) fs::remove_all(entry.path());
      for (const auto& [path, bytes] : images[i]) {
        fs::create_directories(fs::path(found.path(path)).parent_path());
        std::ofstream(found.path(path), std::ios::binary) << bytes;
      }
      const std::string wrong = judged(work, found.path("a.ohmkin"), i >= done);
      QVERIFY2(wrong.empty(), (std::to_string(i) + ": " + wrong).c_str());
    }
  }
  qInfo("%d calls, power lost %d times", calls, cuts);
}

QTEST_APPLESS_MAIN(CutShort)
#include "tst_cut_short.moc"
