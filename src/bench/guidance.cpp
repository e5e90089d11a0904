#include <bench/guidance.h>
#include <fmt/core.h>

#include <algorithm>

namespace ohmkin::bench {
namespace {

constexpr double kSameBath = 3;   // K: baths nearer than this are one
constexpr double kReachable = 1;  // K: an end this near counts as reached

void check(std::vector<Finding>& findings, std::optional<bool> done, const char* code, const char* wrong,
           const char* open) {
  if (done.value_or(false)) return;
  if (done) findings.push_back({code, Severity::caution, wrong, "", kCommonPractice});
  else findings.push_back({std::string(code) + "-open", Severity::note, open, "not looked at", kCommonPractice});
}

/// Baths that differ from one another; heating and cooling through the same one is one.
std::size_t baths(std::vector<double> kelvin) {
  std::ranges::sort(kelvin);
  std::size_t count = 0;
  double last = -kSameBath;
  for (double t : kelvin) {
    if (t - last < kSameBath) continue;
    ++count;
    last = t;
  }
  return count;
}

}  // namespace

std::vector<Finding> cautions(BathKind kind) {
  std::vector<Finding> findings{
      {"local-codes-first", Severity::warning,
       "Local codes and licensed practice come first; where they say otherwise, they are right.", "", kCommonPractice}};
  if (kind == BathKind::ice) return findings;
  findings.push_back({"hot-water-and-steam", Severity::warning,
                      "Hot water, coolant and steam scald: gloves, eye protection, tongs for the sender; never open a "
                      "hot cooling system.",
                      "", kCommonPractice});
  findings.push_back({"no-sealed-vessel", Severity::warning,
                      "Never heat a sealed vessel: an open pot only, whatever temperature is wanted.", "",
                      kCommonPractice});
  findings.push_back({"open-flame", Severity::warning,
                      "No open flame near fuel, solvents or a battery being charged; use an electric plate.", "",
                      kCommonPractice});
  findings.push_back({"coolant-is-poison", Severity::warning,
                      "Coolant is poisonous and its vapour can burn: heat plain water, in a pot that is never again "
                      "used for food.",
                      "", kCommonPractice});
  return findings;
}

std::vector<Finding> practiceFindings(const Practice& practice) {
  std::vector<Finding> findings;
  if (!practice.perMinute)
    findings.push_back({"dwell-open", Severity::note,
                        "Wait until the ohms move less than 0.5 % a minute, then write them down.", "not looked at",
                        kCommonPractice});
  else if (*practice.perMinute > kSteadyPerMinute)
    findings.push_back({"dwell-too-short", Severity::caution,
                        "The sender was still moving: wait until its ohms move less than 0.5 % a minute.",
                        fmt::format("{:.1f} % a minute", 100 * *practice.perMinute), kCommonPractice});
  check(findings, practice.immersedPastHex, "hex-dry",
        "The hex was dry: heat runs off through it and the element reads cooler than the bath. Immerse past the hex.",
        "Immerse the sender past its hex, touching neither bottom nor wall.");
  check(findings, practice.stirred, "not-stirred", "The bath was not stirred: it is layered, hot above.",
        "Stir, and keep the thermometer's tip beside the sender's.");
  check(findings, practice.probesSwapped, "probes-not-swapped",
        "The probes were read one way round only: a voltage in the circuit would go unseen.",
        "Read once, swap the probes, read again and take the mean.");
  return findings;
}

std::optional<Finding> reachOf(std::span<const Reading> readings, TemperatureSpan wanted, const DisplayUnits& units) {
  if (readings.empty())
    return Finding{"reach-none", Severity::caution, "Nothing was measured yet.", "no readings", "your readings"};
  const auto [coldest, hottest] = std::ranges::minmax_element(readings, {}, &Reading::at);
  std::vector<double> kelvin;
  for (const Reading& reading : readings) kelvin.push_back(inKelvin(reading.at));
  const std::size_t points = baths(std::move(kelvin));
  const bool hotOpen = inKelvin(wanted.high) - inKelvin(hottest->at) > kReachable;
  const bool coldOpen = inKelvin(coldest->at) - inKelvin(wanted.low) > kReachable;
  if (points >= 3 && !hotOpen && !coldOpen) return std::nullopt;

  Finding finding{
      hotOpen    ? "hot-end-extrapolated"
      : coldOpen ? "cold-end-extrapolated"
                 : "too-few-baths",
      Severity::caution, "",
      fmt::format("{} different temperatures, {} to {}", points, print(coldest->at, units), print(hottest->at, units)),
      "your readings"};
  if (points == 1) finding.sentence = "One temperature is one point of a curve: it gives no slope. ";
  if (points == 2)
    finding.sentence = "Two temperatures are two points: how the curve bends between and beyond them is assumed. ";
  if (hotOpen)
    finding.sentence += fmt::format("Above {} the curve is an extrapolation, and the hot end is where people look; ",
                                    print(hottest->at, units));
  if (coldOpen) finding.sentence += fmt::format("Below {} the curve is an extrapolation; ", print(coldest->at, units));
  finding.sentence += "add readings at other temperatures.";
  return finding;
}

}  // namespace ohmkin::bench
