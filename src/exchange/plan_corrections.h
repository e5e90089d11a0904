#pragma once
#include <exchange/reading_cell.h>
#include <exchange/reading_proposal.h>

namespace ohmkin::exchange {

/// What the person said that matters before the columns are looked at.
struct Told {
  std::string encoding;
  std::optional<char> separator;
  std::optional<Marks> marks;
};

Expected<Told> toldBy(const std::string& corrections, std::string_view file);

/// Puts the corrections on top of a proposal and takes out the questions they answer.
Expected<void> correct(const std::string& corrections, std::string_view file, Proposal& proposal);

}  // namespace ohmkin::exchange
