#pragma once
#include <workflow/answer.h>
#include <workflow/resolve_port.h>
#include <optional>

namespace ohmkin::workflow {

/// Which branch came of which choice of dash and which choice of port.
struct Origin {
  std::size_t dash = 0;
  std::size_t port = 0;
};

/// Over what is not known, the one observation that tells most about which part to hand over: the expected gain in bits
/// of the best part's identity. None where no look would change anything.
std::optional<DecidingLook> decidingLook(const catalog::Catalogue& catalogue, const Answer& answer,
                                         const std::vector<Origin>& origins, const std::vector<std::string>& dashTells,
                                         const EngineSide& engine);

}  // namespace ohmkin::workflow
