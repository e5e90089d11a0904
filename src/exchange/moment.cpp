#include <exchange/moment.h>
#include <exchange/unit_words.h>
#include <array>
#include <charconv>
#include <chrono>

namespace ohmkin::exchange {
namespace {

/// A whole number off the front; none where there is none or it has more than `most` digits.
std::optional<int> takeWhole(std::string_view& text, std::size_t most) {
  std::size_t n = 0;
  while (n < text.size() && text[n] >= '0' && text[n] <= '9') ++n;
  if (n == 0 || n > most) return {};
  int value = 0;
  std::from_chars(text.data(), text.data() + n, value);
  text.remove_prefix(n);
  return value;
}

/// .25 or ,25 behind the seconds.
double takeFraction(std::string_view& text) {
  if (!text.starts_with('.') && !text.starts_with(',')) return 0;
  double part = 0.1;
  double value = 0;
  text.remove_prefix(1);
  while (!text.empty() && text.front() >= '0' && text.front() <= '9') {
    value += part * (text.front() - '0');
    part /= 10;
    text.remove_prefix(1);
  }
  return value;
}

/// Takes AM or PM; hours of the twelve-hour clock as they then are.
bool halfOfDay(std::string_view& text, int& hours) {
  text = trimmedCell(text);
  if (text.size() < 2 || (text[1] != 'M' && text[1] != 'm')) return true;
  const char half = text[0];
  if (half != 'A' && half != 'a' && half != 'P' && half != 'p') return true;
  if (hours < 1 || hours > 12) return false;
  hours = hours % 12 + (half == 'P' || half == 'p' ? 12 : 0);
  text.remove_prefix(2);
  return true;
}

/// Z or +02:00 tells nothing about differences within a file.
bool onlyZone(std::string_view text) {
  text = trimmedCell(text);
  if (text.empty() || text == "Z") return true;
  return (text.front() == '+' || text.front() == '-') && text.size() <= 6 &&
         text.find_first_not_of("0123456789:", 1) == std::string_view::npos;
}

/// h:mm[:ss[.fff]]. `counts`: not a time of day but time since the start, whose first part goes on.
std::optional<double> clockTime(std::string_view text, bool counts, bool minutesFirst = false) {
  auto first = takeWhole(text, counts ? 6 : 2);
  if (!first || !text.starts_with(':')) return {};
  text.remove_prefix(1);
  const auto second = takeWhole(text, 2);
  if (!second || *second > 59) return {};
  std::optional<int> third;
  if (text.starts_with(':')) {
    text.remove_prefix(1);
    third = takeWhole(text, 2);
    if (!third || *third > 60) return {};  // a leap second
  }
  const double fraction = takeFraction(text);
  if (!halfOfDay(text, *first) || !onlyZone(text)) return {};
  if (!counts && *first > 23) return {};
  if (minutesFirst && !third) return *first * 60.0 + *second + fraction;
  return *first * 3600.0 + *second * 60.0 + third.value_or(0) + fraction;
}

std::optional<double> dateTime(std::string_view text, ColumnUnit unit) {
  std::array<int, 3> parts{};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) {
      if (text.empty() || std::string_view("-./").find(text.front()) == std::string_view::npos) return {};
      text.remove_prefix(1);
    }
    const auto part = takeWhole(text, 4);
    if (!part) return {};
    parts[i] = *part;
  }
  const bool yearFirst = unit == ColumnUnit::yearMonthDay;
  int year = yearFirst ? parts[0] : parts[2];
  const int month = yearFirst ? parts[1] : unit == ColumnUnit::dayMonthYear ? parts[1] : parts[0];
  const int day = yearFirst ? parts[2] : unit == ColumnUnit::dayMonthYear ? parts[0] : parts[1];
  if (year < 100) year += 2000;  // only differences matter
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  if (month < 1 || month > 12 || day < 1 || day > 31 || !date.ok()) return {};
  const double days = static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count());
  if (text.starts_with('T') || text.starts_with(',')) text.remove_prefix(1);
  text = trimmedCell(text);
  if (text.empty()) return days * 86400;
  const auto time = clockTime(text, false);
  return time ? std::optional(days * 86400 + *time) : std::nullopt;
}

}  // namespace

std::optional<double> momentCell(std::string_view cell, ColumnUnit unit, Marks marks) {
  const std::string_view text = trimmedCell(cell);
  switch (unit) {
    case ColumnUnit::clock:
      return clockTime(text, true);
    case ColumnUnit::minuteClock:
      return clockTime(text, true, true);
    case ColumnUnit::yearMonthDay:
    case ColumnUnit::dayMonthYear:
    case ColumnUnit::monthDayYear:
      return dateTime(text, unit);
    default:
      break;
  }
  if (const auto number = bareNumber(text, marks)) return *number * secondsIn(unit);
  const auto number = leadingNumber(text, marks);
  if (!number) return {};
  if (number->rest.empty()) return number->value * secondsIn(unit);
  const auto own = timeUnit(number->rest);
  return own && *own != ColumnUnit::clock ? std::optional(number->value * secondsIn(*own)) : std::nullopt;
}

}  // namespace ohmkin::exchange
