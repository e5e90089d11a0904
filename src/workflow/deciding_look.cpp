#include <fmt/format.h>
#include <workflow/deciding_look.h>
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <set>

namespace ohmkin::workflow {
namespace {

using Weights = std::map<std::string, double>;

double bits(const Weights& weights) {
  double total = 0, entropy = 0;
  for (const auto& [part, weight] : weights) total += weight;
  for (const auto& [part, weight] : weights) {
    if (weight > 0) entropy -= weight / total * std::log2(weight / total);
  }
  return entropy;
}

std::string bestPart(const Branch& branch) {
  for (const Candidate& candidate : branch.ranked) {
    if (candidate.recommended()) return candidate.part;
  }
  return {};
}

std::string partName(const std::string& part) { return part.empty() ? "nothing that fits" : part; }

/// How much knowing which group a branch belongs to tells about the best part.
double gainOf(const Answer& answer, const std::function<std::string(std::size_t)>& group) {
  Weights all;
  std::map<std::string, Weights> grouped;
  std::map<std::string, double> weightOf;
  double total = 0;
  for (std::size_t i = 0; i < answer.branches.size(); ++i) {
    const Branch& branch = answer.branches[i];
    all[bestPart(branch)] += branch.weight;
    grouped[group(i)][bestPart(branch)] += branch.weight;
    weightOf[group(i)] += branch.weight;
    total += branch.weight;
  }
  double after = 0;
  for (const auto& [name, weights] : grouped) after += weightOf[name] / total * bits(weights);
  return bits(all) - after;
}

/// "With A it is X; with B it is Y."
std::string becauseOf(const Answer& answer, const std::function<std::string(std::size_t)>& group) {
  std::string text;
  std::set<std::string> said;
  for (std::size_t i = 0; i < answer.branches.size() && said.size() < 3; ++i) {
    if (!said.insert(group(i)).second) continue;
    text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", group(i), partName(bestPart(answer.branches[i])));
  }
  return text + ".";
}

/// Best part for each terminal style, and how many of the senders that would do have it: what the trade fitted is what
/// the wire may be.
struct StylesLeft {
  std::vector<std::pair<std::string, std::string>> bestOf;  // terminal, best part; best first
  std::map<std::string, double> count;
};

StylesLeft stylesLeft(const Branch& branch) {
  StylesLeft left;
  for (const Candidate& candidate : branch.ranked) {
    if (candidate.kind != "variable sender" || candidate.screw.state == JointState::cut || !candidate.verdict) continue;
    if (pairing::rankOf(candidate.verdict->electrical, false, false) >= pairing::Rank::undecided) continue;
    if (left.count[candidate.terminal]++ == 0) left.bestOf.emplace_back(candidate.terminal, candidate.part);
  }
  return left;
}

/// The wire end: which senders it would leave, over all branches. Where it follows from an original cluster the look
/// only confirms.
std::optional<DecidingLook> terminalLook(const Answer& answer) {
  DecidingLook look;
  look.what = "Which terminal is on the wire?";
  look.field = "terminal";
  for (const Branch& branch : answer.branches) {
    if (branch.leadLink.basis == Basis::seen) return std::nullopt;
    const StylesLeft left = stylesLeft(branch);
    if (left.bestOf.size() < 2) continue;
    Weights parts;
    for (const auto& [terminal, part] : left.bestOf) parts[part] += left.count.at(terminal);
    constexpr double kConfirms = 0.25;  // a judgement: three wires in four are as they left the works
    look.gain += branch.weight * bits(parts) * (branch.leadLink.basis == Basis::inferred ? kConfirms : 1);
    if (look.because.empty())
      look.because = fmt::format("A {} keeps this order; a {} makes it {}.", left.bestOf[0].first, left.bestOf[1].first,
                                 left.bestOf[1].second);
  }
  return look.because.empty() ? std::nullopt : std::optional(look);
}

/// The sender in hand: its cold ohms tell its family, and so whether it may stay. Families are as likely as they have
/// senders here.
std::optional<DecidingLook> coldOhmsLook(const Answer& answer) {
  if (!answer.question.readings.empty() || answer.question.fitted.empty()) return std::nullopt;
  for (const Branch& branch : answer.branches) {
    const auto fitted =
        std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.fittedNowSaid; });
    if (fitted == branch.ranked.end() || fitted->rank != pairing::Rank::undecided) continue;
    return DecidingLook{"What does the sender in the head read, cold and hot?",
                        "Its ohms at two known temperatures tell whether it may stay.", "reading", branch.weight};
  }
  return std::nullopt;
}

}  // namespace

std::optional<DecidingLook> decidingLook([[maybe_unused]] const catalog::Catalogue& catalogue, const Answer& answer,
                                         const std::vector<Origin>& origins, const std::vector<std::string>& dashTells,
                                         const EngineSide& engine) {
  std::vector<DecidingLook> looks;
  const auto dashOf = [&](std::size_t i) { return dashTells.empty() ? std::string() : dashTells[origins[i].dash]; };
  const auto portOf = [&](std::size_t i) { return engine.choices[origins[i].port].assumes; };
  if (const double gain = gainOf(answer, dashOf); gain > 1e-9)
    looks.push_back({"Which of these clusters is in the dash?", becauseOf(answer, dashOf), "cluster", gain});
  if (const double gain = gainOf(answer, portOf); gain > 1e-9)
    looks.push_back({engine.castingUnknown ? "What is the casting number of the head?" : "Which port takes the sender?",
                     becauseOf(answer, portOf), engine.castingUnknown ? "casting" : "port-location", gain});
  if (!answer.branches.empty()) {
    if (auto look = terminalLook(answer)) looks.push_back(std::move(*look));
    if (auto look = coldOhmsLook(answer)) looks.push_back(std::move(*look));
    const Branch& first = answer.branches.front();
    if (!first.gauge && first.gaugeLink.headline == "not known")
      looks.push_back(
          {"Which gauge is in the dash?", "Without it nothing says which resistance the needle wants.", "gauge", 2});
    else if (first.portLink.basis == Basis::notSeen)
      looks.push_back({"What is the casting number, or the thread of the port?",
                       "Without it nothing says what screws in.", "casting", 1.5});
  }
  const auto best =
      std::max_element(looks.begin(), looks.end(), [](const auto& a, const auto& b) { return a.gain < b.gain; });
  return best == looks.end() ? std::nullopt : std::optional(*best);
}

}  // namespace ohmkin::workflow
