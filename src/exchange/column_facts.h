#pragma once
#include <exchange/heading_words.h>
#include <exchange/reading_cell.h>
#include <exchange/sample_table.h>
#include <array>
#include <set>

namespace ohmkin::exchange {

/// What a column of the sample holds.
struct ColumnFacts {
  std::string heading;
  HeadingMeaning said;
  std::optional<ColumnUnit> unitBelow;  ///< from a row of units
  std::vector<std::string_view> cells;
  std::size_t filled = 0;
  std::size_t numbers = 0;  ///< overloads included
  std::size_t overloads = 0;
  std::size_t clocks = 0;
  std::array<std::size_t, 3> dates{};  ///< as year-month-day, day-month-year, month-day-year
  std::size_t directions = 0;
  std::size_t withDegrees = 0;  ///< a temperature unit in the cell that cannot be kilohms
  std::size_t withOhms = 0;
  std::optional<ColumnUnit> cellDegrees;  ///< the unit of temperature last met in a cell
  std::set<std::string_view> words;       ///< different cells, 64 at most
  [[nodiscard]] bool mostly(std::size_t count) const { return filled > 0 && count * 2 > filled; }
};
std::vector<ColumnFacts> columnFacts(const SampleTable& table);

/// The bare numbers among the cells as they read by these marks.
std::vector<double> valuesOf(const ColumnFacts& column, Marks marks);

}  // namespace ohmkin::exchange
