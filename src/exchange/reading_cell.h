#pragma once
#include <exchange/reading_plan.h>
#include <optional>
#include <string>
#include <tl/expected.hpp>

/// One cell of a bench file as a number of the trade.
namespace ohmkin::exchange {

struct Marks {
  char decimal = '.';
  char thousands = '\0';  ///< as in ReadingPlan
};

/// The number a cell begins with and what follows it, blanks between taken off. Groups behind a thousands mark have
/// three digits each, or there is no number. None where the cell does not begin with one, and for infinities.
struct LeadingNumber {
  double value = 0;
  std::string plain;      ///< the number with a decimal point and no groups
  std::string_view rest;  ///< "kΩ"
};
std::optional<LeadingNumber> leadingNumber(std::string_view cell, Marks marks);

/// Bare numbers only, fast; none where the cell is anything else.
std::optional<double> bareNumber(std::string_view cell, Marks marks);

/// What meters show when the resistance is more than they measure: OL, O.L, "1." alone, inf, ----, open, over, >20M.
/// From 9.9e37 up it is the infinity of SCPI (SCPI-1999 volume 1, 7.2.1; from memory).
bool isOverload(std::string_view cell, Marks marks);

struct CellComplaint {
  std::string_view code;
  std::string expected;
};

/// Kelvins, above 0 and up to 1000 °C; `bare` is the unit of a cell that states none.
tl::expected<double, CellComplaint> temperatureCell(std::string_view cell, ColumnUnit bare, Marks marks);
/// Ohms above 0, or infinity for overload.
tl::expected<double, CellComplaint> ohmsCell(std::string_view cell, ColumnUnit bare, Marks marks);

}  // namespace ohmkin::exchange
