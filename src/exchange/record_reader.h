#pragma once
#include <exchange/text_source.h>
#include <finding/refusal.h>
#include <string_view>
#include <vector>

namespace ohmkin::exchange {

struct Record {
  std::uint64_t line = 0;               ///< on which it begins, from 1
  std::vector<std::string_view> cells;  ///< unquoted, untrimmed; valid until the next call
  std::string_view text;                ///< all of it as it stood; empty for a blank line
  [[nodiscard]] bool blank() const;     ///< nothing in any cell
};

/// Cuts UTF-8 into rows and cells, bounded in memory. Double quotes around a whole cell (blanks may stand outside
/// them) hide separators and line breaks and are doubled inside; elsewhere a quote is a character like any other,
/// since people write 3/8" into cells. Blank as separator stands for any run of blanks and tabs.
class RecordReader {
 public:
  RecordReader(TextSource& source, char separator, bool carriageReturns, std::string_view file);

  /// false at the end. Refuses NUL, text that is not in its encoding, too long rows, too many cells, open quotes.
  Expected<bool> next(Record& record);
  /// The same for a line that is not to be cut: quotes mean nothing in it, it becomes one cell.
  Expected<bool> nextLine(Record& record);
  [[nodiscard]] std::uint64_t lines() const { return line_ - 1; }  ///< read so far

 private:
  struct CellAt {
    std::size_t begin, end;
    bool doubledQuotes;
  };
  bool refill();
  Expected<bool> lineEnd(std::size_t from);
  Expected<void> cut();
  Expected<std::size_t> quotedCell(std::size_t quote);
  Expected<void> cutAtBlanks();
  Expected<void> add(std::size_t begin, std::size_t end, bool doubledQuotes);
  Expected<void> checkText(std::string_view text) const;
  void handOver(Record& record);
  [[nodiscard]] tl::unexpected<Refusal> bad(std::string found, std::string expected, bool withColumn = true) const;

  TextSource& source_;
  char separator_;
  char lineBreak_;
  std::string file_;
  std::vector<char> text_;
  std::size_t piece_;      ///< bytes to ask for next: little at first, since most files are small
  std::size_t begin_ = 0;  ///< of the row, in text_
  std::size_t end_ = 0;    ///< of the row, its line break not counted
  bool ended_ = false;     ///< nothing more comes
  std::uint64_t line_ = 1;
  std::size_t breaks_ = 0;  ///< line breaks inside the row's quotes
  std::vector<CellAt> cells_;
};

}  // namespace ohmkin::exchange
