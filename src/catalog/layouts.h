#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/date.h>
#include <optional>
#include <vector>

/// How dates are written in castings and stamps.
namespace ohmkin::catalog {

enum class FoundOn { head, block, intake, housing, assemblyStamp };
std::string_view text(FoundOn place);
enum class DateFieldKind {
  monthLetter,
  monthLetterWithoutI,
  monthNumber,
  day,
  yearDigit,
  yearTwoDigits,
  yearFourDigits,
  dayOfYear,
  week,
  weekday,
  shift,
  clockDial,
  fixedText,
  separator
};
std::string_view text(DateFieldKind kind);

struct DateField {
  DateFieldKind kind = DateFieldKind::day;
  std::string text;  ///< fixed text; allowed shift letters; separators that may stand here
  bool optional = false;
};

struct DateLayoutRecord {
  LayoutKey id;
  std::string name;
  FoundOn foundOn = FoundOn::head;
  std::string example;
  Date exampleDate;
  Source source;
  std::vector<DateField> fields;  ///< in order
};

std::vector<DateLayoutRecord> dateLayouts(const Catalogue& catalogue);  ///< all, by id
std::optional<DateLayoutRecord> dateLayout(const Catalogue& catalogue, const LayoutKey& key);

}  // namespace ohmkin::catalog
