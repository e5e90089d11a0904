#pragma once
#include <finding/refusal.h>
#include <string>
#include <string_view>
#include <vector>

/// How a file of bench readings is to be understood. A plan is proposed (reading_proposal.h), shown, corrected by the
/// person, and only then is the file read by it (reading_rows.h).
namespace ohmkin::exchange {

enum class Role { ignored, temperature, resistance, time, curve, direction };

/// The unit of cells that state none; a unit in the cell itself goes before it.
enum class ColumnUnit {
  none,  ///< curve, direction, ignored
  celsius,
  fahrenheit,
  kelvin,
  ohm,
  kilohm,
  megohm,
  millisecond,
  second,
  minute,
  hour,
  clock,         ///< 14:05:30 or 14:05, hours first; past midnight goes on
  minuteClock,   ///< 5:30, minutes first; 1:05:30 with hours before them
  yearMonthDay,  ///< 2024-05-06 14:05:30
  dayMonthYear,  ///< 06.05.2024 14:05:30
  monthDayYear   ///< 5/6/2024 2:05:30 PM
};

struct ColumnPlan {
  Role role = Role::ignored;
  ColumnUnit unit = ColumnUnit::none;
  friend bool operator==(const ColumnPlan&, const ColumnPlan&) = default;
};

struct ReadingPlan {
  std::string encoding = "utf-8";  ///< utf-8, utf-16le, utf-16be, windows-1252, or another name iconv knows
  char separator = ',';            ///< , ; tab | or a blank, which stands for any run of blanks
  char decimal = '.';              ///< . or ,
  char thousands = '\0';           ///< . , ' or a blank, which stands for no-break blanks too; 0: none
  std::string comment;             ///< lines that begin with it are passed over; empty: none
  std::size_t skip = 0;            ///< lines before the heading, or before the first row where there is none
  std::size_t heading = 0;         ///< rows of headings: names, and perhaps units below them
  bool carriageReturns = false;    ///< lines end in CR alone
  bool blankLineParts = false;     ///< a blank line, or the heading again, begins another curve
  std::vector<ColumnPlan> columns;

  /// The columns of a role, from 0.
  [[nodiscard]] std::vector<std::size_t> with(Role role) const;
  friend bool operator==(const ReadingPlan&, const ReadingPlan&) = default;
};

/// One line, to be remembered or typed, columns from 1:
///   temperature=2:C, resistance=3:kohm, curve=1, skip=4, heading=1, separator=semicolon, decimal=comma
/// Further words: time=1:ms|s|min|h|clock|mmss|ymd|dmy|mdy, direction=4, ignore=5; temperature units C, F, K;
/// resistance ohm, kohm, Mohm; separator comma|semicolon|tab|pipe|blank; decimal point|comma; thousands
/// none|point|comma|blank|apostrophe; encoding NAME; comment TEXT|none; lines lf|cr; parts none|blank-line; columns N.
/// Several resistance columns are as many curves, named by their headings.
std::string planText(const ReadingPlan& plan);

/// Reads such a line on top of `base`: what it does not mention stays. A role that it names leaves the columns it had
/// before. Refuses unknown words, columns of 0 or above kMostColumns, and units that do not suit the role.
Expected<ReadingPlan> parsePlan(std::string_view text, ReadingPlan base = {}, std::string_view where = {});

/// A plan can be read by when it has a temperature and a resistance column and no mark means two things.
Expected<void> checkPlan(const ReadingPlan& plan, std::string_view where = {});

inline constexpr std::size_t kMostColumns = 256;
inline constexpr std::size_t kMostSkippedLines = 10'000;

}  // namespace ohmkin::exchange
