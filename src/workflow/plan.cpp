#include <fmt/format.h>
#include <workflow/judge_electrical.h>
#include <workflow/plan.h>
#include <workflow/plan_names.h>
#include <workflow/plan_parts.h>
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
  cell.shopping = partsFor(*best);
  cell.partsToBuy.push_back(best->part);
  for (std::size_t i = 1; i < cell.shopping.size(); ++i) cell.partsToBuy.push_back(wordsOf(cell.shopping[i]));
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

PlanCell refusedCell(Refusal refusal, std::size_t dash, std::size_t engine) {
  PlanCell cell;
  cell.dash = dash;
  cell.engine = engine;
  Refusal said = refusal;
  if (said.where.starts_with("--")) said.where.clear();  // an option of the terminal means nothing on paper
  cell.sentence = fmt::format("This pair was not looked at: {}.", said.sentence());
  cell.refused = std::move(refusal);
  cell.branches = 0;
  return cell;
}

/// For each dash the engine that needs least, and what to buy for it.
void choose(Plan& plan) {
  const std::size_t engines = plan.engineNames.size();
  for (std::size_t d = 0; d < plan.dashNames.size(); ++d) {
    const auto row = plan.cells.begin() + static_cast<std::ptrdiff_t>(d * engines);
    const auto best = std::min_element(row, row + static_cast<std::ptrdiff_t>(engines),
                                       [](const PlanCell& a, const PlanCell& b) { return trouble(a) < trouble(b); });
    plan.bestEngine.push_back(best->answered ? best->engine : plan.cells.size());
    addTo(plan.shopping, best->shopping);
  }
  for (const PartToBuy& part : plan.shopping)
    plan.partsToBuy.push_back(fmt::format("{} × {}", part.quantity, wordsOf(part)));
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
  for (const Question& dash : question.dashes) made.dashNames.push_back(dashName(catalogue, dash));
  for (const Question& engine : question.engines) made.engineNames.push_back(engineName(catalogue, engine));
  PairMemory memory;
  for (std::size_t d = 0; d < question.dashes.size(); ++d) {
    for (std::size_t e = 0; e < question.engines.size(); ++e) {
      auto answer = match(catalogue, joined(question.dashes[d], question.engines[e]), options, memory);
      if (!answer) {
        made.cells.push_back(refusedCell(std::move(answer.error()), d, e));
        continue;
      }
      made.cells.push_back(cellOf(*answer, d, e));
      made.cautions = std::move(answer->cautions);
    }
  }
  choose(made);
  return made;
}

bool Plan::answered() const {
  return std::any_of(cells.begin(), cells.end(), [](const PlanCell& cell) { return cell.answered; });
}

}  // namespace ohmkin::workflow
