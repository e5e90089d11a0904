#include <catalog/backup.h>
#include <algorithm>
#include <set>

namespace ohmkin::catalog {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

int dayOf(const Backup& backup) {
  return static_cast<int>(std::chrono::floor<days>(backup.taken).time_since_epoch().count());
}
int weekOf(const Backup& backup) { return (dayOf(backup) + 3) / 7; }  // the epoch was a Thursday; weeks begin on Monday
int monthOf(const Backup& backup) {
  const std::chrono::year_month_day date{std::chrono::floor<days>(backup.taken)};
  return 12 * static_cast<int>(date.year()) + static_cast<int>(static_cast<unsigned>(date.month()));
}

/// Keeps the first of every span, newest first, until `most` spans had one.
class Keeping {
 public:
  Keeping(int (*span)(const Backup&), std::size_t most) : span_(span), most_(most) {}
  bool keeps(const Backup& backup) {
    const int span = span_(backup);
    if (seen_.contains(span) || seen_.size() == most_) return false;
    seen_.insert(span);
    return true;
  }

 private:
  int (*span_)(const Backup&);
  std::size_t most_;
  std::set<int> seen_;
};

}  // namespace

std::vector<Backup> outdated(std::span<const Backup> all) {
  constexpr std::size_t kUpdates = 3;
  std::vector<Backup> newestFirst(all.begin(), all.end());
  std::stable_sort(newestFirst.begin(), newestFirst.end(),
                   [](const Backup& a, const Backup& b) { return a.taken > b.taken; });
  Keeping daily(dayOf, 7);
  Keeping weekly(weekOf, 4);
  Keeping monthly(monthOf, 12);
  std::size_t updates = 0;
  std::vector<Backup> over;
  for (const Backup& backup : newestFirst) {
    bool keep = true;
    if (backup.reason == BackupReason::beforeMigration) keep = ++updates <= kUpdates;
    if (backup.reason == BackupReason::daily) {
      const bool ofDay = daily.keeps(backup);
      const bool ofWeek = weekly.keeps(backup);
      const bool ofMonth = monthly.keeps(backup);
      keep = ofDay || ofWeek || ofMonth;
    }
    if (!keep) over.push_back(backup);
  }
  return over;
}

}  // namespace ohmkin::catalog
