#include <circuit/measures.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::circuit {
namespace {

constexpr double kStill = 0.06;       // of the dial: less is not seen as moving
constexpr double kFewestOhms = 0.01;  // below this a meter shows nothing
constexpr double kMostOhms = 1e8;     // above this it shows nothing either
constexpr double kSeenLow = 0.97;     // a low level is seen that often

double logOfOhms(double ohms) { return std::log(std::clamp(ohms, kFewestOhms, kMostOhms)); }

/// A needle that nothing turns and that stays where it was: as often in its right place as at the cold end.
std::vector<Shown::Value> places(const GaugeCircuit& circuit, const Needle& needle, double right) {
  if (needle.torque || !circuit.needleStays()) return {{needle.place, 1}};
  return {{right, 0.5}, {0, 0.5}};
}

bool waits(const GaugeCircuit& circuit, const Needle& needle) { return !needle.torque && circuit.needleStays(); }

/// Where the needle would be right: the engine's true temperature counts, unless a resistor stands in for the sender.
double rightPlace(const GaugeCircuit& circuit, const TradeTest& test, const Condition& condition) {
  const bool standsIn = std::any_of(test.before.begin(), test.before.end(),
                                    [](const Step& s) { return s.part == Part::probe || s.part == Part::box; });
  if (standsIn) return test.right;
  return test.right + circuit.placeOf(kelvin(condition.coolantKelvin)) - circuit.placeOf(circuit.facts().running);
}

Expected<Shown> standing(Moments& moments, const TradeTest& test) {
  const GaugeCircuit& circuit = moments.circuit();
  const auto first = moments.at(test, test.before);
  if (!first) return tl::make_unexpected(first.error());
  Needle needle = test.measure == Measure::other ? circuit.otherNeedle((*first)->solution)
                                                 : circuit.needle((*first)->condition, (*first)->solution);
  if (!test.after.empty()) {
    const auto second = moments.at(test, test.after);
    if (!second) return tl::make_unexpected(second.error());
    const Needle other = circuit.needle((*second)->condition, (*second)->solution);
    needle.place = (needle.place + other.place) / 2;
    needle.torque = needle.torque || other.torque;
  }
  const bool whatever = test.measure == Measure::rest || test.measure == Measure::turnedOver;
  const double right = whatever                          ? circuit.placeOf(circuit.facts().running)
                       : test.measure == Measure::needle ? rightPlace(circuit, test, moments.condition())
                                                         : test.right;
  Shown shown{places(circuit, needle, right), 0};
  if (!whatever)
    for (Shown::Value& v : shown.values) v.value -= right;
  return shown;
}

Expected<Shown> moving(Moments& moments, const TradeTest& test) {
  const GaugeCircuit& circuit = moments.circuit();
  const auto first = moments.at(test, test.before);
  if (!first) return tl::make_unexpected(first.error());
  const auto second = moments.at(test, test.after);
  if (!second) return tl::make_unexpected(second.error());
  const Needle from = circuit.needle((*first)->condition, (*first)->solution);
  const Needle to = circuit.needle((*second)->condition, (*second)->solution);
  if (test.measure == Measure::shift) {
    const bool waited = waits(circuit, from) || waits(circuit, to);
    return Shown{{{waited ? 0 : to.place - from.place, 1}}, 0};
  }
  if (waits(circuit, to)) return Shown{{}, 1};
  Shown shown;
  for (const Shown::Value& start : places(circuit, from, circuit.placeOf(circuit.facts().running))) {
    const double turned = std::abs(to.place - start.value);
    const double still = 0.5 * std::erfc((turned - kStill) / (test.noise * std::sqrt(2.0)));
    shown.last += start.weight * still;
    shown.values.push_back({to.place, start.weight * (1 - still)});
  }
  return shown;
}

Expected<Shown> electrical(Moments& moments, const TradeTest& test) {
  const GaugeCircuit& circuit = moments.circuit();
  const Condition& condition = moments.condition();
  const auto from = static_cast<Node>(test.from);
  const auto to = static_cast<Node>(test.to);
  if (test.measure == Measure::ohms || test.measure == Measure::ratio) {
    const auto ohms = ohmsBetween(moments.networkAt(test.before), from, to);
    if (!ohms) return tl::make_unexpected(ohms.error());
    double right = test.measure == Measure::ratio ? test.right : 0;
    if (test.measure == Measure::ratio && test.from == Post::senderTerminal)
      right = std::log(circuit.senderOhms(kelvin(condition.coolantKelvin)));
    return Shown{{{logOfOhms(*ohms) - right, 1}}, 0};
  }
  const auto met = moments.at(test, test.before);
  if (!met) return tl::make_unexpected(met.error());
  const double volts = (*met)->solution.between(from, to).value_or(0);
  if (test.measure == Measure::share) return Shown{{{volts / test.right, 1}}, 0};
  const bool pulses = test.measure == Measure::feed && circuit.regulated() && condition.regulatorHolds &&
                      (*met)->solution.regulates(0) && volts > test.limits.front();
  return pulses ? Shown{{}, 1} : Shown{{{volts, 1}}, 0};
}

Shown looked(const GaugeCircuit& circuit, const TradeTest& test, const Condition& condition) {
  const auto ohms = [&](Part part) { return condition.ohms[static_cast<std::size_t>(part)]; };
  if (test.measure == Measure::turned) return {{{condition.reversed ? 1.0 : 0.0, 1}}, 0};
  if (test.measure == Measure::board)
    return {{{logOfOhms(std::max({ohms(Part::feedTrack), ohms(Part::senderTrack), ohms(Part::groundTrack)})), 1}}, 0};
  if (test.measure == Measure::coolant) {
    const double low = condition.levelLow ? kSeenLow : 0;
    return {{{condition.coolantKelvin - inKelvin(circuit.facts().running), 1 - low}}, low};
  }
  const double curve = circuit.senderOhms(circuit.facts().running);
  return {{{logOfOhms(curve * condition.senderFactor + ohms(Part::sender)) - std::log(curve), 1}}, 0};
}

}  // namespace

bool addsOutcome(Measure measure) {
  return measure == Measure::moves || measure == Measure::feed || measure == Measure::coolant;
}

bool byLogarithm(Measure measure) { return measure == Measure::ohms || measure == Measure::board; }

Network Moments::networkAt(const std::vector<Step>& steps) const {
  Condition changed = condition_;
  for (const Step& step : steps) changed.ohms[static_cast<std::size_t>(step.part)] = step.ohms;
  return circuit_.network(changed);
}

Expected<const Moments::Moment*> Moments::at(const TradeTest& test, const std::vector<Step>& steps) {
  const bool reversed = test.measure == Measure::turnedOver;
  for (const Moment& m : solved_)
    if (m.bench == test.bench && m.reversed == reversed && m.steps == steps) return &m;
  Condition changed = condition_;
  for (const Step& step : steps) changed.ohms[static_cast<std::size_t>(step.part)] = step.ohms;
  if (test.bench) {
    changed.regulatorHolds = false;
    changed.supply = circuit_.benchVolts();
  }
  if (reversed) changed.reversed = !changed.reversed;
  auto solution = solve(circuit_.network(changed));
  if (!solution) return tl::make_unexpected(solution.error());
  return &solved_.emplace_back(Moment{steps, test.bench, reversed, changed, std::move(*solution)});
}

Expected<Shown> shown(Moments& moments, const TradeTest& test) {
  switch (test.measure) {
    case Measure::needle:
    case Measure::rest:
    case Measure::turnedOver:
    case Measure::other:
      return standing(moments, test);
    case Measure::moves:
    case Measure::shift:
      return moving(moments, test);
    case Measure::volts:
    case Measure::share:
    case Measure::feed:
    case Measure::ohms:
    case Measure::ratio:
      return electrical(moments, test);
    case Measure::board:
    case Measure::turned:
    case Measure::coolant:
    case Measure::bath:
      return looked(moments.circuit(), test, moments.condition());
  }
  return Shown{};
}

}  // namespace ohmkin::circuit
