#include <catalog/families.h>
#include <catalog/senders.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/curves.h>
#include <workflow/readings.h>
#include <cmath>

namespace ohmkin::workflow {
namespace {

constexpr double kThermometer = 2.0;  // K: a counter's room temperature is known no better

/// Every reading lies within tolerance, curve knowledge (k = 2) and the thermometer's doubt of this curve.
bool agrees(const curve::Curve& curve, double tolerance, const std::vector<std::pair<Temperature, Ohms>>& readings,
            bool& outside) {
  for (const auto& [at, read] : readings) {
    const auto expected = curve.resistance(at);
    if (!expected) {
      outside = true;
      return false;
    }
    const double knowledge = 2 * curve.knowledge(at).value_or(0);
    const double thermometer = kThermometer * std::abs(curve.slope(at).value_or(0));
    const double room = std::log1p(tolerance) + std::hypot(knowledge, thermometer);
    if (std::abs(std::log(inOhms(read) / inOhms(*expected))) > room) return false;
  }
  return true;
}

}  // namespace

std::optional<Finding> judgeReadings(const catalog::Catalogue& catalogue, const Question& question,
                                     const DisplayUnits& units) {
  if (question.readings.empty()) return std::nullopt;
  std::vector<std::string> agreeing;
  std::size_t outside = 0;
  for (const catalog::Family& family : catalog::families(catalogue)) {
    if (family.measurand != catalog::Measurand::coolantTemperature) continue;
    const auto curve = curveOf(family);
    bool beyond = false;
    if (curve && agrees(curve->curve, family.tolerance.value_or(kAssumedSenderTolerance), question.readings, beyond))
      agreeing.push_back(family.name);
    outside += beyond ? 1u : 0u;
  }
  std::string read;
  for (const auto& [at, r] : question.readings)
    read += fmt::format("{}{} at {}", read.empty() ? "" : ", ", print(r), print(at, units));
  Finding finding{"reading-agrees", Severity::note, "", read, "your reading"};
  if (agreeing.empty()) {
    finding.code = "reading-agrees-with-none";
    finding.severity = Severity::caution;
    finding.sentence = fmt::format("The sender in hand ({}) agrees with no family of this catalogue", read);
    finding.sentence += outside > 0 ? fmt::format("; {} could not be compared at that temperature.", outside) : ".";
  } else {
    finding.sentence = fmt::format("The sender in hand ({}) agrees with {}.", read, fmt::join(agreeing, ", "));
  }
  return finding;
}

Refusal unknownPart(const catalog::Catalogue& catalogue, const std::string& part) {
  return {"part-unknown", "--fitted", fmt::format("'{}'", part),
          "a part number of this catalogue" + perhaps(nearMisses(part, catalog::partNumbers(catalogue)))};
}

}  // namespace ohmkin::workflow
