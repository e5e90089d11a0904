#include <fmt/format.h>
#include <workflow/sheet_words.h>

#include <cmath>

namespace ohmkin::workflow {
namespace {}  // namespace

bool comesLate(const pairing::HotWarning& hot) {
  const auto* reaches = std::get_if<pairing::Reaches>(&hot);
  return reaches == nullptr ? std::holds_alternative<pairing::NeverReaches>(hot)
                            : inKelvin(reaches->late) > pairing::kOnTime;
}

sheet::Heading headingOf(const PairAnswer& pair, const SheetOptions& options) {
  return {pair.gaugeName, pair.gaugeFamily.empty() ? "" : "built for " + pair.gaugeFamily, pair.senderName,
          pair.senderFamily, plainDate(options.day)};
}

std::string hotWordsOf(const TemperatureDifference& late, const DisplayUnits& units) {
  if (std::abs(inKelvin(late)) < pairing::kOnTime) return "on time";
  return printAmount(late, units, 1) + (inKelvin(late) > 0 ? " late" : " early");
}

std::string hotLineOf(const pairing::HotWarning& hot, const DisplayUnits& units) {
  if (const auto* reaches = std::get_if<pairing::Reaches>(&hot))
    return fmt::format("It comes to the hot mark at {}, {}{}.", print(reaches->at, units),
                       hotWordsOf(reaches->late, units), comesLate(hot) ? ": the engine is hotter than it says" : "");
  if (const auto* never = std::get_if<pairing::NeverReaches>(&hot))
    return fmt::format("At {}, where the sender's curve ends, it is still below the hot mark: at least {} late.",
                       print(never->curveEnds, units), printAmount(never->atLeastLate, units, 1));
  const auto& past = std::get<pairing::PastAlready>(hot);
  return fmt::format("It is past the hot mark already at {}: at least {} early.", print(past.curveBegins, units),
                     printAmount(past.atLeastEarly, units, 1));
}

}  // namespace ohmkin::workflow
