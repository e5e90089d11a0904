#include <exchange/number_marks.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::exchange {
namespace {

struct MarkCount {
  std::size_t decimal = 0;    ///< cells in which the mark can only be the decimal one: 20,5 0,980 1234,567
  std::size_t thousands = 0;  ///< … only the thousands mark: 1,234,567 or 1,234.5
  std::size_t open = 0;       ///< 1,234
  std::string sample, openSample;
};

struct Counts {
  MarkCount point, comma;
  std::size_t blanks = 0, apostrophes = 0;
  std::size_t plainThousands = 0;  ///< 1234 without any mark
};

/// Where the number ends and the unit begins.
std::string_view numberPart(std::string_view text) {
  std::size_t end = 0;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t blank = blankLength(text.substr(i));
    const bool apostrophe = text.substr(i).starts_with("’");
    const char c = text[i];
    if ((c >= '0' && c <= '9') || c == '.' || c == ',' || c == '\'') end = i + 1;
    else if (!apostrophe && blank == 0 && !(i == 0 && (c == '-' || c == '+'))) break;
    i += apostrophe ? 3 : std::max<std::size_t>(blank, 1);
  }
  return text.substr(0, end);
}

void count(std::string_view cell, Counts& counts) {
  std::string_view text = trimmedCell(cell);
  if (text.starts_with('-') || text.starts_with('+')) text.remove_prefix(1);
  text = numberPart(text);
  const bool exponent = cell.find_first_of("eE") != std::string_view::npos &&
                        cell.find_first_of("0123456789", cell.find_first_of("eE")) != std::string_view::npos;
  const auto points = static_cast<std::size_t>(std::count(text.begin(), text.end(), '.'));
  const auto commas = static_cast<std::size_t>(std::count(text.begin(), text.end(), ','));
  if (text.find('\'') != std::string_view::npos || text.find("’") != std::string_view::npos) ++counts.apostrophes;
  for (std::size_t i = 1; i < text.size(); ++i)
    if (blankLength(text.substr(i)) > 0) {
      ++counts.blanks;
      break;
    }
  const auto note = [&](MarkCount& mark, std::size_t MarkCount::*which) {
    ++(mark.*which);
    std::string& sample = which == &MarkCount::open ? mark.openSample : mark.sample;
    if (sample.empty()) sample = text;
  };
  if (points == 0 && commas == 0) {
    if (text.size() > 3) ++counts.plainThousands;
    return;
  }
  if (points > 0 && commas > 0) {
    const bool commaLast = text.find_last_of(',') > text.find_last_of('.');
    note(commaLast ? counts.comma : counts.point, &MarkCount::decimal);
    note(commaLast ? counts.point : counts.comma, &MarkCount::thousands);
    return;
  }
  MarkCount& mark = points > 0 ? counts.point : counts.comma;
  if (points + commas > 1) return note(mark, &MarkCount::thousands);
  const std::size_t at = text.find_first_of(".,");
  const std::size_t behind = text.size() - at - 1;
  if (behind == 0) return;  // "1." is the meter's overload, or says nothing
  const bool grouped = behind == 3 && at >= 1 && at <= 3 && text.front() != '0' && !exponent;
  note(mark, grouped ? &MarkCount::open : &MarkCount::decimal);
}

}  // namespace

MarksTold numberMarks(std::span<const std::string_view> cells, bool semicolons) {
  Counts counts;
  for (const std::string_view cell : cells) count(cell, counts);
  const MarkCount& point = counts.point;
  const MarkCount& comma = counts.comma;
  MarksTold told;
  const char spare = counts.apostrophes > 0 ? '\'' : counts.blanks > 0 ? ' ' : '\0';
  const bool commaWins = comma.decimal > point.decimal ||
                         (comma.decimal == 0 && point.decimal == 0 && point.thousands > 0 && comma.thousands == 0);
  const bool told1 = comma.decimal + point.decimal + comma.thousands + point.thousands > 0;
  if (told1) {
    const MarkCount& decimal = commaWins ? comma : point;
    const MarkCount& other = commaWins ? point : comma;
    told.marks = {commaWins ? ',' : '.', spare};
    // 1.234 beside 20,5 is a thousand, if nothing says otherwise.
    if (other.thousands > 0 || other.open > 0) told.marks.thousands = commaWins ? '.' : ',';
    told.mixed = other.decimal > 0 || (decimal.thousands > 0 && decimal.decimal > 0);
    told.reason =
        fmt::format("'{}' can be read in no other way", decimal.sample.empty() ? other.sample : decimal.sample);
    if (told.mixed) told.example = other.decimal > 0 ? other.sample : decimal.sample;
    return told;
  }
  if (comma.open > 0 || (point.open > 0 && semicolons)) {
    const char mark = comma.open > 0 ? ',' : '.';
    const char opposite = mark == ',' ? '.' : ',';
    told.example = comma.open > 0 ? comma.openSample : point.openSample;
    // A file with four digits and no mark does not group its thousands.
    if (counts.plainThousands > 0 || spare != '\0') {
      told.marks = {mark, spare};
      told.reason = fmt::format("thousands stand without '{}' elsewhere, so it is the decimal mark", mark);
      return told;
    }
    told.open = true;
    told.marks = {mark, '\0'};
    told.other = {opposite, mark};
    told.reason = fmt::format("'{}' is taken for a decimal mark, though it could mark thousands", mark);
    return told;
  }
  told.marks = {'.', spare};
  told.reason =
      point.open > 0 ? "the separator is none that goes with a decimal comma" : "no number needs a decimal mark";
  return told;
}

}  // namespace ohmkin::exchange
