#include <bench/weighing.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::bench {
namespace {

constexpr double kSettled = 0.95;
constexpr double kWorthNaming = 0.05;
constexpr std::size_t kMostNamed = 4;

std::string evidenceOf(std::span<const Reading> readings) {
  return readings.size() == 1 ? "1 reading" : fmt::format("{} readings", readings.size());
}

Finding verdict(const Identification& answer, std::span<const FamilyCurve> families,
                std::span<const Reading> readings) {
  Finding finding{"curve-unsettled", Severity::note, "", evidenceOf(readings), "your readings"};
  const Suspect& first = answer.suspects.front();
  const std::string& name = families[first.family].name;
  if (answer.none > first.probability) {
    finding.code = "curve-none";
    finding.severity = Severity::caution;
    finding.sentence = fmt::format("None of these curves fits well: {} that it is another one; nearest is {} ({}).",
                                   percent(answer.none), name, percent(first.probability));
    return finding;
  }
  if (first.probability >= kSettled) {
    finding.code = "curve-identified";
    finding.sentence = fmt::format("It reads as {} ({}).", name, percent(first.probability));
    return finding;
  }
  std::string names;
  for (std::size_t i = 0; i < std::min(answer.suspects.size(), kMostNamed); ++i) {
    const Suspect& suspect = answer.suspects[i];
    if (i > 0 && suspect.probability < kWorthNaming) break;
    names += fmt::format("{}{} ({})", i == 0 ? "" : ", ", families[suspect.family].name, percent(suspect.probability));
  }
  finding.severity = Severity::caution;
  finding.sentence = fmt::format("Not settled yet: {}; none of these: {}.", names, percent(answer.none));
  return finding;
}

void addRemarks(Identification& answer, std::span<const FamilyCurve> families, std::span<const Reading> readings,
                const IdentifyModel& model) {
  for (const Suspect& suspect : answer.suspects) {
    if (suspect.probability < kWorthNaming) break;
    if (families[suspect.family].tolerance) continue;
    answer.findings.push_back({"tolerance-assumed", Severity::caution,
                               fmt::format("{} states no tolerance: ±{:.3g} % of ohms is assumed.",
                                           families[suspect.family].name, 100 * model.assumedTolerance),
                               "", "a judgement"});
  }
  const auto partly =
      std::ranges::count_if(answer.suspects, [&](const Suspect& s) { return s.answered < readings.size(); });
  if (partly > 0)
    answer.findings.push_back({"curve-not-reaching", Severity::note,
                               fmt::format("{} of {} curves do not reach every temperature read; there they neither "
                                           "gain nor lose.",
                                           partly, families.size()),
                               "", "the curves' valid spans"});
}

/// What cold ohms leave of the families.
Finding coldFinding(const QuickCheck& answer, std::span<const FamilyCurve> families, const Reading& room,
                    const DisplayUnits& units) {
  const std::string evidence =
      fmt::format("{} at {} ± {}", print(room.ohms), print(room.at, units), printAmount(2.0 * room.u, units));
  if (answer.remain.empty())
    return {"cold-ohms-none", Severity::caution,
            fmt::format("{} cold agrees with none of the {} curves that reach that temperature.", print(room.ohms),
                        answer.excluded.size()),
            evidence, "your reading"};
  std::string names;
  for (std::size_t i = 0; i < std::min(answer.remain.size(), kMostNamed); ++i)
    names += (i == 0 ? "" : ", ") + families[answer.remain[i]].name;
  if (answer.remain.size() > kMostNamed) names += fmt::format(" and {} more", answer.remain.size() - kMostNamed);
  return {"cold-ohms-remain", Severity::note,
          fmt::format("{} cold leaves {} of {}: {}. Cold ohms exclude; only a hot reading decides.", print(room.ohms),
                      answer.remain.size(), answer.remain.size() + answer.excluded.size(), names),
          evidence, "your reading"};
}

}  // namespace

Expected<Identification> identify(std::span<const FamilyCurve> families, std::span<const Reading> readings,
                                  const IdentifyModel& model) {
  if (readings.empty()) return refuse("no-readings", "readings", "none", "at least one reading");
  if (auto fine =
          checked(families).and_then([&] { return checked(readings); }).and_then([&] { return checked(model); });
      !fine)
    return tl::make_unexpected(fine.error());
  const Weighing weighing = weigh(families, readings, model);
  Identification answer;
  answer.none = weighing.none;
  answer.noneLnEvidence = weighing.unnamed.lnEvidence;
  answer.suspects.resize(families.size());
  for (std::size_t f = 0; f < families.size(); ++f) {
    const Weighed& weighed = weighing.families[f];
    const double share =
        std::sqrt(model.commonShare) * partSpread(families[f].tolerance.value_or(model.assumedTolerance));
    answer.suspects[f] = {f, weighing.probability[f], weighed.lnEvidence, share * weighed.normal.firstMean(),
                          weighed.answered};
  }
  std::ranges::stable_sort(answer.suspects, std::ranges::greater{}, &Suspect::probability);
  answer.findings.push_back(verdict(answer, families, readings));
  addRemarks(answer, families, readings, model);
  return answer;
}

Expected<Finding> againstClaim(const Identification& answer, std::span<const FamilyCurve> families,
                               std::size_t claimed) {
  const auto own = std::ranges::find(answer.suspects, claimed, &Suspect::family);
  if (claimed >= families.size() || own == answer.suspects.end() || answer.suspects.size() != families.size())
    return refuse("claim-unknown", "family", fmt::format("family {}", claimed), "a family that was weighed");
  const std::string& name = families[claimed].name;
  Finding finding{"claim-agrees", Severity::note,
                  fmt::format("The readings agree with {}, which the part claims.", name),
                  fmt::format("{} for {}", percent(own->probability), name), "your readings"};
  if (own->probability >= 0.5) return finding;
  if (own->probability >= kWorthNaming) {
    finding.code = "claim-open";
    finding.sentence =
        fmt::format("Whether this is {}, which the part claims, is still open: read it once more.", name);
    return finding;
  }
  const Suspect& first = answer.suspects.front();
  const bool none = answer.none > first.probability;
  finding.code = "claim-disagrees";
  finding.severity = Severity::warning;
  finding.sentence = fmt::format("The part claims {} but reads as {}: a part number is not a curve.", name,
                                 none ? std::string("none of the families here") : families[first.family].name);
  finding.evidence += fmt::format(", {} for that", percent(none ? answer.none : first.probability));
  return finding;
}

Expected<QuickCheck> quickCheck(std::span<const FamilyCurve> families, const Reading& room, double assumedTolerance,
                                const DisplayUnits& units) {
  IdentifyModel model;
  model.assumedTolerance = assumedTolerance;
  if (auto fine = checked(families).and_then([&] { return checked(std::span(&room, 1)); }).and_then([&] {
        return checked(model);
      });
      !fine)
    return tl::make_unexpected(fine.error());
  QuickCheck answer;
  std::vector<double> off(families.size());  // in units of what a good part may be off
  for (std::size_t f = 0; f < families.size(); ++f) {
    const curve::Curve& curve = families[f].curve;
    const auto knowledge = curve.knowledge(room.at);
    if (!knowledge) {
      answer.silent.push_back(f);
      continue;
    }
    const double bath = curve.lnOhmsSlope(inKelvin(room.at)) * inKelvin(room.u);
    const double allowed =
        std::log1p(families[f].tolerance.value_or(assumedTolerance)) + 2 * std::hypot(room.uLnOhms, bath, *knowledge);
    const double deviation = std::abs(std::log(inOhms(room.ohms)) - curve.lnOhms(inKelvin(room.at)));
    off[f] = allowed > 0 ? deviation / allowed : deviation * 1e300;
    (off[f] <= 1 ? answer.remain : answer.excluded).push_back(f);
  }
  std::ranges::stable_sort(answer.remain, {}, [&](std::size_t f) { return off[f]; });
  std::ranges::stable_sort(answer.excluded, {}, [&](std::size_t f) { return off[f]; });

  answer.findings.push_back(coldFinding(answer, families, room, units));
  if (!answer.silent.empty())
    answer.findings.push_back(
        {"curve-not-reaching", Severity::note,
         fmt::format("{} curves do not reach that temperature and are neither in nor out.", answer.silent.size()), "",
         "the curves' valid spans"});
  return answer;
}

}  // namespace ohmkin::bench
