#include <exchange/unit_words.h>
#include <quantity/quantity.h>
#include <algorithm>
#include <array>

namespace ohmkin::exchange {
namespace {

struct Word {
  std::string_view word;
  ColumnUnit unit;
};

/// Lower case, without blanks, brackets and full stops: what the spellings of one unit share.
std::string plain(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    if (const std::size_t blank = blankLength(text); blank > 0) {
      text.remove_prefix(blank);
      continue;
    }
    const char c = text.front();
    if (std::string_view("()[]{}._").find(c) == std::string_view::npos)
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    text.remove_prefix(1);
  }
  return out;
}

template <std::size_t N>
std::optional<ColumnUnit> find(const std::array<Word, N>& words, std::string_view text) {
  const std::string key = plain(text);
  for (const Word& word : words)
    if (word.word == key) return word.unit;
  return {};
}

// ℃ and ℉ are single characters; º is the ordinal sign, which stands beside ° on many keyboards.
constexpr std::array<Word, 20> kTemperature{{{"°c", ColumnUnit::celsius},    {"c", ColumnUnit::celsius},
                                             {"degc", ColumnUnit::celsius},  {"℃", ColumnUnit::celsius},
                                             {"ºc", ColumnUnit::celsius},    {"celsius", ColumnUnit::celsius},
                                             {"gradc", ColumnUnit::celsius}, {"centigrade", ColumnUnit::celsius},
                                             {"˚c", ColumnUnit::celsius},    {"°f", ColumnUnit::fahrenheit},
                                             {"f", ColumnUnit::fahrenheit},  {"degf", ColumnUnit::fahrenheit},
                                             {"℉", ColumnUnit::fahrenheit},  {"ºf", ColumnUnit::fahrenheit},
                                             {"˚f", ColumnUnit::fahrenheit}, {"fahrenheit", ColumnUnit::fahrenheit},
                                             {"k", ColumnUnit::kelvin},      {"kelvin", ColumnUnit::kelvin},
                                             {"°k", ColumnUnit::kelvin},     {"degk", ColumnUnit::kelvin}}};
// The Greek letter, small and large, and the sign of its own, U+2126. M and m differ: see resistanceUnit.
constexpr std::array<Word, 18> kResistance{{{"ω", ColumnUnit::ohm},
                                            {"Ω", ColumnUnit::ohm},
                                            {"\xE2\x84\xA6", ColumnUnit::ohm},
                                            {"ohm", ColumnUnit::ohm},
                                            {"ohms", ColumnUnit::ohm},
                                            {"r", ColumnUnit::ohm},
                                            {"k", ColumnUnit::kilohm},
                                            {"kω", ColumnUnit::kilohm},
                                            {"kΩ", ColumnUnit::kilohm},
                                            {"k\xE2\x84\xA6", ColumnUnit::kilohm},
                                            {"kohm", ColumnUnit::kilohm},
                                            {"kohms", ColumnUnit::kilohm},
                                            {"kiloohm", ColumnUnit::kilohm},
                                            {"kilohm", ColumnUnit::kilohm},
                                            {"kilohms", ColumnUnit::kilohm},
                                            {"kr", ColumnUnit::kilohm},
                                            {"megohm", ColumnUnit::megohm},
                                            {"megohms", ColumnUnit::megohm}}};
constexpr std::array<Word, 18> kTime{{{"ms", ColumnUnit::millisecond},
                                      {"msec", ColumnUnit::millisecond},
                                      {"milliseconds", ColumnUnit::millisecond},
                                      {"s", ColumnUnit::second},
                                      {"sec", ColumnUnit::second},
                                      {"secs", ColumnUnit::second},
                                      {"second", ColumnUnit::second},
                                      {"seconds", ColumnUnit::second},
                                      {"min", ColumnUnit::minute},
                                      {"mins", ColumnUnit::minute},
                                      {"minute", ColumnUnit::minute},
                                      {"minutes", ColumnUnit::minute},
                                      {"h", ColumnUnit::hour},
                                      {"hr", ColumnUnit::hour},
                                      {"hrs", ColumnUnit::hour},
                                      {"hour", ColumnUnit::hour},
                                      {"hours", ColumnUnit::hour},
                                      {"clock", ColumnUnit::clock}}};

}  // namespace

std::optional<ColumnUnit> temperatureUnit(std::string_view word) { return find(kTemperature, word); }

std::optional<ColumnUnit> resistanceUnit(std::string_view word) {
  if (const auto unit = find(kResistance, word)) return unit;
  const std::string_view text = trimmedCell(word);
  // A small m would be milliohms, which no sender has: it is not taken for mega.
  const std::size_t m = text.find_first_not_of("([ ");
  if (m == std::string_view::npos || text[m] != 'M') return {};
  const std::string rest = plain(text.substr(m + 1));
  return rest.empty() || find(kResistance, rest) == ColumnUnit::ohm ? std::optional(ColumnUnit::megohm) : std::nullopt;
}

std::optional<ColumnUnit> timeUnit(std::string_view word) { return find(kTime, word); }

double ohmsIn(ColumnUnit unit) { return unit == ColumnUnit::kilohm ? 1e3 : unit == ColumnUnit::megohm ? 1e6 : 1.0; }

double secondsIn(ColumnUnit unit) {
  switch (unit) {
    case ColumnUnit::millisecond:
      return 1e-3;
    case ColumnUnit::minute:
      return 60;
    case ColumnUnit::hour:
      return 3600;
    default:
      return 1;
  }
}

double kelvinsFrom(double value, ColumnUnit unit) {
  if (unit == ColumnUnit::kelvin) return value;
  return inKelvin(unit == ColumnUnit::fahrenheit ? fahrenheit(value) : celsius(value));
}

std::string_view unitName(ColumnUnit unit) {
  constexpr std::array<std::string_view, 16> names{"no unit",
                                                   "°C",
                                                   "°F",
                                                   "K",
                                                   "Ω",
                                                   "kΩ",
                                                   "MΩ",
                                                   "milliseconds",
                                                   "seconds",
                                                   "minutes",
                                                   "hours",
                                                   "time of day",
                                                   "minutes:seconds",
                                                   "year-month-day",
                                                   "day.month.year",
                                                   "month/day/year"};
  return names[static_cast<std::size_t>(unit)];
}

std::size_t blankLength(std::string_view text) {
  if (text.starts_with(' ') || text.starts_with('\t')) return 1;
  if (text.starts_with("\xC2\xA0")) return 2;
  return text.starts_with("\xE2\x80\xAF") || text.starts_with("\xE2\x80\x89") ? 3 : 0;
}

std::string_view trimmedCell(std::string_view text) {
  while (const std::size_t blank = blankLength(text)) text.remove_prefix(blank);
  for (;;) {
    if (text.ends_with(' ') || text.ends_with('\t')) text.remove_suffix(1);
    else if (text.ends_with("\xC2\xA0")) text.remove_suffix(2);
    else if (text.ends_with("\xE2\x80\xAF") || text.ends_with("\xE2\x80\x89")) text.remove_suffix(3);
    else return text;
  }
}

}  // namespace ohmkin::exchange
