#include <dating/calendar.h>
#include <dating/written_field.h>
#include <fmt/format.h>
#include <array>

namespace ohmkin::dating {
namespace {

constexpr std::string_view kLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
constexpr std::string_view kMonthLetters = "ABCDEFGHIJKL";
constexpr std::string_view kMonthLettersWithoutI = "ABCDEFGHJKLM";
constexpr std::string_view kWeekdays = "1234567";

std::string_view lettersOf(const Field& field) {
  switch (field.kind) {
    case FieldKind::monthLetter:
      return kMonthLetters;
    case FieldKind::monthLetterWithoutI:
      return kMonthLettersWithoutI;
    default:
      return field.text.size() == kWeekdays.size() ? std::string_view(field.text) : kWeekdays;
  }
}

struct Range {
  int first;
  int last;         ///< that dates have
  int lastWritten;  ///< that the digits could show
};

Range rangeOf(FieldKind kind) {
  switch (kind) {
    case FieldKind::monthLetter:
    case FieldKind::monthLetterWithoutI:
      return {1, 12, 12};
    case FieldKind::clockDial:
      return {1, 12, 19};
    case FieldKind::monthNumber:
      return {1, 12, 99};
    case FieldKind::day:
      return {1, 31, 99};
    case FieldKind::yearDigit:
      return {0, 9, 9};
    case FieldKind::yearTwoDigits:
      return {0, 99, 99};
    case FieldKind::dayOfYear:
      return {1, 366, 999};
    case FieldKind::week:
      return {1, 53, 99};
    case FieldKind::weekday:
      return {1, 7, 7};
    default:
      return {0, 0, 0};
  }
}

}  // namespace

Part partOf(FieldKind kind) {
  switch (kind) {
    case FieldKind::monthLetter:
    case FieldKind::monthLetterWithoutI:
    case FieldKind::monthNumber:
    case FieldKind::clockDial:
      return Part::month;
    case FieldKind::day:
      return Part::day;
    case FieldKind::yearDigit:
    case FieldKind::yearTwoDigits:
    case FieldKind::yearFourDigits:
      return Part::year;
    case FieldKind::dayOfYear:
      return Part::dayOfYear;
    case FieldKind::week:
      return Part::week;
    case FieldKind::weekday:
      return Part::weekday;
    case FieldKind::shift:
    case FieldKind::fixedText:
    case FieldKind::separator:
      return Part::nothing;
  }
  return Part::nothing;
}

int valueOn(FieldKind kind, Date day) {
  switch (partOf(kind)) {
    case Part::month:
      return parts(day).month;
    case Part::day:
      return parts(day).day;
    case Part::year: {
      const int year = parts(day).year;
      return kind == FieldKind::yearDigit ? year % 10 : kind == FieldKind::yearTwoDigits ? year % 100 : year;
    }
    case Part::dayOfYear:
      return dayOfYear(day);
    case Part::week:
      return isoWeekDay(day).week;
    case Part::weekday:
      return isoWeekDay(day).weekday;
    case Part::nothing:
      return 0;
  }
  return 0;
}

std::string written(const Field& field, int value) {
  switch (field.kind) {
    case FieldKind::monthLetter:
    case FieldKind::monthLetterWithoutI:
    case FieldKind::weekday: {
      const std::string_view letters = lettersOf(field);
      return std::string(1, letters[static_cast<std::size_t>(value - 1)]);
    }
    case FieldKind::monthNumber:
    case FieldKind::day:
      return field.text == "00" ? fmt::format("{:02}", value) : fmt::format("{}", value);
    case FieldKind::yearDigit:
      return fmt::format("{}", value);
    case FieldKind::yearTwoDigits:
    case FieldKind::week:
      return fmt::format("{:02}", value);
    case FieldKind::dayOfYear:
      return fmt::format("{:03}", value);
    case FieldKind::yearFourDigits:
      return fmt::format("{:04}", value);
    case FieldKind::clockDial:
      return std::string(static_cast<std::size_t>(value), '.');
    case FieldKind::fixedText:
      return field.text;
    case FieldKind::shift:
    case FieldKind::separator:
      return std::string(1, characterSet(field).front());
  }
  return {};
}

std::vector<std::string> formsOfValue(const Field& field, int value) {
  std::vector<std::string> forms{written(field, value)};
  if ((field.kind == FieldKind::monthNumber || field.kind == FieldKind::day) && field.text != "00" && value < 10)
    forms.push_back(fmt::format("0{}", value));
  if (field.kind == FieldKind::clockDial) forms.push_back(fmt::format("({})", value));
  return forms;
}

std::vector<WrittenForm> formsOf(const Field& field, int firstYear, int lastYear, bool beyond) {
  std::vector<WrittenForm> forms;
  if (field.kind == FieldKind::fixedText) return {{field.text, 0}};
  if (field.kind == FieldKind::yearFourDigits) {
    for (int year = firstYear; year <= lastYear; ++year) forms.push_back({written(field, year), year});
    return forms;
  }
  const Range range = rangeOf(field.kind);
  for (int value = range.first; value <= range.last; ++value)
    for (std::string& form : formsOfValue(field, value)) forms.push_back({std::move(form), value});
  if (!beyond) return forms;
  if (partOf(field.kind) == Part::month &&
      (field.kind != FieldKind::monthNumber && field.kind != FieldKind::clockDial)) {
    int value = range.last;
    for (const char letter : kLetters)
      if (lettersOf(field).find(letter) == std::string_view::npos) forms.push_back({std::string(1, letter), ++value});
    return forms;
  }
  for (int value = range.last + 1; value <= range.lastWritten; ++value)
    for (std::string& form : formsOfValue(field, value)) forms.push_back({std::move(form), value});
  if (range.first == 1 && field.kind != FieldKind::clockDial && field.kind != FieldKind::weekday)
    for (std::string& form : formsOfValue(field, 0)) forms.push_back({std::move(form), 0});
  return forms;
}

bool inRange(FieldKind kind, int value) {
  if (kind == FieldKind::yearFourDigits || partOf(kind) == Part::nothing) return true;
  const Range range = rangeOf(kind);
  return range.first <= value && value <= range.last;
}

std::string characterSet(const Field& field) {
  if (!field.text.empty()) return field.text;
  return field.kind == FieldKind::shift ? std::string(kLetters) : " -./";
}

std::size_t widest(const Field& field) {
  switch (field.kind) {
    case FieldKind::clockDial:
      return 12;
    case FieldKind::yearFourDigits:
      return 4;
    case FieldKind::dayOfYear:
      return 3;
    case FieldKind::monthNumber:
    case FieldKind::day:
    case FieldKind::yearTwoDigits:
    case FieldKind::week:
      return 2;
    case FieldKind::fixedText:
      return field.text.size();
    default:
      return 1;
  }
}

}  // namespace ohmkin::dating
