#pragma once
#include <exchange/reading_plan.h>
#include <quantity/quantity.h>
#include <cstdint>
#include <istream>
#include <optional>

/// Reading a file of bench readings by a plan: one pass, memory bounded whatever its size.
namespace ohmkin::exchange {

enum class Run { unknown, heating, cooling };

struct ReadingRow {
  std::string_view curve;         ///< UTF-8, valid during the call; "" where the file names none
  Temperature at;                 ///< above absolute zero, below 1000 °C
  std::optional<Ohms> ohms;       ///< above 0; none: overload, more than the meter shows
  std::optional<double> seconds;  ///< from any start; only differences within a curve mean something
  Run run = Run::unknown;
  std::uint64_t line = 0;  ///< on which the row begins, from 1
};

/// A cell that could not be read; its row is left out.
struct RejectedCell {
  std::uint64_t line = 0;
  std::size_t column = 0;  ///< the cell's number in its row, from 1
  std::string text;        ///< as in the file, made fit for a terminal
  std::string code;        ///< "ohms-unreadable"
  std::string expected;    ///< completes "expected …"
  /// FILE:LINE:COLUMN, found, expected.
  [[nodiscard]] Refusal refusal(std::string_view file) const;
};

/// Takes what is read. Each call may end the reading by returning false.
class ReadingSink {
 public:
  ReadingSink() = default;
  virtual ~ReadingSink() = default;
  ReadingSink(const ReadingSink&) = delete;
  ReadingSink& operator=(const ReadingSink&) = delete;

  virtual bool row(const ReadingRow& row) = 0;
  virtual bool rejected(const RejectedCell& cell) = 0;
  /// Every 256 KiB or so: bytes of the file that are done with.
  virtual bool progress(std::uint64_t /*bytes*/) { return true; }
};

struct ReadingTally {
  std::uint64_t rows = 0;       ///< handed over, overloads included; a line of several resistance columns gives several
  std::uint64_t overloads = 0;  ///< of them
  std::uint64_t rejected = 0;   ///< cells
  std::uint64_t passedOver = 0;  ///< comments, headings met again, names of parts
  std::uint64_t lines = 0;
  std::uint64_t bytes = 0;
  bool stopped = false;  ///< by the sink
};

/// Refuses (FILE:LINE:COLUMN, found, expected) a plan that checkPlan refuses, and what no row can be made of: NUL
/// bytes, text that breaks the plan's encoding, rows longer than kLongestRow, more than kMostColumns cells, a quote
/// that is never closed, a stream that fails. Rows before that have been handed over.
Expected<ReadingTally> readRows(std::istream& in, const ReadingPlan& plan, std::string_view file, ReadingSink& sink);

inline constexpr std::size_t kLongestRow = 64U << 10U;  ///< bytes, quoted line breaks included

}  // namespace ohmkin::exchange
