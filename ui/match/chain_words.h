#pragma once
#include <parts/chain_view.h>
#include <parts/chip_row.h>
#include <workflow/answer.h>
#include <workflow/question_text.h>

/// The chain's cards and joints, and the chips under the text box.
namespace ohmkin::match {

parts::Chain chainOf(const workflow::Branch& branch, const workflow::Candidate* candidate);
std::vector<parts::ChipWords> chipsOf(const QString& text, const workflow::TextReading& reading,
                                      const std::vector<workflow::Chip>& chips);

}  // namespace ohmkin::match
