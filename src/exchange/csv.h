#pragma once
#include <finding/refusal.h>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace ohmkin::exchange {

struct CsvRow {
  std::size_t line = 0;  ///< on which the row begins, from 1
  std::vector<std::string> cells;
};

/// Reads CSV as RFC 4180 has it: comma, double quotes, LF or CRLF; a byte-order mark is skipped, blank lines are no
/// rows. Calls `row` for each; stops when that returns false. Refuses a quote out of place, naming the line.
Expected<void> readCsv(std::string_view text, std::string_view file, const std::function<bool(CsvRow&)>& row);

}  // namespace ohmkin::exchange
