#pragma once
#include <catalog/backup.h>
#include <catalog/salvage.h>
#include <finding/refusal.h>
#include <optional>
#include <string>
#include <vector>

/// Backups as the window and the terminal show them. They may take seconds with a large catalogue: not on the window's
/// own thread. All throw catalog::CatalogueError where a file fails.
namespace ohmkin::workflow {

struct BackupState {
  catalog::Backup backup;
  std::optional<Refusal> fault;  ///< only checkedBackups() looks: none means it holds
};

std::vector<BackupState> knownBackups(const std::filesystem::path& catalogue);    ///< newest first, not looked into
std::vector<BackupState> checkedBackups(const std::filesystem::path& catalogue);  ///< every one read and checked
Refusal noBackups(const std::filesystem::path& catalogue);                        ///< backup-none

/// "newest" is the newest that is not one replaced; else a file name of the list, or the only one that begins so.
/// Refuses (backup-unknown), naming the newest.
Expected<catalog::Backup> backupCalled(const std::filesystem::path& catalogue, const std::string& name);

/// "2026-11-25 19:44:41 UTC, daily, version 3, 0.6 MB".
std::string shortText(const catalog::Backup& backup);
std::string sentence(const catalog::Backup& made);            ///< "Backup 2026-…-by-hand.ohmkin made."
std::string sentence(const catalog::Restored& restored);      ///< what is in place now, and where the old file is
std::vector<std::string> sentences(const catalog::Salvage&);  ///< what was copied, and table by table what was lost

}  // namespace ohmkin::workflow
