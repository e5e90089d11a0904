#pragma once
#include <exchange/reading_plan.h>
#include <finding/finding.h>
#include <quantity/parse.h>

/// What a file of bench readings looks like, said in words, before anything is read by it.
namespace ohmkin::exchange {

struct ProposalHints {
  TemperatureUnit bare = TemperatureUnit::celsius;  ///< of temperatures without a unit anywhere
  bool wholeFile = false;                           ///< the sample is the whole file: its last line is complete
  /// As parsePlan reads them; encoding, separator and marks are heeded from the beginning.
  std::string corrections = {};
};

/// Why a column was read as it was; stands beside ReadingPlan::columns.
struct ColumnReason {
  std::string heading;    ///< as in the file, "" without one
  double confidence = 0;  ///< 0 … 1, by judgement, not a probability
  std::string reason;     ///< "the heading says temperature and °C"
};

/// What the file leaves open. Each answer is a line for parsePlan; the plan follows the first of them.
/// "columns-unknown" has none: the plan lacks temperature or resistance until the person names them. What corrections
/// answer is not asked.
struct PlanQuestion {
  std::string code;      ///< stable, kebab-case: "decimal-or-thousands"
  std::string sentence;  ///< "Is 1,234 one thousand two hundred and thirty-four, or 1.234?"
  std::vector<std::string> answers;
};

struct Proposal {
  ReadingPlan plan;
  std::vector<ColumnReason> columns;
  std::vector<Finding> findings;                    ///< encoding, separator, marks, preamble: how each was told
  std::vector<PlanQuestion> questions;              ///< empty: nothing is open
  std::vector<std::string> preamble;                ///< the lines passed over, UTF-8
  std::vector<std::vector<std::string>> firstRows;  ///< cells of the first rows, UTF-8, at most 20
  std::string signature;  ///< 32 hexadecimal digits: the same for files of one habit (heading, preamble, separator),
                          ///< whatever the corrections
};

/// From the first bytes of a file, at most kSampleBytes of which are looked at. Refuses with one sentence
/// (FILE:LINE:COLUMN as far as there is one) files without rows of numbers: empty, binary, not text in any encoding;
/// and corrections that parsePlan refuses.
Expected<Proposal> propose(std::string_view sample, std::string_view file, const ProposalHints& hints = {});

inline constexpr std::size_t kSampleBytes = 256U << 10U;

}  // namespace ohmkin::exchange
