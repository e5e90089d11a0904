#include <catalog/backup_files.h>
#include <catalog/row.h>
#include <catalog/trust.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <algorithm>
#include <map>
#include <mutex>
#include <utility>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;
using std::chrono::days;
using std::chrono::sys_seconds;

sys_seconds now() { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); }

/// Page by page, by SQLite, so that it is one state whatever others write meanwhile (sqlite.org/backup.html).
void copyPages(SQLite::Database& from, const fs::path& to) {
  SQLite::Database copy(to.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  sqlite3_backup* work = sqlite3_backup_init(copy.getHandle(), "main", from.getHandle(), "main");
  if (work == nullptr) throw SQLite::Exception(copy.getHandle());
  int outcome = SQLITE_OK;
  for (int waits = 0; waits < 100; ++waits) {
    outcome = sqlite3_backup_step(work, -1);
    if (outcome != SQLITE_BUSY && outcome != SQLITE_LOCKED) break;
    sqlite3_sleep(50);
  }
  sqlite3_backup_finish(work);
  if (outcome != SQLITE_DONE) throw SQLite::Exception(copy.getHandle(), outcome);
  copy.exec("PRAGMA journal_mode = DELETE");  // it is one file, without a log
}

void lookThrough(SQLite::Database& database, const fs::path& file) {
  const std::string found = database.execAndGet("PRAGMA quick_check(1)").getString();
  if (found != "ok")
    throw CatalogueError({"catalogue-damaged", file.string(),
                          fmt::format("a damaged catalogue ({})", firstFault(found)),
                          "a whole one; 'ohmkin backup list' shows the copies of it"});
}

/// Told once a file and day, however many threads and pages of a window write to it.
class MissedBackups {
 public:
  void add(const fs::path& catalogue, sys_seconds when, const Refusal& why) {
    const std::lock_guard turn(lock_);
    const auto today = std::chrono::floor<days>(when);
    const auto [known, isNew] = told_.try_emplace(fs::absolute(catalogue).lexically_normal(), today);
    if (!isNew && std::exchange(known->second, today) == today) return;
    untold_.push_back(why);
  }
  std::vector<Refusal> take() {
    const std::lock_guard turn(lock_);
    return std::exchange(untold_, {});
  }

 private:
  std::mutex lock_;
  std::map<fs::path, std::chrono::sys_days> told_;
  std::vector<Refusal> untold_;
};

MissedBackups& missed() {
  static MissedBackups all;
  return all;
}

void letGo(const fs::path& catalogue, const Backup& butNot) {
  std::error_code ignored;
  for (const Backup& backup : outdated(backups(catalogue))) {
    if (backup.file == butNot.file) continue;  // a clock set back does not make it old
    fs::remove(backup.file, ignored);
    fs::remove(backup.file.string() + ".sha256", ignored);
  }
}

}  // namespace

Backup backUp(Connection& connection, BackupReason reason) {
  const fs::path& file = connection.file();
  try {
    lookThrough(connection.database(), file);
    clearLeftovers(file);
    const BackupDraft draft = BackupDraft::among(file);
    copyPages(connection.database(), draft.path());
    std::error_code error;
    fs::permissions(draft.path(), fs::status(file, error).permissions(), error);
    syncFile(draft.path());
    const BackupName name(file, reason, hashOf(draft.path()));
    fs::rename(draft.path(), name.file(), error);
    if (error) backupFailed(file, fmt::format("a backup that could not be named ({})", error.message()));
    syncFolder(backupFolder(file));
    auto made = backupNamed(name.file());
    if (!made) backupFailed(file, "a backup that another program took away at once");
    letGo(file, *made);
    return *made;
  } catch (const SQLite::Exception& failure) {
    switch (failure.getErrorCode() & 0xFF) {
      case SQLITE_CORRUPT:
      case SQLITE_NOTADB:
      case SQLITE_BUSY:
        rethrow(failure, file);
      case SQLITE_FULL:
        backupFailed(file, "no room on the disk for a backup");
      default:
        backupFailed(file, fmt::format("a backup that could not be written ({})", failure.what()));
    }
  }
}

Backup backUp(const Catalogue& catalogue, BackupReason reason) { return backUp(catalogue.connection(), reason); }

std::vector<Refusal> takeMissedBackups() { return missed().take(); }

void backUpOfTheDay(Connection& connection) {
  const auto today = std::chrono::floor<days>(now());
  const auto all = backups(connection.file());
  const bool done = std::any_of(all.begin(), all.end(), [&](const Backup& backup) {
    return backup.reason == BackupReason::daily && std::chrono::floor<days>(backup.taken) == today;
  });
  if (done) return;
  const std::string made =
      connection.database().execAndGet("SELECT coalesce(max(loaded), '') FROM pack WHERE id = 'shop'").getString();
  const std::chrono::year_month_day date{today};
  if (made.starts_with(fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                                   static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()))))
    return;  // nothing in it is older than today
  try {
    (void)backUp(connection, BackupReason::daily);
  } catch (const CatalogueError& failure) {
    // A disk too full for the copy may yet have room for the change.
    if (failure.refusal().code != "backup-failed") throw;
    missed().add(connection.file(), now(), failure.refusal());
  }
}

}  // namespace ohmkin::catalog
