#include <catalog/backup_files.h>
#include <catalog/file_header.h>
#include <catalog/migration.h>
#include <catalog/trust.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <fstream>
#include <optional>
#include <sstream>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void damaged(const Backup& backup, std::string found) {
  throw CatalogueError(
      {"backup-damaged", backup.file.string(), std::move(found), "a backup as it was written; take another"});
}

std::string writtenHash(const Backup& backup) {
  std::ifstream in(backup.file.string() + ".sha256");
  std::string hash;
  in >> hash;
  return hash;
}

/// Nobody else has the file open, and nobody changes it until this is gone. Its log, where it has one, goes into it
/// first, so that it can be put aside as one file. A damaged catalogue, or one that does not read, is put aside with
/// what lies beside it.
class Alone {
 public:
  Alone(const fs::path& catalogue, bool reads) {
    const auto busy = [&] {
      return CatalogueError({"catalogue-busy", catalogue.string(), "a catalogue another program has open",
                             "it to be closed there; then restore again"});
    };
    try {
      database_.emplace(fs::absolute(catalogue).string(), SQLite::OPEN_READWRITE, 2000);
      setLimits(database_->getHandle());
      if (database_->execAndGet("PRAGMA journal_mode = DELETE").getString() != "delete") throw busy();
      database_->exec("BEGIN EXCLUSIVE");
    } catch (const SQLite::Exception& failure) {
      const int code = failure.getErrorCode() & 0xFF;
      if (code == SQLITE_BUSY || code == SQLITE_LOCKED) throw busy();
      if (reads && code != SQLITE_CORRUPT && code != SQLITE_NOTADB) rethrow(failure, catalogue);
      database_.reset();
    }
  }

 private:
  std::optional<SQLite::Database> database_;
};

/// A log or a journal of a catalogue that could not be opened goes with the file it belongs to, and comes back unless
/// the other file came to its place: a file without its log is not the old one.
class Companions {
 public:
  Companions(const fs::path& catalogue, const fs::path& kept) {
    for (const char* ending : {"-wal", "-journal"}) {
      std::error_code error;
      const fs::path from = catalogue.string() + ending;
      const fs::path to = kept.string() + ending;
      if (!fs::exists(fs::symlink_status(from, error))) continue;
      fs::rename(from, to, error);
      if (!error) moved_.emplace_back(from, to);
      else failed_ = error;
    }
    if (!failed_) return;
    putBack();
    backupFailed(catalogue, fmt::format("a log beside it that could not be put aside ({})", failed_.message()));
  }
  ~Companions() { putBack(); }
  Companions(const Companions&) = delete;
  Companions& operator=(const Companions&) = delete;
  void stay() { moved_.clear(); }

 private:
  void putBack() {
    std::error_code ignored;
    for (const auto& [from, to] : moved_) fs::rename(to, from, ignored);
    moved_.clear();
  }
  std::vector<std::pair<fs::path, fs::path>> moved_;
  std::error_code failed_;
};

/// A second name for the old file, so that it is never without one.
void keep(const fs::path& catalogue, std::istream& content, const fs::path& kept) {
  std::error_code error;
  fs::create_hard_link(catalogue, kept, error);
  if (!error) return;
  const BackupDraft draft = BackupDraft::among(catalogue);  // a file system without second names
  std::ofstream out(draft.path(), std::ios::binary);
  content.clear();
  content.seekg(0);
  out << content.rdbuf();
  if (!out.flush()) backupFailed(catalogue, "the old file, which could not be kept");
  out.close();
  syncFile(draft.path());
  fs::rename(draft.path(), kept, error);
  if (error) backupFailed(catalogue, fmt::format("the old file, which could not be kept ({})", error.message()));
}

void putInPlace(const fs::path& draft, const fs::path& catalogue) {
  std::error_code error;
  fs::rename(draft, catalogue, error);
  if (error) backupFailed(catalogue, fmt::format("a copy that could not be put in its place ({})", error.message()));
  syncFolder(catalogue.parent_path());
}

std::string hashOfNothing() {
  std::istringstream nothing;
  return hashOf(nothing);
}

/// Where the old file was kept.
fs::path exchange(const fs::path& catalogue, const fs::path& draft) {
  std::error_code error;
  if (!fs::is_regular_file(catalogue, error)) backupFailed(catalogue, "something in its place that is no file");
  const bool isDatabase = readFileHeader(catalogue).nature == FileNature::sqlite;
  // Read through one opening that stays until the end: closing a file lets go of every lock this program has on it
  // (fcntl(2)), the one that keeps others from changing it as well.
  std::ifstream content(catalogue, std::ios::binary);
  std::optional<Alone> alone;
  const bool reads = !hashOf(content).empty();
  if (isDatabase) alone.emplace(catalogue, reads);
  fs::create_directory(backupFolder(catalogue), fs::absolute(catalogue).parent_path(), error);
  const std::string hash = hashOf(content);
  if (reads && hash.empty()) backupFailed(catalogue, "the old file, which could not be read");
  const BackupName kept(catalogue, BackupReason::replaced, hash.empty() ? hashOfNothing() : hash);
  keep(catalogue, content, kept.file());
  Companions companions(catalogue, kept.file());
  fs::remove(catalogue.string() + "-shm", error);
  syncFolder(backupFolder(catalogue));
  putInPlace(draft, catalogue);
  companions.stay();
  return kept.file();
}

/// A log without its file would be taken for one of the new file. It may be all that is left of a day.
void putAsideWhatIsBeside(const fs::path& catalogue) {
  std::error_code error;
  if (!fs::exists(catalogue.string() + "-wal", error) && !fs::exists(catalogue.string() + "-journal", error)) return;
  fs::create_directory(backupFolder(catalogue), fs::absolute(catalogue).parent_path(), error);
  const BackupName name(catalogue, BackupReason::replaced, hashOfNothing());
  Companions(catalogue, name.file()).stay();
  fs::remove(catalogue.string() + "-shm", error);
}

}  // namespace

void check(const Backup& backup) {
  const std::string written = writtenHash(backup);
  const std::string found = hashOf(backup.file);
  if (found.empty()) damaged(backup, "a backup that cannot be read");
  if (written.empty()) damaged(backup, "no hash of it beside it");
  if (written != found) damaged(backup, "other bytes than were written");
  try {
    Connection connection(backup.file, Access::readOnly, true);
    const int version = userVersion(connection.database());
    if (version > Catalogue::newestVersion()) damaged(backup, "a backup made by a newer Ohmkin");
    checkTables(connection, version);
    const std::string pages = connection.database().execAndGet("PRAGMA integrity_check(1)").getString();
    if (pages != "ok") damaged(backup, fmt::format("a copy of a damaged catalogue ({})", firstFault(pages)));
    SQLite::Statement dangling(connection.database(), "PRAGMA foreign_key_check");
    if (dangling.executeStep()) damaged(backup, "a copy of a catalogue with rows that refer to nothing");
  } catch (const SQLite::Exception& failure) {
    damaged(backup, fmt::format("a backup that cannot be read ({})", failure.what()));
  }
}

Restored restore(const fs::path& named, const Backup& backup) {
  check(backup);
  clearLeftovers(named);
  std::error_code error;
  const bool isLink = fs::is_symlink(named, error);
  const fs::path catalogue = isLink ? fs::canonical(named, error) : named;
  if (error && isLink) backupFailed(named, fmt::format("a link that leads nowhere ({})", error.message()));
  const BackupDraft draft = BackupDraft::beside(catalogue);
  fs::copy_file(backup.file, draft.path(), fs::copy_options::overwrite_existing, error);
  if (error) backupFailed(catalogue, fmt::format("a copy that could not be written ({})", error.message()));
  if (hashOf(draft.path()) != writtenHash(backup)) backupFailed(catalogue, "a copy that is not the backup");
  syncFile(draft.path());
  if (fs::exists(catalogue, error)) return {backup, exchange(catalogue, draft.path())};
  putAsideWhatIsBeside(catalogue);
  putInPlace(draft.path(), catalogue);
  return {backup, {}};
}

}  // namespace ohmkin::catalog
