#include <bench/boiling.h>
#include <catalog/snapshot.h>
#include <fmt/format.h>
#include <workflow/candidates.h>
#include <workflow/chain.h>
#include <workflow/deciding_look.h>
#include <workflow/gauges.h>
#include <workflow/judge_sender.h>
#include <workflow/match.h>
#include <workflow/readings.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

/// More than anyone would look through; the deciding look comes first then anyway.
constexpr std::size_t kMostBranches = 6;

const std::vector<std::string> kCautions{"Let the engine cool before you open anything; coolant under pressure scalds.",
                                         "The gauge is an aid, a trimmed one more so. Prove it on the bench or against "
                                         "a thermometer. Local codes and licensed practice come first."};

/// Where the person looks: as asked, else from the engine's thermostat on.
TemperatureSpan bandFor(const gauge::Gauge& gauge, const PortChoice& port, const Question& question,
                        std::vector<Finding>& findings) {
  if (question.band) return *question.band;
  if (!port.engine)
    findings.push_back({"thermostat-assumed", Severity::note,
                        "The engine is not known, so an 82 °C thermostat is assumed.", "no engine", "assumption"});
  const auto usual = pairing::defaultBand(gauge, port.engine ? port.engine->thermostat : kUsualThermostat);
  return usual ? *usual : gauge.dial().marked();
}

/// The gauge's side of a branch; what stands in its way becomes a finding, not a failure of the whole match.
std::optional<GaugeSide> gaugeSide(const catalog::Catalogue& catalogue, const DashChoice& dash, const PortChoice& port,
                                   const Question& question, std::vector<Finding>& findings) {
  if (!dash.gauge) return std::nullopt;
  const auto broken = [&](const Refusal& refusal) {
    findings.push_back({"gauge-unreadable", Severity::warning,
                        "This gauge cannot be computed with: " + refusal.sentence() + ".",
                        "gauge " + dash.gauge->id.text, catalog::cite(dash.gauge->source)});
    return std::nullopt;
  };
  const auto family = catalog::family(catalogue, dash.gauge->family);
  if (!family) return std::nullopt;
  if (family->curves.empty() && !family->coldHot) {
    findings.push_back({"gauge-wants-a-pulse", Severity::warning,
                        "This gauge belongs to a pair whose sender is a heated contact that pulses: only such a "
                        "contact works it, and an ohmmeter cannot prove it.",
                        "gauge " + dash.gauge->id.text, catalog::cite(dash.gauge->source)});
    GaugeSide side;
    side.pulsing = true;
    side.family = family->id;
    side.familyName = family->name;
    side.source = catalog::cite(dash.gauge->source);
    return side;
  }
  const auto curve = curveOf(*family);
  if (!curve) return broken(curve.error());
  auto gauge = gaugeOf(*dash.gauge, curve->curve);
  if (!gauge) return broken(gauge.error());

  GaugeSide side;
  side.id = dash.gauge->id.text;
  side.gauge = std::make_shared<const gauge::Gauge>(std::move(*gauge));
  side.family = family->id;
  side.familyName = family->name;
  side.temperaturesStated = curve->temperaturesStated;
  side.gaugeTolerance = dash.gauge->tolerance.value_or(kAssumedGaugeTolerance);
  side.source = catalog::cite(dash.gauge->source);
  if (port.engine) {
    const auto boils = bench::boilingUnderCap(port.engine->cap);
    if (boils) side.boiling = *boils;
  }
  side.band = bandFor(*side.gauge, port, question, findings);
  if (!dash.gauge->tolerance)
    findings.push_back({"gauge-tolerance-assumed", Severity::note,
                        "The gauge's own tolerance is not stated; a good one may be 5 to 10 % out, and that comes on "
                        "top for every sender.",
                        "gauge " + dash.gauge->id.text, kCommonPractice});
  return side;
}

Branch makeBranch(const catalog::Catalogue& catalogue, const Dash& dash, const DashChoice& dashChoice,
                  const PortChoice& port, const Question& question, const MatchOptions& options, PairMemory& memory) {
  Branch branch;
  branch.weight = port.weight / static_cast<double>(dash.choices.size());
  const auto side = gaugeSide(catalogue, dashChoice, port, question, branch.findings);
  if (side) {
    branch.gauge = side->gauge;
    branch.gaugeName = dashChoice.gauge->name;
    branch.familyName = side->familyName;
    branch.band = side->band;
  }
  if (dashChoice.cluster && !dashChoice.gauge)
    branch.findings.push_back({"lamp-only", Severity::caution,
                               "This cluster has a warning lamp and no gauge: a sender has nothing to drive. Name the "
                               "gauge that will be fitted to go on.",
                               dashChoice.assumes, catalog::cite(dashChoice.cluster->source)});

  ElectricalJudge electrical(catalogue, side.value_or(GaugeSide{}), options, memory);
  SenderJudge judge(catalogue, dashChoice, port, question, electrical, options);
  branch.gaugeLink = gaugeLink(dashChoice, branch.familyName, branch.gauge.get(), options.units);
  branch.leadLink = leadLink(dashChoice, judge.wireEnd() ? judge.wireEnd()->name : "", !question.terminal.empty());
  branch.portLink = portLink(port);
  branch.engineLink = engineLink(port);
  branch.era = eraJoint(port, question);

  if (!dashChoice.cluster || dashChoice.gauge) {
    const BranchQuestion asked{catalogue, question, dash.line, dashChoice, port, options};
    rankSenders(asked, judge, electrical, branch);
  }
  if (side && side->gauge && side->boiling && *side->boiling < side->gauge->hotMark())
    branch.findings.push_back(
        {"boils-before-the-mark", Severity::warning,
         fmt::format("Plain water under this cap boils at {}, before the hot mark at {}: the needle cannot warn in "
                     "time of that.",
                     print(*side->boiling, options.units), print(side->gauge->hotMark(), options.units)),
         "pressure cap of the engine family", "IAPWS-IF97 saturation line"});
  return branch;
}

std::string branchTitle(const Dash& dash, const DashChoice& dashChoice, const EngineSide& engine,
                        const PortChoice& port) {
  std::string title;
  if (dash.choices.size() > 1) title = dashChoice.assumes;
  if (engine.choices.size() > 1) title += (title.empty() ? "" : " · ") + port.assumes;
  return title;
}

/// Each dash with each engine, the likeliest first; kMostBranches at most.
std::vector<std::pair<Branch, Origin>> branchesOf(const catalog::Catalogue& catalogue, const Dash& dash,
                                                  const EngineSide& engine, const Question& question,
                                                  const MatchOptions& options, PairMemory& memory) {
  std::vector<std::pair<Branch, Origin>> branches;
  // A vector that grows would copy all their candidates.
  branches.reserve(std::min(dash.choices.size() * engine.choices.size(), kMostBranches));
  for (std::size_t d = 0; d < dash.choices.size(); ++d) {
    for (std::size_t p = 0; p < engine.choices.size(); ++p) {
      if (branches.size() == kMostBranches) break;
      Branch branch = makeBranch(catalogue, dash, dash.choices[d], engine.choices[p], question, options, memory);
      branch.title = branchTitle(dash, dash.choices[d], engine, engine.choices[p]);
      branches.emplace_back(std::move(branch), Origin{d, p});
    }
  }
  std::stable_sort(branches.begin(), branches.end(),
                   [](const auto& a, const auto& b) { return a.first.weight > b.first.weight; });
  return branches;
}

void explainNothing(Answer& answer) {
  if (answer.answered()) return;
  answer.findings.push_back({"no-recommendation", Severity::caution,
                             "No sender of this catalogue can be recommended here; the list says why for each, and "
                             "what to look at comes first.",
                             "every branch", "the catalogue"});
}

}  // namespace

bool Answer::answered() const {
  return std::any_of(branches.begin(), branches.end(), [](const Branch& branch) {
    return std::any_of(branch.ranked.begin(), branch.ranked.end(),
                       [](const Candidate& candidate) { return candidate.recommended(); });
  });
}

Expected<Answer> match(const catalog::Catalogue& catalogue, const Question& question, const MatchOptions& options) {
  PairMemory memory;
  return match(catalogue, question, options, memory);
}

Expected<Answer> match(const catalog::Catalogue& catalogue, const Question& question, const MatchOptions& options,
                       PairMemory& memory) {
  // Every question below sees the same catalogue, whoever writes meanwhile.
  const catalog::Snapshot oneState(catalogue);
  auto dash = resolveDash(catalogue, question);
  if (!dash) return tl::make_unexpected(dash.error());
  auto engine = resolveEngine(catalogue, question, dash->line);
  if (!engine) return tl::make_unexpected(engine.error());
  if (!question.fitted.empty() && catalog::sendersNumbered(catalogue, question.fitted).empty())
    return tl::make_unexpected(unknownPart(catalogue, question.fitted));

  Answer answer;
  answer.question = question;
  answer.cautions = kCautions;
  answer.chips = dash->chips;
  answer.chips.insert(answer.chips.end(), engine->chips.begin(), engine->chips.end());
  answer.findings = dash->findings;
  answer.findings.insert(answer.findings.end(), engine->findings.begin(), engine->findings.end());

  std::stable_sort(engine->choices.begin(), engine->choices.end(),
                   [](const auto& a, const auto& b) { return a.weight > b.weight; });
  auto branches = branchesOf(catalogue, *dash, *engine, question, options, memory);
  const std::size_t possible = dash->choices.size() * engine->choices.size();
  if (possible > branches.size())
    answer.findings.push_back(
        {"more-branches", Severity::caution,
         fmt::format("{} combinations are possible; {} are shown. Say more about the dash or the casting.", possible,
                     branches.size()),
         "dash and engine not settled", "the catalogue"});

  std::vector<Origin> origins;
  answer.branches.reserve(branches.size());
  for (auto& [branch, origin] : branches) {
    answer.branches.push_back(std::move(branch));
    origins.push_back(origin);
  }
  std::vector<std::string> dashTells;
  for (const DashChoice& choice : dash->choices) dashTells.push_back(choice.assumes);
  answer.look = decidingLook(catalogue, answer, origins, dashTells, *engine);
  if (auto readings = judgeReadings(catalogue, question, options.units))
    answer.findings.push_back(std::move(*readings));
  explainNothing(answer);
  return answer;
}

Needles needlesAt(const Branch& branch, const Candidate& candidate, Temperature t, Fitted fitted) {
  Needles needles{t, {}, std::nullopt, std::nullopt};
  if (!branch.gauge) return needles;
  const gauge::Dial& dial = branch.gauge->dial();
  needles.trueNeedle = dial.onStops(dial.angleOf(t));
  if (!candidate.curve) return needles;
  const auto resistance = candidate.curve->resistance(t);
  if (!resistance) return needles;
  const bool trimmed = fitted == Fitted::withTrim && candidate.trim;
  const pairing::TrimNetwork network = trimmed ? candidate.trim->network : pairing::TrimNetwork{};
  const auto withFeed = pairing::trimmed(*branch.gauge, network);
  if (!withFeed) return needles;
  needles.shown = withFeed->indicated(network.seen(*resistance));

  // The uncertainty changes slowly: that of the nearest row serves.
  const pairing::ErrorTable* table = trimmed          ? &candidate.trim->after
                                     : candidate.wide ? candidate.wide.get()
                                                      : candidate.errors.get();
  if (table == nullptr || table->rows.empty()) return needles;
  const auto nearest = std::min_element(table->rows.begin(), table->rows.end(), [&](const auto& a, const auto& b) {
    return std::abs(inKelvin(a.trueTemperature - t)) < std::abs(inKelvin(b.trueTemperature - t));
  });
  needles.uncertainty = nearest->uncertainty.total();
  return needles;
}

}  // namespace ohmkin::workflow
