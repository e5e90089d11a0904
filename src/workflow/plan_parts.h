#pragma once
#include <workflow/plan.h>

/// What a plan says to buy.
namespace ohmkin::workflow {

/// The sender first, then what joins it, then the resistors of its trim one by one.
std::vector<PartToBuy> partsFor(const Candidate& candidate);

/// The same part is one line with a greater quantity; resistors of unlike places stay apart, so that each is soldered
/// where it belongs.
void addTo(std::vector<PartToBuy>& list, const std::vector<PartToBuy>& some);

}  // namespace ohmkin::workflow
