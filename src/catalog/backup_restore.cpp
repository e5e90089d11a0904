#include <catalog/backup_files.h>
#include <catalog/file_header.h>
#include <catalog/migration.h>
#include <catalog/trust.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>
#include <fstream>

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

/// Its log, where it has one, goes into it, and nobody else has it open; so that it can be put aside as one file. A
/// catalogue that cannot even be opened is put aside with what lies beside it.
void makeOneFile(const fs::path& catalogue) {
  try {
    SQLite::Database database(fs::absolute(catalogue).string(), SQLite::OPEN_READWRITE, 2000);
    setLimits(database.getHandle());
    const std::string mode = database.execAndGet("PRAGMA journal_mode = DELETE").getString();
    if (mode == "delete") return;
    throw CatalogueError({"catalogue-busy", catalogue.string(), "a catalogue another program has open",
                          "it to be closed there; then restore again"});
  } catch (const SQLite::Exception& failure) {
    const int code = failure.getErrorCode() & 0xFF;
    if (code == SQLITE_BUSY || code == SQLITE_LOCKED)
      throw CatalogueError({"catalogue-busy", catalogue.string(), "a catalogue another program has open",
                            "it to be closed there; then restore again"});
  }
}

/// A second name for the old file, so that it is never without one; what lies beside it goes along.
fs::path putAside(const fs::path& catalogue) {
  std::error_code error;
  if (!fs::exists(catalogue, error)) return {};
  if (readFileHeader(catalogue).nature == FileNature::sqlite) makeOneFile(catalogue);
  fs::create_directory(backupFolder(catalogue), fs::absolute(catalogue).parent_path(), error);
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  fs::path kept = newBackupName(catalogue, now, BackupReason::replaced);
  fs::create_hard_link(catalogue, kept, error);
  if (error) fs::copy_file(catalogue, kept, error);  // a file system without second names
  if (error) backupFailed(catalogue, fmt::format("the old file, which could not be kept ({})", error.message()));
  for (const char* ending : {"-wal", "-journal"}) {
    if (fs::exists(catalogue.string() + ending, error))
      fs::rename(catalogue.string() + ending, kept.string() + ending, error);
  }
  fs::remove(catalogue.string() + "-shm", error);
  writeHash(kept);
  syncFolder(backupFolder(catalogue));
  return kept;
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
    if (pages != "ok") damaged(backup, fmt::format("a copy of a damaged catalogue ({})", pages));
    SQLite::Statement dangling(connection.database(), "PRAGMA foreign_key_check");
    if (dangling.executeStep()) damaged(backup, "a copy of a catalogue with rows that refer to nothing");
  } catch (const SQLite::Exception& failure) {
    damaged(backup, fmt::format("a backup that cannot be read ({})", failure.what()));
  }
}

Restored restore(const fs::path& catalogue, const Backup& backup) {
  check(backup);
  const fs::path draft = catalogue.string() + fmt::format(".part-{}", getpid());
  std::error_code error;
  fs::copy_file(backup.file, draft, fs::copy_options::overwrite_existing, error);
  const auto giveUp = [&](std::string found) {
    std::error_code ignored;
    fs::remove(draft, ignored);
    backupFailed(catalogue, std::move(found));
  };
  if (error) giveUp(fmt::format("a copy that could not be written ({})", error.message()));
  if (hashOf(draft) != writtenHash(backup)) giveUp("a copy that is not the backup");
  try {
    syncFile(draft);
    Restored restored{backup, putAside(catalogue)};
    fs::rename(draft, catalogue, error);
    if (error) giveUp(fmt::format("a copy that could not be put in its place ({})", error.message()));
    syncFolder(catalogue.parent_path());
    return restored;
  } catch (const CatalogueError&) {
    fs::remove(draft, error);
    throw;
  }
}

}  // namespace ohmkin::catalog
