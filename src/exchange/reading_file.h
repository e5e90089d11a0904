#pragma once
#include <exchange/complaints.h>
#include <exchange/reading_proposal.h>
#include <string>
#include <vector>

/// Readings of one sender from a bench file, read by the plan that is proposed for it.
namespace ohmkin::exchange {

struct FileReading {
  Temperature at;
  Ohms ohms;
  bool cooling = false;
};

/// The file is understood as reading_proposal.h has it, `hints.corrections` on top; `text` is all of it. Either every
/// line is read, or the complaints name file:line:column of each that is not; nothing is left out silently: overload
/// readings, more than one curve and open questions are complaints too.
tl::expected<std::vector<FileReading>, Complaints> readReadings(std::string_view text, const std::string& file,
                                                                ProposalHints hints);

inline constexpr std::size_t kLargestReadingFile = 16U << 20U;  ///< bytes
inline constexpr std::size_t kMostReadings = 100'000;

}  // namespace ohmkin::exchange
