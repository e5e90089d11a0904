#include <fmt/format.h>
#include <workflow/judge_electrical.h>
#include <workflow/plan.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kMostDashes = 20;
constexpr std::size_t kMostEngines = 50;

Question joined(const Question& dash, const Question& engine) {
  Question both = dash;
  both.engine = engine.engine;
  both.casting = engine.casting;
  both.castingDate = engine.castingDate;
  both.engineBuilt = engine.engineBuilt;
  both.portThread = engine.portThread;
  both.portLocation = engine.portLocation;
  both.fitted.clear();
  both.readings.clear();
  return both;
}

std::string dashName(const Question& dash) {
  std::string name = dash.gauge.empty() ? dash.line : "gauge " + dash.gauge;
  if (dash.year) name = fmt::format("{} {}", dash.year->value, name);
  if (!dash.cluster.empty()) name += ", " + dash.cluster;
  return name;
}

std::string engineName(const Question& engine) {
  std::string name = engine.engine;
  const auto add = [&](const std::string& words) { name += (name.empty() ? "" : ", ") + words; };
  if (!engine.casting.empty()) add("casting " + engine.casting);
  if (!engine.castingDate.empty()) add("dated " + engine.castingDate);
  if (engine.engineBuilt) add("built " + plainDate(*engine.engineBuilt));
  if (!engine.portThread.empty()) add("port " + engine.portThread);
  return name;
}

PlanCell cellOf(const Answer& answer, std::size_t dash, std::size_t engine) {
  PlanCell cell;
  cell.dash = dash;
  cell.engine = engine;
  cell.branches = answer.branches.size();
  if (answer.look) cell.look = answer.look->what;
  if (answer.branches.empty()) return cell;
  const Branch& branch = answer.branches.front();
  cell.era = branch.era.words;
  const auto best =
      std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.recommended(); });
  if (best == branch.ranked.end()) {
    cell.sentence = !branch.findings.empty() && branch.ranked.empty() ? branch.findings.front().sentence
                    : !branch.ranked.empty()                          ? branch.ranked.front().sentence
                                                                      : "Nothing is known that would fit.";
    return cell;
  }
  cell.answered = true;
  cell.part = best->part;
  cell.rank = best->rank;
  cell.sentence = best->sentence;
  cell.partsToBuy.push_back(best->part);
  cell.partsToBuy.insert(cell.partsToBuy.end(), best->partsNeeded.begin(), best->partsNeeded.end());
  const pairing::ErrorTable* fitted = best->rank == pairing::Rank::trimmedWithinLimits ? &best->trim->after
                                      : best->errors                                   ? &*best->errors
                                                                                       : nullptr;
  if (fitted != nullptr) cell.worst = fitted->worst.error;
  return cell;
}

/// Least trouble first: the rank, then how many parts, then the error.
auto trouble(const PlanCell& cell) {
  return std::tuple(!cell.answered, cell.rank, cell.partsToBuy.size(),
                    cell.worst ? std::abs(inKelvin(*cell.worst)) : 1e9);
}

Refusal named(Refusal refusal, const std::string& dash, const std::string& engine) {
  refusal.where = fmt::format("{} with {}: {}", dash, engine, refusal.where);
  return refusal;
}

}  // namespace

Expected<Plan> plan(const catalog::Catalogue& catalogue, const PlanQuestion& question, const MatchOptions& options) {
  if (question.dashes.empty())
    return refuse("plan-without-dash", "--dash", "none", "at least one dash, for example \"1968 ridgeway utility\"");
  if (question.engines.empty())
    return refuse("plan-without-engine", "--donor", "none", "at least one engine, for example \"casting 30418\"");
  if (question.dashes.size() > kMostDashes || question.engines.size() > kMostEngines)
    return refuse("plan-too-large", "",
                  fmt::format("{} dashes and {} engines", question.dashes.size(), question.engines.size()),
                  fmt::format("at most {} and {}", kMostDashes, kMostEngines));
  Plan made;
  made.question = question;
  for (const Question& dash : question.dashes) made.dashNames.push_back(dashName(dash));
  for (const Question& engine : question.engines) made.engineNames.push_back(engineName(engine));
  PairMemory memory;
  for (std::size_t d = 0; d < question.dashes.size(); ++d) {
    for (std::size_t e = 0; e < question.engines.size(); ++e) {
      const auto answer = match(catalogue, joined(question.dashes[d], question.engines[e]), options, memory);
      if (!answer) return tl::make_unexpected(named(answer.error(), made.dashNames[d], made.engineNames[e]));
      made.cells.push_back(cellOf(*answer, d, e));
      made.cautions = answer->cautions;
    }
  }
  for (std::size_t d = 0; d < question.dashes.size(); ++d) {
    const auto row = made.cells.begin() + static_cast<std::ptrdiff_t>(d * question.engines.size());
    const auto best = std::min_element(row, row + static_cast<std::ptrdiff_t>(question.engines.size()),
                                       [](const PlanCell& a, const PlanCell& b) { return trouble(a) < trouble(b); });
    made.bestEngine.push_back(best->answered ? best->engine : made.cells.size());
    for (const std::string& part : best->partsToBuy) {
      if (std::find(made.partsToBuy.begin(), made.partsToBuy.end(), part) == made.partsToBuy.end())
        made.partsToBuy.push_back(part);
    }
  }
  return made;
}

}  // namespace ohmkin::workflow
