#include <dating/enumeration.h>
#include <dating/evidence_findings.h>
#include <fmt/format.h>
#include <cmath>

namespace ohmkin::dating {
namespace {

constexpr std::size_t kMostCastings = 32;

Expected<void> checkLag(const Lag& lag, std::string_view where) {
  const auto bad = [&](std::string found, std::string expected) {
    return refuse("lag-out-of-range", std::string(where), std::move(found), std::move(expected));
  };
  if (lag.longest < 1 || lag.longest > 3650)
    return bad(fmt::format("{} days at most", lag.longest), "1 to 3650 days at most");
  if (!(lag.median > 0 && lag.median <= lag.longest))
    return bad(fmt::format("median {} days", lag.median), "a median above 0, not beyond the longest");
  if (!(lag.sigma >= 0.05 && lag.sigma <= 5)) return bad(fmt::format("sigma {}", lag.sigma), "a sigma from 0.05 to 5");
  return {};
}

Expected<void> checkBeliefs(const Beliefs& beliefs) {
  for (const double share :
       {beliefs.firstEngine, beliefs.headStays, beliefs.blockStays, beliefs.stampTrue, beliefs.recutStampTrue})
    if (!(share >= 0 && share <= 1))
      return refuse("share-out-of-range", "beliefs", fmt::format("{}", share), "a share from 0 to 1");
  if (beliefs.headsApart < 0 || beliefs.earlyCasting < 0)
    return refuse("days-out-of-range", "beliefs", fmt::format("{} and {}", beliefs.headsApart, beliefs.earlyCasting),
                  "days of 0 or more");
  if (const auto fine = checkLag(beliefs.castingToAssembly, "lag from casting to assembly"); !fine) return fine;
  return checkLag(beliefs.assemblyToVehicle, "lag from assembly to vehicle");
}

Expected<void> checkReadings(const std::vector<Reading>& readings, const std::string& where) {
  for (const Reading& reading : readings)
    if (!(reading.weight > 0 && reading.weight <= 1 && reading.from < reading.until))
      return refuse("reading-malformed", where, fmt::format("weight {}", reading.weight),
                    "a weight above 0 and a first day before the last");
  return {};
}

Expected<void> checkSpan(const DateSpan& span, const std::string& where) {
  if (span.from && span.until && *span.until <= *span.from)
    return refuse("dates-reversed", where, fmt::format("{} to {}", isoDate(*span.from), isoDate(*span.until)),
                  "a first day before the last");
  return {};
}

Expected<void> checkFacts(const Evidence& evidence, const Days& window) {
  if (evidence.castings.size() > kMostCastings)
    return refuse("castings-too-many", "castings", fmt::format("{}", evidence.castings.size()),
                  fmt::format("at most {}", kMostCastings));
  for (const DatedCasting& casting : evidence.castings) {
    if (const auto fine = checkReadings(casting.readings, casting.name); !fine) return fine;
    if (const auto fine = checkSpan(casting.produced, casting.name); !fine) return fine;
  }
  if (evidence.stamp)
    if (const auto fine = checkReadings(evidence.stamp->readings, "assembly stamp"); !fine) return fine;
  if (evidence.vehicle.yearProduced)
    if (const auto fine = checkSpan(*evidence.vehicle.yearProduced, "model year"); !fine) return fine;
  if (evidence.vehicle.year && (evidence.vehicle.year->value < 1600 || evidence.vehicle.year->value > 3000))
    return refuse("year-out-of-range", "model year", fmt::format("{}", evidence.vehicle.year->value),
                  "a year from 1600 to 3000");
  if (const auto built = vehicleDays(evidence.vehicle, window); built && built->until <= built->from)
    return refuse(
        "vehicle-outside-dates", "vehicle", "a vehicle built outside the dates thought possible",
        fmt::format("a build date or model year between {} and {}", isoDate(window.from), isoDate(window.until)));
  return {};
}

}  // namespace

Expected<Posterior> posterior(const Evidence& evidence) {
  const auto window = closedWindow(evidence.window);
  if (!window) return tl::make_unexpected(window.error());
  if (const auto fine = checkBeliefs(evidence.beliefs); !fine) return tl::make_unexpected(fine.error());
  if (const auto fine = checkFacts(evidence, *window); !fine) return tl::make_unexpected(fine.error());
  const Enumeration enumeration(evidence, *window);
  Posterior result;
  result.window = {window->from, window->until};
  result.assembly = enumeration.assembly();
  result.decades = result.assembly.decades();
  for (std::size_t i = 0; i < evidence.castings.size(); ++i) result.castings.push_back(enumeration.casting(i));
  result.firstEngine = enumeration.firstEngine();
  findConflicts(evidence, *window, result);
  findHeadsApart(evidence, *window, result);
  findModelYear(evidence, result);
  findFirstEngine(evidence, *window, result);
  findEras(evidence, result);
  return result;
}

}  // namespace ohmkin::dating
