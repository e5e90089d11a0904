#include <dating/calendar.h>
#include <dating/explain.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>

namespace ohmkin::dating {
namespace {

constexpr std::array<std::string_view, 12> kMonths{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
constexpr std::array<std::string_view, 7> kWeekdays{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                    "Friday", "Saturday", "Sunday"};

std::string_view monthName(int month) { return kMonths[static_cast<std::size_t>(month - 1)]; }

const Field* fieldOf(const Layout& layout, Part part) {
  const auto field = std::ranges::find_if(layout.fields, [&](const Field& f) { return partOf(f.kind) == part; });
  return field == layout.fields.end() ? nullptr : &*field;
}

/// "a year ending in 5", "the year 1975"
std::string yearWords(const Layout& layout, int value) {
  const Field* year = fieldOf(layout, Part::year);
  if (year != nullptr && year->kind == FieldKind::yearDigit) return fmt::format("a year ending in {}", value);
  if (year != nullptr && year->kind == FieldKind::yearTwoDigits) return fmt::format("a year ending in {:02}", value);
  return fmt::format("the year {}", value);
}

/// The first number of the path that no date has: "Month letter N is out of range: this layout goes from A to L."
std::string outOfRange(const Layout& layout, const Path& path) {
  for (const Part part : {Part::month, Part::day, Part::dayOfYear, Part::week, Part::weekday}) {
    const Field* field = fieldOf(layout, part);
    if (field == nullptr || !path.says(part) || inRange(field->kind, path.value(part))) continue;
    const int value = path.value(part);
    switch (field->kind) {
      case FieldKind::monthLetter:
      case FieldKind::monthLetterWithoutI: {
        const auto forms = formsOf(*field, 0, 0, true);
        const auto form = std::ranges::find(forms, value, &WrittenForm::value);
        const bool withI = field->kind == FieldKind::monthLetter;
        return fmt::format("Month letter {} is out of range: this layout goes from A to {}.", form->text,
                           withI ? "L" : "M and leaves out I");
      }
      case FieldKind::monthNumber:
      case FieldKind::clockDial:
        return fmt::format("There is no month {}.", value);
      case FieldKind::day:
        return fmt::format("There is no day {} in any month.", value);
      case FieldKind::dayOfYear:
        return fmt::format("There is no day {} of a year: they go from 1 to 366.", value);
      case FieldKind::week:
        return fmt::format("There is no week {}: they go from 1 to 53.", value);
      default:
        break;
    }
  }
  return {};
}

/// Every number is in its range, and still there is no such day in the window.
std::string noSuchDay(const Layout& layout, const Path& path, const Days& window) {
  const int year = path.value(Part::year);
  const std::string ofYear = yearWords(layout, year);
  const std::string inWindow =
      fmt::format("between {} and {}", plainDate(window.from), plainDate(window.until - std::chrono::days{1}));
  Path anyWeekday = path;
  anyWeekday.said[static_cast<std::size_t>(Part::weekday)] = false;
  if (path.says(Part::weekday) && !daysNamed(layout, anyWeekday, window).empty())
    return fmt::format("{} does not agree with the rest of the date in {} {}.",
                       kWeekdays[static_cast<std::size_t>(path.value(Part::weekday) - 1)], ofYear, inWindow);
  const bool lastDay = path.says(Part::dayOfYear) && path.value(Part::dayOfYear) == 366;
  const bool leapDay = path.says(Part::day) && path.value(Part::month) == 2 && path.value(Part::day) == 29;
  if (path.says(Part::day) && path.value(Part::day) > daysInMonth(2000, path.value(Part::month)))
    return fmt::format("{} {} does not exist: {} has {} days.", path.value(Part::day),
                       monthName(path.value(Part::month)), monthName(path.value(Part::month)),
                       daysInMonth(2000, path.value(Part::month)));
  const std::vector<int> years =
      yearsShown(layout, year, parts(window.from).year, parts(window.until - std::chrono::days{1}).year);
  const auto none = [&](auto holds) { return !years.empty() && std::ranges::none_of(years, holds); };
  if ((leapDay || lastDay) && none([](int y) { return daysInYear(y) == 366; }))
    return fmt::format("{} does not exist in {} {}: none is a leap year.", leapDay ? "29 February" : "Day 366", ofYear,
                       inWindow);
  if (path.says(Part::week) && path.value(Part::week) == 53 && none([](int y) { return weeksIn(y) == 53; }))
    return fmt::format("Week 53 does not exist in {} {}.", ofYear, inWindow);
  return fmt::format("The code reads as a date in {}, but not {}.", ofYear, inWindow);
}

/// The characters do not even have the layout's shape.
std::string notThisShape(const Layout& layout, const SeenText& text, const PathsFound& plain) {
  const std::string example = encode(layout, date(1974, 3, 14));
  if (!text.foreign.empty())
    return fmt::format(
        "'{}' is no character of a date code; this layout looks like '{}'. Type ? for what cannot be read.",
        text.foreign, example);
  const std::size_t place = plain.furthestPlace;
  if (plain.furthestField >= layout.fields.size())
    return fmt::format("After '{}' the code is complete, and '{}' is left over; this layout looks like '{}'.",
                       text.glyphs.substr(0, place), text.glyphs.substr(place), example);
  const std::string_view expected = dating::text(layout.fields[plain.furthestField].kind);
  if (place >= text.glyphs.size())
    return fmt::format("The code ends where the {} should stand; this layout looks like '{}'.", expected, example);
  return fmt::format("'{}' stands where the {} should; this layout looks like '{}'.", text.glyphs[place], expected,
                     example);
}

}  // namespace

Finding whyImpossible(const Layout& layout, const SeenText& text, const PathsFound& plain, const Days& window) {
  const auto finding = [&](std::string code, std::string sentence) {
    return Finding{std::move(code), Severity::warning, std::move(sentence),
                   fmt::format("'{}' read as {}", text.plain, layout.name), "your reading"};
  };
  if (!plain.paths.empty()) return finding("date-impossible", noSuchDay(layout, plain.paths.front(), window));
  const Template beyond = templateOf(layout, 1800, 2199, true);
  const PathsFound loose = pathsThrough(beyond, sight(text, Turned::upright, false), 0);
  if (!loose.paths.empty()) {
    const auto nearest = std::ranges::min_element(loose.paths, {}, &Path::beyond);
    const std::string why = outOfRange(layout, *nearest);
    return finding("date-impossible", why.empty() ? noSuchDay(layout, *nearest, window) : why);
  }
  return finding("date-not-this-layout", notThisShape(layout, text, plain));
}

}  // namespace ohmkin::dating
