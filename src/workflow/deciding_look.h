#pragma once
#include <workflow/deciding_look_possibilities.h>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ohmkin::workflow {

/// Over what is not known, the one observation that tells most about what to do: the expected gain in bits, which is
/// the mutual information of what would be seen and what would then be done. None where no look would change anything.
std::optional<DecidingLook> decidingLook(const catalog::Catalogue& catalogue, const Answer& answer,
                                         const std::vector<Origin>& origins, const std::vector<std::string>& dashTells,
                                         const EngineSide& engine);

/// What a look sees in one of the ways it can be; names outlive it.
using Outcome = std::function<std::string_view(const Possibility&)>;

/// The gain of a look that sees `outcome` for certain in each way it can be; empty: there is nothing of its own to see.
double gainOfSeeing(const std::vector<Possibility>& ways, const Outcome& outcome);
/// The gain of an ohmmeter on the sender in hand: what it reads is spread about each family's ohms.
double gainOfColdOhms(const Unknowns& unknowns);

}  // namespace ohmkin::workflow
