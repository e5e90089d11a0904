#include <fmt/format.h>
#include <quantity/date.h>
#include <array>
#include <charconv>

namespace ohmkin {
namespace {

constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

std::optional<int> digits(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || text.empty() || text.front() == '-') return {};
  return value;
}

}  // namespace

Date date(int year, unsigned month, unsigned day) {
  return std::chrono::year{year} / static_cast<int>(month) / static_cast<int>(day);
}

Expected<Date> parseDate(std::string_view text, std::string_view where) {
  const auto bad = [&](std::string expected) {
    return refuse("date-unreadable", std::string(where), fmt::format("'{}'", text), std::move(expected));
  };
  if (text.size() != 10 || text[4] != '-' || text[7] != '-')
    return bad("a date written year-month-day, for example 1971-08-22");
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day) return bad("a date written year-month-day, for example 1971-08-22");
  const std::chrono::year_month_day ymd{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                        std::chrono::day{static_cast<unsigned>(*day)}};
  if (!ymd.ok()) return bad("a day that exists in the calendar");
  return Date{ymd};
}

std::string isoDate(Date d) {
  const std::chrono::year_month_day ymd{d};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(ymd.year()), static_cast<unsigned>(ymd.month()),
                     static_cast<unsigned>(ymd.day()));
}

std::string plainDate(Date d) {
  const std::chrono::year_month_day ymd{d};
  return fmt::format("{} {} {}", static_cast<unsigned>(ymd.day()), kMonths[static_cast<unsigned>(ymd.month()) - 1],
                     static_cast<int>(ymd.year()));
}

std::string plainSpan(const ModelYearSpan& span) {
  const int last = span.until.value - 1;
  if (last <= span.from.value) return fmt::format("{}", span.from.value);
  if (last / 100 == span.from.value / 100) return fmt::format("{}–{:02}", span.from.value, last % 100);
  return fmt::format("{}–{}", span.from.value, last);
}

}  // namespace ohmkin
