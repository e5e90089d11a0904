#include <sheet/advance_widths.h>
#include <sheet/lettering.h>

#include <algorithm>
#include <iterator>

namespace ohmkin::sheet {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";
constexpr std::string_view kMore = "…";

struct Decoded {
  char32_t character = 0xFFFD;
  std::size_t bytes = 1;
  bool sound = false;
};

/// The character at the front of not empty text, by the rules of RFC 3629: no overlong forms, no surrogates, nothing
/// past U+10FFFF.
Decoded front(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(0);
  if (first < 0x80) return {first, 1, true};
  const std::size_t length = first >= 0xF0 && first < 0xF5   ? 4
                             : first >= 0xE0 && first < 0xF0 ? 3
                             : first >= 0xC2 && first < 0xE0 ? 2
                                                             : 0;
  if (length == 0 || text.size() < length) return {};
  char32_t character = first & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return {};
    character = character << 6U | (byte(i) & 0x3FU);
  }
  const bool overlong = (length == 3 && character < 0x800) || (length == 4 && character < 0x10000);
  if (overlong || (character >= 0xD800 && character < 0xE000) || character > 0x10FFFF) return {};
  return {character, length, true};
}

/// XML 1.0, production 2 (Char): no control characters but blanks, no U+FFFE and U+FFFF.
bool blankInstead(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0x2028 || c == 0x2029 || c == 0xFFFE || c == 0xFFFF;
}

/// A number stays with its unit: "82 °C", "1.2 kΩ", "20 %".
bool breaksAt(std::string_view text, std::size_t blank) {
  constexpr std::string_view kUnits[] = {"°C", "°F", "K", "F°", "Ω",  "kΩ", "MΩ",
                                         "V",  "W",  "A", "%",  "mm", "m",  "years"};
  if (blank == 0 || blank + 1 >= text.size()) return true;
  const char before = text[blank - 1];
  if (before < '0' || before > '9') return true;
  const std::string_view next = text.substr(blank + 1, text.find_first_of(" .,;:)", blank + 1) - blank - 1);
  return std::find(std::begin(kUnits), std::end(kUnits), next) == std::end(kUnits);
}

/// How many bytes of the text fit, at a character's end; at least one character, so that there is always progress.
std::size_t fitting(std::string_view text, double size, Weight weight, double width) {
  double used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const Decoded next = front(text.substr(at));
    used += advance(next.character, weight) * size;
    if (used > width && at > 0) return at;
    at += next.bytes;
  }
  return at;
}

std::string cutOff(std::string_view text, double size, Weight weight, double width) {
  const double room = width - widthOf(kMore, size, weight);
  std::string_view kept = text.substr(0, room > 0 ? fitting(text, size, weight, room) : 0);
  while (!kept.empty() && (kept.back() == ' ' || kept.back() == ',')) kept.remove_suffix(1);
  return std::string(kept) + std::string(kMore);
}

std::string sound(std::string_view text, bool keepLines) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = front(text.substr(at));
    if (!next.sound) out += kReplacement;
    else if (blankInstead(next.character) && !(keepLines && next.character == '\n')) out += ' ';
    else out += text.substr(at, next.bytes);
    at += next.bytes;
  }
  return out;
}

}  // namespace

std::string cleaned(std::string_view text) { return sound(text, false); }

std::string cleanedElements(std::string_view elements) { return sound(elements, true); }

double widthOf(std::string_view text, double size, Weight weight) {
  double ems = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = front(text.substr(at));
    ems += advance(next.character, weight);
    at += next.bytes;
  }
  return ems * size;
}

std::vector<std::string> wrapped(std::string_view text, double size, Weight weight, double width, std::size_t most) {
  const std::string words = cleaned(text);
  std::string_view rest = words;
  std::vector<std::string> lines;
  const auto trim = [&] {
    while (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
  };
  for (trim(); !rest.empty(); trim()) {
    if (most > 0 && lines.size() + 1 == most) {
      lines.push_back(elided(rest, size, weight, width));
      return lines;
    }
    std::size_t end = fitting(rest, size, weight, width);
    if (end < rest.size() && rest[end] != ' ') {
      std::size_t blank = rest.rfind(' ', end);
      while (blank != std::string_view::npos && blank > 0 && !breaksAt(rest, blank)) blank = rest.rfind(' ', blank - 1);
      if (blank != std::string_view::npos && blank > 0) end = blank;
    } else if (end < rest.size() && !breaksAt(rest, end)) {
      const std::size_t blank = rest.rfind(' ', end - 1);
      if (blank != std::string_view::npos && blank > 0) end = blank;
    }
    std::string_view line = rest.substr(0, end);
    rest.remove_prefix(end);
    while (!line.empty() && line.back() == ' ') line.remove_suffix(1);
    lines.emplace_back(line);
  }
  return lines;
}

std::vector<std::string> balanced(std::string_view text, double size, Weight weight, double width, std::size_t most) {
  std::vector<std::string> lines = wrapped(text, size, weight, width, most);
  const std::string whole = lines.empty() ? std::string() : lines.back();
  if (lines.size() < 2 || (whole.size() >= kMore.size() && whole.ends_with(kMore))) return lines;
  for (double narrower = width - size; narrower > width / 2; narrower -= size) {
    std::vector<std::string> next = wrapped(text, size, weight, narrower);
    if (next.size() > lines.size()) break;
    lines = std::move(next);
  }
  return lines;
}

std::string elided(std::string_view text, double size, Weight weight, double width) {
  std::string line = cleaned(text);
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return widthOf(line, size, weight) <= width ? line : cutOff(line, size, weight, width);
}

}  // namespace ohmkin::sheet
