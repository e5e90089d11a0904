#include <dating/written_field.h>
#include <algorithm>
#include <array>
#include <utility>

namespace ohmkin::dating {
namespace {

constexpr std::array<std::pair<FieldKind, std::string_view>, 14> kFieldKinds{
    {{FieldKind::monthLetter, "month letter"},
     {FieldKind::monthLetterWithoutI, "month letter without I"},
     {FieldKind::monthNumber, "month number"},
     {FieldKind::day, "day"},
     {FieldKind::yearDigit, "year digit"},
     {FieldKind::yearTwoDigits, "year two digits"},
     {FieldKind::yearFourDigits, "year four digits"},
     {FieldKind::dayOfYear, "day of year"},
     {FieldKind::week, "week"},
     {FieldKind::weekday, "weekday"},
     {FieldKind::shift, "shift"},
     {FieldKind::clockDial, "clock dial"},
     {FieldKind::fixedText, "fixed text"},
     {FieldKind::separator, "separator"}}};

}  // namespace

std::string_view text(FoundOn place) {
  switch (place) {
    case FoundOn::head:
      return "head";
    case FoundOn::block:
      return "block";
    case FoundOn::intake:
      return "intake";
    case FoundOn::housing:
      return "housing";
    case FoundOn::assemblyStamp:
      return "assembly stamp";
  }
  return {};
}

std::string_view text(FieldKind kind) {
  for (const auto& [known, name] : kFieldKinds)
    if (known == kind) return name;
  return {};
}

std::optional<FieldKind> fieldKind(std::string_view name) {
  for (const auto& [kind, known] : kFieldKinds)
    if (known == name) return kind;
  return {};
}

int valueIn(const Layout& layout, FieldKind kind, Date day) {
  const auto isWeek = [](const Field& field) { return field.kind == FieldKind::week; };
  if (partOf(kind) != Part::year || std::ranges::none_of(layout.fields, isWeek)) return valueOn(kind, day);
  // Beside a week the year is the week's own, that of its Thursday: 29 Dec 2003 lies in week 1 of 2004.
  return valueOn(kind, day + std::chrono::days{4 - valueOn(FieldKind::weekday, day)});
}

std::string encode(const Layout& layout, Date day) {
  std::string code;
  for (const Field& field : layout.fields)
    if (!(field.kind == FieldKind::shift && field.optional)) code += written(field, valueIn(layout, field.kind, day));
  return code;
}

}  // namespace ohmkin::dating
