#include <fault/found.h>

namespace ohmkin::fault {

Expected<Found> findAnswer(const catalog::Catalogue& catalogue, workflow::FaultSession session, const Found* known,
                           const DisplayUnits& units) {
  Found found;
  workflow::FaultSession bare;
  bare.question = session.question;
  found.question = workflow::faultDocument(bare) + (units.temperature == TemperatureUnit::fahrenheit ? "F" : "C") +
                   std::to_string(static_cast<int>(units.torque));
  if (known != nullptr && known->question == found.question) {
    found.finder = known->finder;
  } else {
    auto made = workflow::FaultFinder::make(catalogue, session.question, units);
    if (!made) return tl::make_unexpected(made.error());
    found.finder = std::make_shared<const workflow::FaultFinder>(std::move(*made));
  }
  found.leftOut = workflow::leaveOutUnknown(*found.finder, session);
  auto answer = workflow::answerOf(*found.finder, session, "");
  if (!answer) return tl::make_unexpected(answer.error());
  found.answer = std::move(*answer);
  found.session = std::move(session);
  return found;
}

}  // namespace ohmkin::fault
