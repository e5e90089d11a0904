#pragma once
#include <finding/refusal.h>
#include <quantity/date.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// How dates are written in castings and stamps, what a legible text can mean, and what the dates say together.
namespace ohmkin::dating {

enum class FoundOn { head, block, intake, housing, assemblyStamp };
std::string_view text(FoundOn place);  ///< as in the catalogue: "assembly stamp"

enum class FieldKind {
  monthLetter,          ///< A to L
  monthLetterWithoutI,  ///< A to H, J to M
  monthNumber,          ///< 1 to 12; text "00": always two digits
  day,                  ///< 1 to 31; text "00": always two digits
  yearDigit,            ///< last digit: one year in every decade
  yearTwoDigits,        ///< last two digits: one year in every century
  yearFourDigits,
  dayOfYear,  ///< 001 to 366, always three digits
  week,       ///< 01 to 53, ISO 8601; the year beside it is then the week's year, which may differ at a year's end
  weekday,    ///< 1 Monday to 7 Sunday (ISO 8601), or text: seven different characters from Monday on
  shift,      ///< one of the letters in text, any letter where text is empty; says nothing about the date
  clockDial,  ///< month as a dial's dots, one for each hour: `.....` is May. The hour may be typed instead: `(5)`
  fixedText,  ///< text, as it stands
  separator   ///< one of the characters in text; empty: space, hyphen, stop, slash
};
std::string_view text(FieldKind kind);  ///< as in the catalogue: "month letter without I"
std::optional<FieldKind> fieldKind(std::string_view text);

struct Field {
  FieldKind kind = FieldKind::day;
  std::string text;
  bool optional = false;  ///< separators, shift, weekday and fixed text only
};

/// Fields in order. A number without "00" is written without a leading zero and read with or without one.
struct Layout {
  std::string id;
  std::string name;
  FoundOn foundOn = FoundOn::head;
  std::vector<Field> fields;
};

inline constexpr std::size_t kMostFields = 16;
inline constexpr std::size_t kMostOptionalFields = 4;
inline constexpr std::size_t kWidestCode = 64;  ///< characters a layout may ask for

/// The layout with its letters in capitals, or why it cannot be kept: no year, no month, week or day of year, a part of
/// the date said twice, an unknown text, or two dates that would be written alike (both are named). Writes every day of
/// 28 years; a few milliseconds, meant for saving.
Expected<Layout> checkedLayout(Layout layout);

/// The part of checkedLayout that looks at each field alone; cheap. decode() runs it, so that no layout can harm it.
Expected<Layout> soundLayout(Layout layout);

/// The day as the layout writes it: first separator of a set, first letter of a shift; an optional shift is left out.
/// The layout must be sound.
std::string encode(const Layout& layout, Date day);

}  // namespace ohmkin::dating
