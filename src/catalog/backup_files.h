#pragma once
#include <catalog/backup.h>
#include <catalog/connection.h>
#include <iosfwd>

/// Inside this room only: the files behind backup.h.
namespace ohmkin::catalog {

[[noreturn]] void backupFailed(const std::filesystem::path& file, std::string found);

/// SHA-256 of a file, lower-case hexadecimal; empty where it cannot be read.
std::string hashOf(const std::filesystem::path& file);
std::string hashOf(std::istream& in);  ///< from its beginning; it stays open

/// A name among the backups that no other program gets: FILE.backups/2026-11-25T194441Z-daily.ohmkin. Its hash lies
/// there before the file does, so that what has the name has its hash, whenever the power goes. Throws backup-failed.
class BackupName {
 public:
  BackupName(const std::filesystem::path& catalogue, BackupReason reason, const std::string& hash);
  ~BackupName();  ///< the hash goes again where no file came
  BackupName(const BackupName&) = delete;
  BackupName& operator=(const BackupName&) = delete;
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

 private:
  std::filesystem::path file_;
};
std::optional<Backup> backupNamed(const std::filesystem::path& file);

/// A file while it is being written; gone, with what SQLite put beside it, unless it got its name. Its own name tells
/// whose it is, for clearLeftovers().
class BackupDraft {
 public:
  static BackupDraft among(const std::filesystem::path& catalogue);   ///< in the folder of backups, which it makes
  static BackupDraft beside(const std::filesystem::path& catalogue);  ///< FILE.part-PID
  ~BackupDraft();
  BackupDraft(const BackupDraft&) = delete;
  BackupDraft& operator=(const BackupDraft&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  explicit BackupDraft(std::filesystem::path path);
  void clear() const;
  std::filesystem::path path_;
};

/// Drafts and hashes that were left by processes that ended amid their work: nobody has written to them for ten minutes
/// (another machine, whose processes are not seen here, may share the folder), and their process is gone, or began
/// after they were last written and only has the number.
void clearLeftovers(const std::filesystem::path& catalogue);

/// The bytes written to `file` last through a power cut, its name too.
void syncFile(const std::filesystem::path& file);
void syncFolder(const std::filesystem::path& folder);

Backup backUp(Connection& connection, BackupReason reason);
/// Before the first change of the day.
void backUpOfTheDay(Connection& connection);

}  // namespace ohmkin::catalog
