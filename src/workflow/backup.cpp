#include <catalog/change_log.h>
#include <catalog/stock.h>
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <workflow/backup.h>
#include <algorithm>
#include <array>
#include <functional>

namespace ohmkin::workflow {
namespace {

using catalog::Catalogue;

/// Both logs only grow, numbered from 1 without gaps: what two files have in common is the beginning. The last number
/// for which it holds; 0: for none.
std::int64_t lastInCommon(std::int64_t newest, const std::function<bool(std::int64_t)>& common) {
  std::int64_t low = 0;
  for (std::int64_t high = newest + 1; high - low > 1;) {
    const std::int64_t middle = low + (high - low) / 2;
    (common(middle) ? low : high) = middle;
  }
  return low;
}

std::int64_t newestChange(const Catalogue& catalogue) {
  catalog::ChangeFilter one;
  one.most = 1;
  const auto newest = catalog::changes(catalogue, one);
  return newest.empty() ? 0 : newest.front().id;
}

std::int64_t newestMovement(const Catalogue& catalogue) {
  const auto newest = catalog::movements(catalogue, 1);
  return newest.empty() ? 0 : newest.front().id.value;
}

bool sameChange(const Catalogue& one, const Catalogue& other, std::int64_t id) {
  const auto a = catalog::change(one, id);
  const auto b = catalog::change(other, id);
  return a && b && a->at == b->at && a->who == b->who && a->what == b->what && a->subject == b->subject &&
         a->before == b->before && a->after == b->after;
}

/// Note and job may be gone from one of them: a job was erased.
bool sameMovement(const Catalogue& one, const Catalogue& other, std::int64_t id) {
  const auto a = catalog::movement(one, {id});
  const auto b = catalog::movement(other, {id});
  return a && b && a->at == b->at && a->who == b->who && a->sender == b->sender && a->change == b->change;
}

void sayLast(const Catalogue& now, std::int64_t changes, std::int64_t movements, Apart& apart) {
  if (apart.changesLost > 0) apart.lastLost = catalog::change(now, changes)->at;
  if (apart.movementsLost > 0) apart.lastLost = std::max(apart.lastLost, catalog::movement(now, {movements})->at);
}

Apart apartByTime(const Catalogue& now, const catalog::Backup& backup) {
  const std::string taken = fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(backup.taken));
  const std::int64_t changes = newestChange(now);
  const std::int64_t movements = newestMovement(now);
  const auto earlier = [&](const auto& line) { return line && line->at < taken; };
  Apart apart;
  apart.changesLost = changes - lastInCommon(changes, [&](auto id) { return earlier(catalog::change(now, id)); });
  apart.movementsLost =
      movements - lastInCommon(movements, [&](auto id) { return earlier(catalog::movement(now, {id})); });
  sayLast(now, changes, movements, apart);
  return apart;
}

Apart apartByLines(const Catalogue& now, const Catalogue& then) {
  const std::int64_t changes = newestChange(now);
  const std::int64_t changesThen = newestChange(then);
  const std::int64_t movements = newestMovement(now);
  const std::int64_t movementsThen = newestMovement(then);
  const auto changed = lastInCommon(std::min(changes, changesThen), [&](auto id) { return sameChange(now, then, id); });
  const auto moved =
      lastInCommon(std::min(movements, movementsThen), [&](auto id) { return sameMovement(now, then, id); });
  Apart apart{changes - changed, movements - moved, changesThen - changed, movementsThen - moved, {}};
  sayLast(now, changes, movements, apart);
  return apart;
}

template <std::size_t Count>
bool oneOf(const Refusal& refusal, const std::array<std::string_view, Count>& codes) {
  return std::find(codes.begin(), codes.end(), refusal.code) != codes.end();
}

}  // namespace

Expected<Apart> apart(const std::filesystem::path& catalogue, const catalog::Backup& backup) {
  try {
    const Catalogue now = Catalogue::openToRead(catalogue);
    if (backup.version < Catalogue::newestVersion()) return apartByTime(now, backup);
    return apartByLines(now, Catalogue::open(backup.file, catalog::Access::readOnly));
  } catch (const catalog::CatalogueError& error) {
    return tl::make_unexpected(error.refusal());
  }
}

bool copiesMayHelp(const Refusal& refusal) {
  static constexpr std::array<std::string_view, 9> kCodes{
      "catalogue-missing", "catalogue-empty",  "catalogue-not-sqlite",     "catalogue-not-ours", "catalogue-damaged",
      "catalogue-moved",   "catalogue-failed", "catalogue-foreign-tables", "catalogue-endless"};
  return oneOf(refusal, kCodes);
}

bool salvageMayHelp(const Refusal& refusal) {
  static constexpr std::array<std::string_view, 4> kCodes{"catalogue-damaged", "catalogue-failed",
                                                          "catalogue-foreign-tables", "catalogue-endless"};
  return oneOf(refusal, kCodes);
}

std::vector<BackupState> knownBackups(const std::filesystem::path& catalogue) {
  std::vector<BackupState> states;
  for (auto& backup : catalog::backups(catalogue)) states.push_back({std::move(backup), {}});
  return states;
}

BackupState checked(catalog::Backup backup) {
  BackupState state{std::move(backup), {}};
  try {
    catalog::check(state.backup);
  } catch (const catalog::CatalogueError& error) {
    state.fault = error.refusal();
  }
  return state;
}

std::vector<BackupState> checkedBackups(const std::filesystem::path& catalogue) {
  auto states = knownBackups(catalogue);
  for (BackupState& state : states) state = checked(std::move(state.backup));
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
