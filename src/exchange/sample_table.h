#pragma once
#include <exchange/sample_text.h>
#include <optional>
#include <string>
#include <vector>

namespace ohmkin::exchange {

struct SampleRow {
  std::size_t line = 0;  ///< from 1
  std::string text;      ///< its first line as it stands
  std::vector<std::string> cells;
  std::size_t numbers = 0;  ///< cells that look like numbers, with a unit or without, or like overload
  bool blank = false;
  bool comment = false;
  bool data = false;  ///< two numbers at least, and as many cells as most of them
};

/// Where the rows of numbers are in a sample, and what stands above them.
struct SampleTable {
  char separator = ',';
  std::string separatorReason;
  std::string comment;
  std::vector<SampleRow> rows;       ///< all of the sample
  std::size_t first = 0;             ///< the first row of numbers, in `rows`
  std::size_t width = 0;             ///< cells in a row of numbers
  std::vector<std::string> heading;  ///< names, "" where there is none
  std::vector<std::string> unitsBelow;
  std::size_t headingRows = 0;
  std::size_t skip = 0;  ///< lines above the heading
  [[nodiscard]] std::vector<const SampleRow*> data() const;
};

/// Refuses a sample in which no separator makes two numbers a row.
/// `separator`: told by the person.
Expected<SampleTable> sampleTable(const SampleText& sample, std::optional<char> separator, std::string_view file);

/// The names in a heading's cells. A comment mark before them ("# temperature, ohms") goes, with the cell if it held
/// nothing else; under the separator blank "Deg F   Ohms" is cut at two blanks and more. Empty where the names are not
/// as many as the columns and so belong to none.
std::vector<std::string> headingNames(std::vector<std::string> cells, std::string_view text, char separator,
                                      std::string_view comment, std::size_t width);

/// Loosely: digits with any marks, a sign, an exponent, and behind them a unit or nothing. Overload counts.
bool looksNumeric(std::string_view cell, bool blankGroups = true);

}  // namespace ohmkin::exchange
