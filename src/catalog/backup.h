#pragma once
#include <catalog/catalogue.h>
#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Copies of a catalogue, kept in the folder FILE.backups beside it: wherever the catalogue may be written, so may
/// they; they have its access rights, go with the folder to another machine, serve all who share it, and are found
/// without this program. Each is a catalogue of its own with its SHA-256 in a file of the same name and .sha256, as
/// `sha256sum --check` reads it. A copy on another disk is the shop's own to make.
///
/// One is made before every migration, and one a day before the first change, from the day after the catalogue was
/// made; where that one fails the change goes ahead and takeMissedBackups() tells.
namespace ohmkin::catalog {

enum class BackupReason { daily, beforeMigration, byHand, replaced };
std::string_view text(BackupReason reason);  ///< "daily", "before an update", "by hand", "replaced"

struct Backup {
  std::filesystem::path file;
  std::chrono::sys_seconds taken;  ///< UTC
  BackupReason reason = BackupReason::daily;
  int version = 0;  ///< of its tables
  std::uintmax_t bytes = 0;
};
std::string moment(const Backup& backup);  ///< "2026-11-25 19:44:41 UTC"

std::filesystem::path backupFolder(const std::filesystem::path& catalogue);
/// Newest first. The catalogue itself may be lost.
std::vector<Backup> backups(const std::filesystem::path& catalogue);

/// Copies the catalogue as it is now, while others read and write it, and lets those go whose time is over. Throws
/// catalogue-damaged where it is damaged, before anything is let go; backup-failed where it could not be written.
Backup backUp(const Catalogue& catalogue, BackupReason reason = BackupReason::byHand);

/// Throws backup-damaged unless its bytes are those that were written, and its pages and references hold.
void check(const Backup& backup);

struct Restored {
  Backup from;
  std::filesystem::path kept;  ///< the file it replaced; empty: there was none
};
/// Puts a copy of the backup, checked, in the catalogue's place in one step: at any moment there is the old file or the
/// new one. The old one is kept among the backups, damaged or not. Throws backup-damaged, catalogue-busy where another
/// program has the catalogue open, backup-failed.
Restored restore(const std::filesystem::path& catalogue, const Backup& backup);

/// Why a first change of the day was let go ahead without the day's backup, of any file this program wrote to: a disk
/// too full for a copy may yet have room for the change. backup-failed; every file once a day, then taken from here:
/// whoever asks tells it. From any thread.
std::vector<Refusal> takeMissedBackups();

/// Those that need not be kept: of the daily ones all but the last of each of the last 7 days, 4 weeks and 12 months
/// that have one; of those before an update all but the last 3. Others are a person's to delete.
std::vector<Backup> outdated(std::span<const Backup> all);

}  // namespace ohmkin::catalog
