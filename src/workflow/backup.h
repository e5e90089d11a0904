#pragma once
#include <catalog/backup.h>
#include <catalog/salvage.h>
#include <finding/refusal.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Backups as the window and the terminal show them. They may take seconds with a large catalogue: not on the window's
/// own thread. All throw catalog::CatalogueError where a file fails.
namespace ohmkin::workflow {

struct BackupState {
  catalog::Backup backup;
  std::optional<Refusal> fault;  ///< only checked() looks: none means it holds
};
BackupState checked(catalog::Backup backup);  ///< all of it is read

std::vector<BackupState> knownBackups(const std::filesystem::path& catalogue);    ///< newest first, not looked into
std::vector<BackupState> checkedBackups(const std::filesystem::path& catalogue);  ///< every one read and checked
Refusal noBackups(const std::filesystem::path& catalogue);                        ///< backup-none

/// "newest" is the newest that is not one replaced; else a file name of the list, or the only one that begins so.
/// Refuses (backup-unknown), naming the newest.
Expected<catalog::Backup> backupCalled(const std::filesystem::path& catalogue, const std::string& name);

/// Lines of the change log and pieces' movements that only one of two files has.
struct Apart {
  std::int64_t changesLost = 0;  ///< only in the catalogue: going back to the backup loses them
  std::int64_t movementsLost = 0;
  std::int64_t changesBack = 0;  ///< only in the backup: going back brings them
  std::int64_t movementsBack = 0;
  std::string lastLost;  ///< when the newest of them was made, UTC, ISO 8601; empty: nothing is lost
};
/// What going back to a backup would lose and bring. A backup of an older version is told apart by the time it was
/// taken. Refuses, as opening does, where the catalogue or the backup cannot be read: then nobody can say.
Expected<Apart> apart(const std::filesystem::path& catalogue, const catalog::Backup& backup);

/// Whether a copy, or salvage, may help where a catalogue was refused. A file that is whole and refused for another
/// reason (in use, not to be read by this person, of a newer version) is helped by neither.
bool copiesMayHelp(const Refusal& refusal);
bool salvageMayHelp(const Refusal& refusal);

/// "2026-11-25 19:44:41 UTC, daily, version 3, 0.6 MB".
std::string shortText(const catalog::Backup& backup);
std::string sentence(const catalog::Backup& made);            ///< "Backup 2026-…-by-hand.ohmkin made."
std::string sentence(const catalog::Restored& restored);      ///< what is in place now, and where the old file is
std::vector<std::string> sentences(const catalog::Salvage&);  ///< what was copied, and table by table what was lost

}  // namespace ohmkin::workflow
