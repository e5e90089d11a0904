#include <fmt/format.h>
#include <workflow/date_engine_words.h>

namespace ohmkin::workflow {
namespace {

std::string lagWords(const dating::Lag& lag, std::string_view what, std::string_view where) {
  const dating::UsualDays days = dating::usualDays(lag);
  return fmt::format("half of the {} are in {} within {:.0f} days, nine in ten within {:.0f}", what, where, days.half,
                     days.nineInTen);
}

}  // namespace

std::vector<std::string> assumptionsOf(const dating::Beliefs& beliefs, const DateSpan& window) {
  std::vector<std::string> words;
  const dating::Lag& engine = beliefs.castingToAssembly;
  const dating::Lag& vehicle = beliefs.assemblyToVehicle;
  // One source said once; where only one lag was set, each names its own.
  const bool alike = engine.source == vehicle.source;
  words.push_back(fmt::format("Lags: {}{}; {} ({}).", lagWords(engine, "castings", "an engine"),
                              alike ? "" : fmt::format(" ({})", engine.source),
                              lagWords(vehicle, "engines", "a vehicle"), vehicle.source));
  words.push_back(fmt::format("{:.0f} % of vehicles still have their first engine ({}).", 100 * beliefs.firstEngine,
                              beliefs.source));
  if (window.from && window.until)
    words.push_back(fmt::format("Dates from {} to {} were considered.", plainDate(*window.from),
                                plainDate(*window.until - std::chrono::days{1})));
  return words;
}

}  // namespace ohmkin::workflow
