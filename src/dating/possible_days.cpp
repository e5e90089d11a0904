#include <dating/calendar.h>
#include <dating/possible_days.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::dating {

using std::chrono::days;

namespace {

constexpr int kWidestWindow = 300 * 366;  ///< days

/// The days the path names in one year, before its weekday is looked at.
std::optional<Days> withinYear(const Path& path, int year) {
  if (path.says(Part::dayOfYear)) {
    const int ordinal = path.value(Part::dayOfYear);
    if (ordinal < 1 || ordinal > daysInYear(year)) return {};
    const Date day = date(year, 1, 1) + days{ordinal - 1};
    return Days{day, day + days{1}};
  }
  if (path.says(Part::week)) {
    const int week = path.value(Part::week);
    if (week < 1 || week > weeksIn(year)) return {};
    const Date monday = mondayOf(year, week);
    return Days{monday, monday + days{7}};
  }
  const int month = path.value(Part::month);
  if (month < 1 || month > 12) return {};
  const Date first = date(year, static_cast<unsigned>(month), 1);
  const int length = daysInMonth(year, month);
  if (!path.says(Part::day)) return Days{first, first + days{length}};
  const int day = path.value(Part::day);
  if (day < 1 || day > length) return {};
  return Days{first + days{day - 1}, first + days{day}};
}

}  // namespace

Expected<Days> closedWindow(const DateSpan& window) {
  const Days closed{window.from.value_or(date(1900, 1, 1)), window.until.value_or(date(2030, 1, 1))};
  const auto found = [&] { return fmt::format("{} to {}", isoDate(closed.from), isoDate(closed.until)); };
  // Compared as numbers of days: the far ends of the clock must not overflow.
  const auto from = closed.from.time_since_epoch().count();
  const auto until = closed.until.time_since_epoch().count();
  if (until <= from) return refuse("dates-reversed", "dates thought possible", found(), "a first day before the last");
  if (from < date(1600, 1, 1).time_since_epoch().count() || until > date(3000, 1, 1).time_since_epoch().count() ||
      until - from > kWidestWindow)
    return refuse("dates-too-wide", "dates thought possible", found(), "at most 300 years, between 1600 and 3000");
  return closed;
}

std::vector<int> yearsShown(const Layout& layout, int value, int first, int last) {
  const auto field = std::ranges::find_if(layout.fields, [](const Field& f) { return partOf(f.kind) == Part::year; });
  std::vector<int> years;
  if (field == layout.fields.end()) return years;
  if (field->kind == FieldKind::yearFourDigits) {
    if (first <= value && value <= last) years.push_back(value);
    return years;
  }
  const int cycle = field->kind == FieldKind::yearDigit ? 10 : 100;
  for (int year = first + ((value - first) % cycle + cycle) % cycle; year <= last; year += cycle) years.push_back(year);
  return years;
}

std::vector<Days> daysNamed(const Layout& layout, const Path& path, const Days& window) {
  std::vector<Days> named;
  // A week's year may be the neighbour of the day's.
  const int first = parts(window.from).year - 1;
  const int last = parts(window.until).year + 1;
  for (const int year : yearsShown(layout, path.value(Part::year), first, last)) {
    const std::optional<Days> whole = withinYear(path, year);
    if (!whole) continue;
    const Days inside{std::max(whole->from, window.from), std::min(whole->until, window.until)};
    if (inside.from >= inside.until) continue;
    if (!path.says(Part::weekday)) {
      named.push_back(inside);
      continue;
    }
    for (Date day = inside.from; day < inside.until; day += days{1})
      if (isoWeekDay(day).weekday == path.value(Part::weekday)) named.push_back({day, day + days{1}});
  }
  return named;
}

}  // namespace ohmkin::dating
