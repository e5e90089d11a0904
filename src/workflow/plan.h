#pragma once
#include <workflow/match.h>
#include <string>
#include <vector>

/// A swap plan: dashes against engines, side by side. Every cell is the match use case's own answer; no rule lives
/// here.
namespace ohmkin::workflow {

/// One dash as asked: the vehicle's half of a question. And one engine: the other half.
struct PlanQuestion {
  std::vector<Question> dashes;   ///< line, year, built, cluster, gauge, terminal are looked at
  std::vector<Question> engines;  ///< engine, casting, castingDate, engineBuilt, port are looked at
};

/// One dash with one engine.
struct PlanCell {
  std::size_t dash = 0;
  std::size_t engine = 0;
  bool answered = false;
  std::string part;                            ///< the sender to buy; empty where none can be recommended
  std::string sentence;                        ///< its verdict, or why there is none
  std::vector<std::string> partsToBuy;         ///< sender, bushings, pigtails, resistors
  std::optional<TemperatureDifference> worst;  ///< as it would be fitted
  pairing::Rank rank = pairing::Rank::refused;
  std::string era;           ///< "later engine, 13 years"
  std::string look;          ///< the one observation that would settle it; empty: none needed
  std::size_t branches = 1;  ///< answers possible with what is known
};

struct Plan {
  PlanQuestion question;
  std::vector<std::string> dashNames;
  std::vector<std::string> engineNames;
  std::vector<PlanCell> cells;          ///< dash by dash
  std::vector<std::string> partsToBuy;  ///< of the best engine for each dash, each once
  std::vector<std::size_t>
      bestEngine;  ///< for each dash: index of the engine that needs least; cells.size() where none
  std::vector<std::string> cautions;
  [[nodiscard]] const PlanCell& at(std::size_t dash, std::size_t engine) const {
    return cells[dash * engineNames.size() + engine];
  }
};

/// Refuses an empty side, more than 20 × 50, and whatever match refuses, naming the dash or engine.
Expected<Plan> plan(const catalog::Catalogue& catalogue, const PlanQuestion& question,
                    const MatchOptions& options = {});

/// The question as a document that can be saved and reopened ("ohmkin.plan", version 1).
std::string planDocument(const PlanQuestion& question);
/// Refuses what is not such a document, saying where.
Expected<PlanQuestion> readPlanDocument(std::string_view text, std::string_view where);

}  // namespace ohmkin::workflow
