#include <fmt/format.h>
#include <workflow/backup.h>
#include <algorithm>

namespace ohmkin::workflow {

std::vector<BackupState> knownBackups(const std::filesystem::path& catalogue) {
  std::vector<BackupState> states;
  for (auto& backup : catalog::backups(catalogue)) states.push_back({std::move(backup), {}});
  return states;
}

std::vector<BackupState> checkedBackups(const std::filesystem::path& catalogue) {
  auto states = knownBackups(catalogue);
  for (BackupState& state : states) {
    try {
      catalog::check(state.backup);
    } catch (const catalog::CatalogueError& error) {
      state.fault = error.refusal();
    }
  }
  return states;
}

Refusal noBackups(const std::filesystem::path& catalogue) {
  return {"backup-none", catalog::backupFolder(catalogue).string(), "no backup",
          "one; 'ohmkin backup make' makes it, and one is made before the first change of a day"};
}

Expected<catalog::Backup> backupCalled(const std::filesystem::path& catalogue, const std::string& name) {
  const auto all = catalog::backups(catalogue);
  if (all.empty()) return tl::make_unexpected(noBackups(catalogue));
  std::vector<catalog::Backup> fitting;
  for (const catalog::Backup& backup : all) {
    const std::string file = backup.file.filename().string();
    if (file == name) return backup;
    if (name == "newest" && backup.reason != catalog::BackupReason::replaced) return backup;
    if (!name.empty() && file.starts_with(name)) fitting.push_back(backup);
  }
  if (fitting.size() == 1) return fitting.front();
  return refuse("backup-unknown", catalogue.string(), fmt::format("'{}'", name),
                fmt::format("newest, or one of its backups, for example {}", all.front().file.filename().string()));
}

std::string shortText(const catalog::Backup& backup) {
  return fmt::format("{}, {}, version {}, {:.1f} MB", catalog::moment(backup), catalog::text(backup.reason),
                     backup.version, static_cast<double>(backup.bytes) / 1e6);
}

std::string sentence(const catalog::Backup& made) {
  return fmt::format("Backup {} made, {:.1f} MB.", made.file.string(), static_cast<double>(made.bytes) / 1e6);
}

std::string sentence(const catalog::Restored& restored) {
  const std::string what = fmt::format("The catalogue is as it was on {}.", catalog::moment(restored.from));
  if (restored.kept.empty()) return what;
  return what + fmt::format(" The file that was there is kept as {}.", restored.kept.string());
}

std::vector<std::string> sentences(const catalog::Salvage& salvage) {
  std::vector<std::string> all{fmt::format("{} rows of {} tables copied.", salvage.rows(), salvage.tables.size())};
  for (const catalog::SalvagedTable& table : salvage.tables) {
    if (table.whole) continue;
    std::string text = fmt::format("{}: {} rows copied", table.table, table.rows);
    if (table.broken > 0) text += fmt::format(", {} left out that break a rule or refer to what is lost", table.broken);
    if (!table.fault.empty()) text += fmt::format("; some may be lost ({})", table.fault);
    all.push_back(text + ".");
  }
  if (salvage.whole()) all.emplace_back("Nothing was lost.");
  return all;
}

}  // namespace ohmkin::workflow
