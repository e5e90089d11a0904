#pragma once
#include <exchange/reading_plan.h>
#include <optional>

/// Units as people and loggers write them, in cells, headings and corrections: "°C", "degF", "kOhm", "kΩ", "R", "min".
namespace ohmkin::exchange {

std::optional<ColumnUnit> temperatureUnit(std::string_view word);
/// "K" and "k" are kilohms here and kelvins above: which of them is meant hangs on the column's role.
std::optional<ColumnUnit> resistanceUnit(std::string_view word);
std::optional<ColumnUnit> timeUnit(std::string_view word);

double ohmsIn(ColumnUnit unit);                     ///< 1, 1e3 or 1e6
double secondsIn(ColumnUnit unit);                  ///< 0.001, 1, 60 or 3600
double kelvinsFrom(double value, ColumnUnit unit);  ///< a point on the scale
std::string_view unitName(ColumnUnit unit);         ///< for a person: "°C", "kΩ", "minutes"

/// Without the blanks around it, no-break blanks (U+00A0, U+202F, U+2009) included.
std::string_view trimmedCell(std::string_view text);
/// Whether `text` begins with such a blank, and how many bytes it has; 0 where not.
std::size_t blankLength(std::string_view text);

}  // namespace ohmkin::exchange
