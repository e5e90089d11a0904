#include <curve/assumed_tolerance.h>
#include <workflow/curves.h>
#include <workflow/deciding_look_possibilities.h>
#include <algorithm>
#include <cmath>
#include <map>
#include <span>

namespace ohmkin::workflow {
namespace {

constexpr const char* kVariable = "variable sender";
constexpr double kThermometer = 2.0;  // K: a counter's room temperature is known no better
const Temperature kRoom = celsius(20);

/// Something that may be one of several, and how likely.
struct Option {
  std::string name;
  double weight = 0;
};
using Options = std::vector<Option>;

Option& optionOf(Options& options, std::string_view name) {
  const auto found = std::find_if(options.begin(), options.end(), [&](const Option& o) { return o.name == name; });
  return found == options.end() ? options.emplace_back(Option{std::string(name), 0}) : *found;
}

void normalise(Options& options) {
  double total = 0;
  for (const Option& option : options) total += option.weight;
  for (Option& option : options) option.weight /= total;
}

std::string bestPart(const Branch& branch) {
  for (const Candidate& candidate : branch.ranked) {
    if (candidate.recommended()) return candidate.part;
  }
  return {};
}

/// One listed sender, or a group of those further down.
struct Weighed {
  std::size_t senders;
  std::string_view part;
  bool lot;
  std::string_view family;
  std::string_view thread;
  std::string_view terminal;
  JointState screw;
  const curve::Curve* curve;
  const pairing::Verdict* verdict;
  bool fittedNow;
};

/// Variable senders of a branch, best first.
std::vector<Weighed> weighed(const Branch& branch) {
  std::vector<Weighed> all;
  all.reserve(branch.ranked.size() + branch.unlisted.size());
  for (const Candidate& c : std::span(branch.ranked).first(branch.ranked.size() - branch.inHeadLast))
    if (c.kind == kVariable)
      all.push_back({1, c.part, !c.lot.empty(), c.family, c.thread, c.terminal, c.screw.state, c.curve.get(),
                     c.verdict.get(), c.fittedNow});
  for (const Unlisted& u : branch.unlisted)
    all.push_back({u.senders, u.best, !u.lot.empty(), u.family, u.thread, u.terminal, u.screw, u.curve.get(),
                   u.verdict.get(), u.fittedNow});
  return all;
}

bool wouldDo(const Weighed& sender) {
  return sender.screw != JointState::cut && sender.verdict != nullptr &&
         pairing::rankOf(sender.verdict->electrical, false, false) < pairing::Rank::undecided;
}

/// One thing about the senders of a branch that is open, and the best part for each way it can be. What the trade
/// fitted is what may be there: each way is as likely as it has senders.
struct Opened {
  Options options;
  std::map<std::string, std::string> bestOf;
};

template <class Takes>
Opened opened(const Branch& branch, std::string_view Weighed::*what, Takes takes) {
  Opened open;
  for (const Weighed& sender : weighed(branch)) {
    if (!takes(sender) || (sender.*what).empty()) continue;
    optionOf(open.options, sender.*what).weight += static_cast<double>(sender.senders);
    open.bestOf.emplace(sender.*what, sender.part);  // the first is the best
  }
  if (open.options.size() < 2) return {};
  normalise(open.options);
  return open;
}

/// The wire end. Where it follows from an original cluster a look only confirms, mostly.
Opened terminals(const Branch& branch) {
  if (branch.leadLink.basis == Basis::seen) return {};
  Opened open = opened(branch, &Weighed::terminal, wouldDo);
  if (open.options.empty() || branch.leadLink.basis != Basis::inferred) return open;
  for (Option& option : open.options) option.weight *= 1 - kStillOriginal;
  optionOf(open.options, branch.leadLink.detail).weight += kStillOriginal;
  open.bestOf[branch.leadLink.detail] = bestPart(branch);
  return open;
}

Opened threads(const Branch& branch) { return opened(branch, &Weighed::thread, wouldDo); }

/// No verdict without a gauge: any variable sender that joins would do for the gauge of its family.
Opened gauges(const Branch& branch) {
  return opened(branch, &Weighed::family, [](const Weighed& sender) { return sender.screw != JointState::cut; });
}

bool gaugeOpen(const Branch& branch) { return !branch.gauge && branch.gaugeLink.headline == "not known"; }

/// What may be in the head: a sender that screws in as it is. The one the engine had new is the likeliest.
struct InHand {
  Options families;
  std::map<std::string, bool> mayStay;
};

InHand inHand(const Branch& branch) {
  InHand hand;
  std::string original;
  for (const Weighed& sender : weighed(branch)) {
    if (sender.lot || sender.family.empty()) continue;
    if (sender.screw != JointState::fits || sender.verdict == nullptr || sender.curve == nullptr) continue;
    optionOf(hand.families, sender.family).weight += static_cast<double>(sender.senders);
    const pairing::Electrical says = sender.verdict->electrical;
    hand.mayStay[std::string(sender.family)] =
        says == pairing::Electrical::sameFamily || says == pairing::Electrical::withinLimits;
    if (sender.fittedNow) original = sender.family;
  }
  if (hand.families.size() < 2) return {};
  normalise(hand.families);
  if (original.empty()) return hand;
  for (Option& option : hand.families) option.weight *= 1 - kStillOriginal;
  optionOf(hand.families, original).weight += kStillOriginal;
  return hand;
}

/// The fitted part is named, and whether it may stay is not settled: even odds, until it is measured.
bool fittedUndecided(const Branch& branch) {
  const auto fitted =
      std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.fittedNowSaid; });
  return fitted != branch.ranked.end() && fitted->rank == pairing::Rank::undecided;
}

const Options& orOne(const Options& options) {
  static const Options one{{"", 1}};
  return options.empty() ? one : options;
}

/// Every way of one branch.
void spread(const Branch& branch, double weight, const Origin& origin, const Question& question,
            std::vector<Possibility>& ways) {
  const Opened gauge = gaugeOpen(branch) ? gauges(branch) : Opened{};
  const Opened thread = !gaugeOpen(branch) && branch.portLink.basis == Basis::notSeen ? threads(branch) : Opened{};
  const bool bothKnown = gauge.options.empty() && thread.options.empty();
  const Opened terminal = bothKnown ? terminals(branch) : Opened{};
  InHand hand;
  if (bothKnown && question.readings.empty()) {
    if (question.fitted.empty()) hand = inHand(branch);
    else if (fittedUndecided(branch)) hand = {{{"it suits", 0.5}, {"it does not", 0.5}}, {{"it suits", true}}};
  }
  const std::string best = bestPart(branch);
  for (const Option& g : orOne(gauge.options))
    for (const Option& s : orOne(thread.options))
      for (const Option& t : orOne(terminal.options))
        for (const Option& h : orOne(hand.families)) {
          Possibility way{
              weight * g.weight * s.weight * t.weight * h.weight, best, origin, g.name, s.name, t.name, h.name};
          if (const auto stays = hand.mayStay.find(h.name); stays != hand.mayStay.end() && stays->second)
            way.act = kKeep;
          else if (!g.name.empty()) way.act = gauge.bestOf.at(g.name);
          else if (!s.name.empty()) way.act = thread.bestOf.at(s.name);
          else if (!t.name.empty()) way.act = terminal.bestOf.at(t.name);
          ways.push_back(std::move(way));
        }
}

/// All families are compared at one temperature: the room's where every curve reaches down to it, else as near as they
/// do.
void measureCold(const Answer& answer, Unknowns& unknowns) {
  std::map<std::string, const curve::Curve*, std::less<>> curves;
  for (const Possibility& way : unknowns.ways) {
    if (way.inHand.empty()) continue;
    curves.emplace(way.inHand, nullptr);
  }
  if (curves.size() < 2) return;
  unknowns.coldAt = kRoom;
  for (const Branch& branch : answer.branches)
    for (const Weighed& sender : weighed(branch)) {
      if (sender.curve == nullptr || sender.lot) continue;
      const auto wanted = curves.find(sender.family);
      if (wanted == curves.end() || wanted->second != nullptr) continue;
      wanted->second = sender.curve;
      unknowns.coldAt = std::max(unknowns.coldAt, sender.curve->valid().low);
    }
  for (const auto& [family, curve] : curves) {
    if (curve == nullptr) return unknowns.cold.clear();
    const auto resistance = curve->resistance(unknowns.coldAt);
    if (!resistance) return unknowns.cold.clear();
    const double part = std::log1p(curve::kAssumedTolerance) / 2;  // a tolerance is taken as k = 2
    const double thermometer = kThermometer / 2 * std::abs(curve->slope(unknowns.coldAt).value_or(0));
    const double knowledge = curve->knowledge(unknowns.coldAt).value_or(0);
    unknowns.cold.push_back({family, std::log(inOhms(*resistance)), std::hypot(part, thermometer, knowledge)});
  }
}

}  // namespace

Unknowns unknownsOf(const Answer& answer, const std::vector<Origin>& origins) {
  Unknowns unknowns;
  double total = 0;
  for (const Branch& branch : answer.branches) total += branch.weight;
  for (std::size_t i = 0; i < answer.branches.size() && total > 0; ++i)
    spread(answer.branches[i], answer.branches[i].weight / total, origins[i], answer.question, unknowns.ways);
  if (answer.question.fitted.empty()) measureCold(answer, unknowns);
  return unknowns;
}

}  // namespace ohmkin::workflow
