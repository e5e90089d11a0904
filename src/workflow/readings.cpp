#include <catalog/senders.h>
#include <curve/assumed_tolerance.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/bench_families.h>
#include <workflow/curves.h>
#include <workflow/readings.h>
#include <set>

namespace ohmkin::workflow {
namespace {

/// A counter's thermometer, from memory: a room is known to 2 K (k = 2).
const TemperatureDifference kThermometer = kelvins(1);

}  // namespace

std::optional<Finding> judgeReadings(const catalog::Catalogue& catalogue, const Question& question,
                                     const DisplayUnits& units) {
  if (question.readings.empty()) return std::nullopt;
  const BenchFamilies families = benchFamilies(catalogue);
  std::set<std::size_t> excluded;
  std::set<std::size_t> silent;
  std::string read;
  for (const auto& [at, r] : question.readings) {
    read += fmt::format("{}{} at {}", read.empty() ? "" : ", ", print(r), print(at, units));
    const auto check =
        bench::quickCheck(families.curves, {at, kThermometer, r, 0, {}}, curve::kAssumedTolerance, units);
    if (!check)
      return Finding{"reading-not-compared", Severity::caution, check.error().sentence(), read, "your reading"};
    excluded.insert(check->excluded.begin(), check->excluded.end());
    silent.insert(check->silent.begin(), check->silent.end());
  }
  std::vector<std::string> agreeing;
  for (std::size_t i = 0; i < families.curves.size(); ++i)
    if (!excluded.contains(i) && !silent.contains(i)) agreeing.push_back(families.curves[i].name);
  std::erase_if(silent, [&](std::size_t i) { return excluded.contains(i); });
  Finding finding{"reading-agrees", Severity::note, "", read, "your reading"};
  if (agreeing.empty()) {
    finding.code = "reading-agrees-with-none";
    finding.severity = Severity::caution;
    finding.sentence = fmt::format("The sender in hand ({}) agrees with no family of this catalogue", read);
    finding.sentence +=
        silent.empty() ? "." : fmt::format("; {} could not be compared at that temperature.", silent.size());
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
