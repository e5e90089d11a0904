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

/// A line of the shopping list. Resistors are named one by one; `network` says how they are wired together.
struct PartToBuy {
  std::string part;  ///< part number; of a resistor its marked value: "510 Ω"
  std::string kind;  ///< "sender", "bushing", "pigtail", "resistor"
  std::string name;  ///< of the sender: "temperature sender"; of a resistor its place: "in parallel"
  std::optional<Ohms> resistance;
  std::optional<Watts> rating;  ///< of a resistor: this or more
  std::string series;           ///< of a resistor: the preferred values it is one of, "E24"
  std::string network;          ///< of a resistor: "(sender ∥ 510 Ω) + 12 Ω"
  int quantity = 1;
};
/// "BR-2215, temperature sender"; "bushing AD-12"; "resistor 510 Ω, 1 W or more, E24, in parallel". Without the
/// quantity.
std::string wordsOf(const PartToBuy& part);

/// One dash with one engine: an answer, or why there can be none.
struct PlanCell {
  std::size_t dash = 0;
  std::size_t engine = 0;
  bool answered = false;
  std::optional<Refusal> refused;       ///< this pair cannot be asked: a casting number nobody knows; all else is empty
  std::string part;                     ///< the sender to buy; empty where none can be recommended
  std::string sentence;                 ///< its verdict, or why there is none, or what was refused
  std::vector<std::string> partsToBuy;  ///< in words, the sender's number first: "BR-2215", "bushing AD-12", …
  std::vector<PartToBuy> shopping;      ///< the same as data
  std::optional<TemperatureDifference> worst;  ///< as it would be fitted
  pairing::Rank rank = pairing::Rank::refused;
  std::string era;           ///< "later engine, 13 years"
  std::string look;          ///< the one observation that would settle it; empty: none needed
  std::size_t branches = 1;  ///< answers possible with what is known
};

struct Plan {
  PlanQuestion question;
  std::vector<std::string> dashNames;    ///< "1968 Ridgeway utility, gauge package"
  std::vector<std::string> engineNames;  ///< "Ridgeway inline six, 3.9 l, casting 30418"
  std::vector<PlanCell> cells;           ///< dash by dash
  std::vector<std::string> partsToBuy;   ///< of the best engine for each dash, each once with its quantity, in words
  std::vector<PartToBuy> shopping;       ///< the same as data
  /// For each dash: index of the engine that needs least; cells.size() where none.
  std::vector<std::size_t> bestEngine;
  std::vector<std::string> cautions;
  [[nodiscard]] bool answered() const;  ///< some cell has a sender to buy
  [[nodiscard]] const PlanCell& at(std::size_t dash, std::size_t engine) const {
    return cells[dash * engineNames.size() + engine];
  }
};

/// Refuses an empty side and more than 20 × 50. What match refuses is refused in its cell; all others are answered.
Expected<Plan> plan(const catalog::Catalogue& catalogue, const PlanQuestion& question,
                    const MatchOptions& options = {});

/// The question as a document that can be saved and reopened ("ohmkin.plan", version 1).
std::string planDocument(const PlanQuestion& question);
/// Refuses what is not such a document, saying where.
Expected<PlanQuestion> readPlanDocument(std::string_view text, std::string_view where);

}  // namespace ohmkin::workflow
