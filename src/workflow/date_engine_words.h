#pragma once
#include <workflow/date_engine.h>

/// What a dating rests on, said aloud.
namespace ohmkin::workflow {

/// "Usual lags: half of the castings are in an engine within 12 days, nine in ten within 38; …".
std::vector<std::string> assumptionsOf(const dating::Beliefs& beliefs, const DateSpan& window);

}  // namespace ohmkin::workflow
