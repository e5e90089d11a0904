#include <exchange/reading_cell.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <quantity/parse.h>
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstring>
#include <limits>

namespace ohmkin::exchange {
namespace {

constexpr double kInfinityOfScpi = 9.9e37;
constexpr double kNotANumberOfScpi = 9.91e37;

bool digit(char c) { return c >= '0' && c <= '9'; }

/// Takes the digits off the front of `text`.
std::string_view takeDigits(std::string_view& text) {
  std::size_t n = 0;
  while (n < text.size() && digit(text[n])) ++n;
  const std::string_view digits = text.substr(0, n);
  text.remove_prefix(n);
  return digits;
}

std::size_t thousandsLength(std::string_view text, char mark) {
  if (mark == '\0') return 0;
  if (mark == ' ') return text.starts_with('\t') ? 0 : blankLength(text);
  if (mark == '\'' && text.starts_with("’")) return std::string_view("’").size();
  return text.starts_with(mark) ? 1 : 0;
}

/// The digits before the decimal mark without their thousands marks; none where a group has not three digits.
std::optional<std::string> wholeDigits(std::string_view& text, char mark) {
  std::string digits(takeDigits(text));
  if (digits.empty() || digits.size() > 3) return digits;
  while (const std::size_t length = thousandsLength(text, mark)) {
    std::string_view behind = text.substr(length);
    const std::string_view group = takeDigits(behind);
    if (mark == ' ' && group.empty()) break;  // a blank before the unit
    if (group.size() != 3) return {};
    digits += group;
    text = behind;
  }
  return digits;
}

/// e+3, E-2; nothing where the letter begins a unit.
std::string exponent(std::string_view& text) {
  if (!text.starts_with('e') && !text.starts_with('E')) return {};
  std::string_view behind = text.substr(1);
  std::string out = "e";
  if (behind.starts_with('+') || behind.starts_with('-')) {
    if (behind.front() == '-') out += '-';
    behind.remove_prefix(1);
  }
  const std::string_view digits = takeDigits(behind);
  if (digits.empty()) return {};
  text = behind;
  return out + std::string(digits);
}

/// Upper case, without blanks and full stops.
std::string bareLetters(std::string_view text) {
  std::string out;
  for (const char c : text)
    if (c != ' ' && c != '.' && c != ',' && c != '\t')
      out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return out;
}

}  // namespace

std::optional<LeadingNumber> leadingNumber(std::string_view cell, Marks marks) {
  LeadingNumber number;
  std::string_view text = trimmedCell(cell);
  constexpr std::string_view minus = "−";
  if (text.starts_with(minus)) number.plain = "-", text.remove_prefix(minus.size());
  else if (text.starts_with('-')) number.plain = "-", text.remove_prefix(1);
  else if (text.starts_with('+')) text.remove_prefix(1);
  const auto whole = wholeDigits(text, marks.thousands);
  if (!whole) return {};
  std::string fraction;
  const bool mark = text.starts_with(marks.decimal);
  if (mark) {
    text.remove_prefix(1);
    fraction = takeDigits(text);
  }
  if (whole->empty() && fraction.empty()) return {};
  number.plain += whole->empty() ? "0" : *whole;
  if (!fraction.empty()) number.plain += "." + fraction;
  number.plain += exponent(text);
  const char* end = number.plain.data() + number.plain.size();
  const auto [ptr, error] = std::from_chars(number.plain.data(), end, number.value);
  if (error != std::errc{} || ptr != end || !std::isfinite(number.value)) return {};
  number.rest = trimmedCell(text);
  return number;
}

std::optional<double> bareNumber(std::string_view cell, Marks marks) {
  while (!cell.empty() && cell.front() == ' ') cell.remove_prefix(1);
  while (!cell.empty() && cell.back() == ' ') cell.remove_suffix(1);
  if (cell.empty() || cell.size() > 63 || !digit(cell.back())) return {};
  const std::size_t first = cell.front() == '-' ? 1 : 0;
  if (cell.size() == first || (!digit(cell[first]) && cell[first] != marks.decimal)) return {};  // inf and nan
  double value = 0;
  if (marks.decimal == '.') {
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (error != std::errc{} || end != cell.data() + cell.size()) return {};
    return value;
  }
  std::array<char, 64> copy;
  for (std::size_t i = 0; i < cell.size(); ++i) copy[i] = cell[i] == ',' ? '.' : cell[i] == '.' ? ',' : cell[i];
  const auto [end, error] = std::from_chars(copy.data(), copy.data() + cell.size(), value);
  if (error != std::errc{} || end != copy.data() + cell.size()) return {};
  return value;
}

bool isOverload(std::string_view cell, Marks marks) {
  std::string_view text = trimmedCell(cell);
  if (text.empty() || text.size() > 40) return false;
  if (const auto number = leadingNumber(text, marks)) {
    const double size = std::abs(number->value);
    if (number->rest.empty() && size >= kInfinityOfScpi) return std::abs(size / kNotANumberOfScpi - 1) > 1e-4;
    // "1." is what many meters show: the leading digit alone, where 1 Ω would come with its decimals.
    const std::string_view behind = text.front() == '1' ? trimmedCell(text.substr(1)) : std::string_view();
    const bool lone = number->plain == "1" && (behind.starts_with('.') || behind.starts_with(','));
    const std::string_view rest = lone ? trimmedCell(behind.substr(1)) : std::string_view();
    if (lone && (rest.empty() || resistanceUnit(rest))) return true;
    if (number->rest.empty()) return false;
  }
  if (text.starts_with('>')) {
    const auto limit = leadingNumber(text.substr(1), marks);
    return limit && (limit->rest.empty() || resistanceUnit(limit->rest));
  }
  std::string letters = bareLetters(text);
  if (letters.starts_with('+')) letters.erase(0, 1);
  for (const std::string_view word : {"OL", "0L", "-OL", "OVLD", "OVERLOAD", "OVER", "OVERRANGE", "OVER-RANGE", "OVRNG",
                                      "OPEN", "OPENCIRCUIT", "INF", "INFINITY", "∞"}) {
    if (!letters.starts_with(word)) continue;
    const std::string_view rest = std::string_view(letters).substr(word.size());
    if (rest.empty() || resistanceUnit(rest)) return true;
  }
  // Bars: at least two, or one long dash; a single hyphen is how people leave a cell empty.
  std::size_t bars = 0;
  std::string_view rest = letters;
  while (!rest.empty()) {
    if (rest.front() == '-') ++bars, rest.remove_prefix(1);
    else if (rest.starts_with("—") || rest.starts_with("–")) bars += 2, rest.remove_prefix(3);
    else break;
  }
  return bars >= 2 && (rest.empty() || resistanceUnit(rest));
}

tl::expected<double, CellComplaint> temperatureCell(std::string_view cell, ColumnUnit bare, Marks marks) {
  std::optional<double> value = bareNumber(cell, marks);
  if (!value) {
    const auto number = leadingNumber(cell, marks);
    std::optional<ColumnUnit> unit = number ? std::optional(bare) : std::nullopt;
    if (number && !number->rest.empty()) unit = temperatureUnit(number->rest);
    if (!unit)
      return tl::make_unexpected(
          CellComplaint{"temperature-unreadable",
                        fmt::format("a temperature in {}, for example 95{}5", unitName(bare), marks.decimal)});
    bare = *unit;
    value = number->value;
  }
  const double kelvins = kelvinsFrom(*value, bare);
  if (!(kelvins > 0 && kelvins <= kHottestCelsius + kZeroCelsius))
    return tl::make_unexpected(
        CellComplaint{"temperature-unreadable", "a temperature above absolute zero and below 1000 °C"});
  return kelvins;
}

tl::expected<double, CellComplaint> ohmsCell(std::string_view cell, ColumnUnit bare, Marks marks) {
  if (const auto value = bareNumber(cell, marks); value && *value > 0 && *value < 1e30) return *value * ohmsIn(bare);
  if (isOverload(cell, marks)) return std::numeric_limits<double>::infinity();
  const auto bad = [&] {
    return tl::make_unexpected(CellComplaint{
        "ohms-unreadable", fmt::format("{} above 0, for example 51{}5, or overload (OL)",
                                       bare == ColumnUnit::ohm ? "ohms" : unitName(bare), marks.decimal)});
  };
  const auto number = leadingNumber(cell, marks);
  if (!number || !(number->value > 0)) return bad();
  if (number->rest.empty())
    return number->value < 1e30 ? tl::expected<double, CellComplaint>(number->value * ohmsIn(bare)) : bad();
  if (const auto unit = resistanceUnit(number->rest)) return number->value * ohmsIn(*unit);
  // 4k7: the multiplier stands for the point.
  const std::size_t letter = std::string_view("kKMR").find(number->rest.front());
  if (letter == std::string_view::npos || number->plain.find_first_of(".e") != std::string::npos) return bad();
  if (const auto ohms = parseOhms(number->plain + std::string(number->rest))) return inOhms(*ohms);
  return bad();
}

}  // namespace ohmkin::exchange
