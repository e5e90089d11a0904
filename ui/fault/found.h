#pragma once
#include <workflow/fault_document.h>
#include <memory>
#include <string>

/// What the page's thread hands back.
namespace ohmkin::fault {

struct Found {
  std::shared_ptr<const workflow::FaultFinder> finder;
  std::string question;  ///< the finder was made for, as text
  workflow::FaultSession session;
  workflow::FaultAnswer answer;
  std::size_t leftOut = 0;  ///< of the session, because the circuit does not have it
};

/// The finder is made anew only where another circuit is asked for than the one `known` has.
Expected<Found> findAnswer(const catalog::Catalogue& catalogue, workflow::FaultSession session, const Found* known,
                           const DisplayUnits& units);

}  // namespace ohmkin::fault
