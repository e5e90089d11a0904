#pragma once
#include <dating/layout.h>

/// Layouts of the usual kinds, for tests: month letter first, day first, day of year, week and year, shift attached, a
/// dial with dots. The kinds are common practice, no source; the layouts are made up.
namespace ohmkin::dating::test {

inline std::vector<Layout> usualLayouts() {
  using K = FieldKind;
  const Field gap{K::separator, "", true};
  return {
      {"letter-day-digit",
       "month letter, day, year digit",
       FoundOn::head,
       {{K::monthLetter, ""}, {K::day, ""}, {K::yearDigit, ""}}},
      {"letter-day-digit-spaced",
       "month letter, day, year digit, spaced",
       FoundOn::head,
       {{K::monthLetter, ""}, {K::separator, " -"}, {K::day, ""}, {K::separator, " -"}, {K::yearDigit, ""}}},
      {"no-i",
       "month letter without I, day, two digits",
       FoundOn::block,
       {{K::monthLetterWithoutI, ""}, gap, {K::day, "00"}, gap, {K::yearTwoDigits, ""}}},
      {"day-letter-digit",
       "day, month letter, year digit",
       FoundOn::head,
       {{K::day, ""}, {K::monthLetter, ""}, {K::yearDigit, ""}}},
      {"day-letter-four",
       "day, month letter, four digits",
       FoundOn::housing,
       {{K::day, ""}, gap, {K::monthLetter, ""}, gap, {K::yearFourDigits, ""}}},
      {"slashes",
       "month/day/year",
       FoundOn::intake,
       {{K::monthNumber, ""}, {K::separator, "/-"}, {K::day, ""}, {K::separator, "/-"}, {K::yearTwoDigits, ""}}},
      {"six-digits",
       "month, day, year in six digits",
       FoundOn::assemblyStamp,
       {{K::monthNumber, "00"}, {K::day, "00"}, {K::yearTwoDigits, ""}}},
      {"day-of-year", "year digit, day of year", FoundOn::block, {{K::yearDigit, ""}, {K::dayOfYear, ""}}},
      {"day-of-year-shift",
       "two digits, day of year, shift",
       FoundOn::assemblyStamp,
       {{K::yearTwoDigits, ""}, {K::dayOfYear, ""}, {K::shift, "ABC", true}}},
      {"week", "week, year digit", FoundOn::housing, {{K::week, ""}, {K::yearDigit, ""}}},
      {"week-weekday",
       "year, W, week, weekday",
       FoundOn::intake,
       {{K::yearFourDigits, ""},
        {K::separator, "-", true},
        {K::fixedText, "W"},
        {K::week, ""},
        {K::separator, "-", true},
        {K::weekday, ""}}},
      {"shift-attached",
       "shift, month letter, day, year digit",
       FoundOn::block,
       {{K::shift, "DN"}, {K::monthLetter, ""}, {K::day, ""}, {K::yearDigit, ""}}},
      {"dial",
       "clock dial, two digits",
       FoundOn::head,
       {{K::yearTwoDigits, ""}, {K::separator, "", true}, {K::clockDial, ""}}},
      {"weekday-checked",
       "month number, day, year digit, weekday",
       FoundOn::assemblyStamp,
       {{K::monthNumber, "00"}, {K::day, "00"}, {K::yearDigit, ""}, {K::weekday, "MTWHFSU", true}}},
      {"fixed",
       "works mark, month number, year digit",
       FoundOn::housing,
       {{K::fixedText, "KR"}, {K::monthNumber, ""}, {K::separator, "*"}, {K::yearDigit, ""}}},
  };
}

inline Layout usualLayout(std::string_view id) {
  for (const Layout& layout : usualLayouts())
    if (layout.id == id) return layout;
  return {};
}

}  // namespace ohmkin::dating::test
