#include <pairing/failures.h>

#include <fmt/format.h>
#include <pairing/hot_mark.h>
#include <quantity/capitalised.h>
#include <quantity/print.h>
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace ohmkin::pairing {
namespace {

constexpr std::size_t kLooks = 13;      // temperatures over the band
constexpr double kAtTheColdMark = 0.1;  // of the marked span: a needle there with the engine warm is seen to be dead
constexpr double kStandsStill = 2;      // K over the whole band
const Ohms kOpen = ohms(std::numeric_limits<double>::infinity());

using SeenBy = std::function<Ohms(Ohms)>;

struct Case {
  std::string part;
  FailureMode mode;
  SeenBy seen;
  const gauge::Gauge* gauge;
};

std::string_view modeInWords(FailureMode mode) {
  switch (mode) {
    case FailureMode::opens:
      return "opens";
    case FailureMode::shorts:
      return "shorts";
    case FailureMode::driftsUp:
      return "drifts up by 20 %";
    case FailureMode::driftsDown:
      return "drifts down by 20 %";
    case FailureMode::leadOpens:
      return "is open";
    case FailureMode::leadGrounded:
      return "is grounded";
  }
  return {};
}

Ohms beside(Ohms a, Ohms b) { return TrimNetwork::parallel(b).seen(a); }

void addSeries(std::vector<Case>& cases, const gauge::Gauge& gauge, const TrimNetwork& network) {
  const Ohms s = network.seriesOhms();
  const Ohms p = network.parallelOhms();
  const std::string part = "series resistor " + printNominal(s);
  const auto with = [topology = network.topology(), p](Ohms series, Ohms r) {
    if (topology == Topology::parallelThenSeries) return beside(r, p) + series;
    if (topology == Topology::seriesThenParallel) return beside(r + series, p);
    return r + series;
  };
  for (const auto& [mode, ohmsThen] : {std::pair{FailureMode::opens, kOpen},
                                       {FailureMode::shorts, ohms(0)},
                                       {FailureMode::driftsUp, s * (1 + kDrift)},
                                       {FailureMode::driftsDown, s * (1 - kDrift)}})
    cases.push_back({part, mode, [with, then = ohmsThen](Ohms r) { return with(then, r); }, &gauge});
}

void addParallel(std::vector<Case>& cases, const gauge::Gauge& gauge, const TrimNetwork& network) {
  const Ohms s = network.seriesOhms();
  const Ohms p = network.parallelOhms();
  const std::string part = "parallel resistor " + printNominal(p);
  const auto with = [topology = network.topology(), s](Ohms parallel, Ohms r) {
    if (topology == Topology::parallelThenSeries) return beside(r, parallel) + s;
    if (topology == Topology::seriesThenParallel) return beside(r + s, parallel);
    return beside(r, parallel);
  };
  for (const auto& [mode, ohmsThen] : {std::pair{FailureMode::opens, kOpen},
                                       {FailureMode::shorts, ohms(0)},
                                       {FailureMode::driftsUp, p * (1 + kDrift)},
                                       {FailureMode::driftsDown, p * (1 - kDrift)}})
    cases.push_back({part, mode, [with, then = ohmsThen](Ohms r) { return with(then, r); }, &gauge});
}

/// The gauges a failed feed resistor leaves, and last the one with it whole; they have to outlive the cases.
std::vector<gauge::Gauge> gaugesAfterFeedFailure(const gauge::Gauge& gauge, Ohms x) {
  constexpr double kShort = 1e-3;  // Ω, for a solder bridge
  std::vector<gauge::Gauge> out{gauge};
  for (const Ohms& then : {ohms(kShort), x * (1 + kDrift), x * (1 - kDrift), x})
    out.push_back(trimmed(gauge, TrimNetwork::feedToSender(then)).value_or(gauge));
  return out;
}

std::string shownInWords(const gauge::Reading& reading, const DisplayUnits& units) {
  if (reading.where == gauge::Where::belowTheMarks) return "below the first mark";
  if (reading.where == gauge::Where::pastTheMarks) return "past hot";
  return print(reading.shown, units);
}

std::string consequence(const Failure& f, double travel, const Limits& limits, const DisplayUnits& units) {
  const bool readsHigh = f.high > limits.high;
  if (f.noticed && f.atBandLow.where == gauge::Where::pastTheMarks) return "the needle goes past hot and is noticed";
  if (f.noticed) return "the needle lies at the cold end with the engine warm and is noticed";
  if (std::abs(travel) < kStandsStill)
    return fmt::format("the needle stands {} whatever the coolant does{}",
                       f.atHotMark.where == gauge::Where::onTheMarks ? "at " + shownInWords(f.atHotMark, units)
                                                                     : shownInWords(f.atHotMark, units),
                       f.readsLow ? ", and nobody notices" : "");
  if (f.readsLow)
    return fmt::format(
        "the needle still moves and {}; nobody notices",
        f.low < -limits.low ? "reads up to " + printAmount(-f.low, units) + " low" : "reaches the hot mark late");
  if (readsHigh)
    return fmt::format("the needle still moves and reads up to {} high, the safe way", printAmount(f.high, units));
  return "the needle stays within the limits";
}

Severity severityOf(const Failure& f, const Limits& limits) {
  if (f.readsLow) return f.noticed ? Severity::caution : Severity::warning;
  return f.noticed || f.high > limits.high ? Severity::caution : Severity::note;
}

struct Look {
  const curve::Curve* sender;
  TemperatureSpan covered;
  double matchedHot;
  const TrimOptions* options;
};

Failure lookedAt(const Case& failed, const Look& look) {
  const auto reading = [&](double k) {
    return failed.gauge->indicated(failed.seen(ohms(std::exp(look.sender->lnOhms(k)))), look.options->pair.conditions);
  };
  Failure out;
  out.part = failed.part;
  out.mode = failed.mode;
  out.low = kelvins(std::numeric_limits<double>::infinity());
  out.high = -out.low;
  for (const double k : evenly(look.covered, kLooks)) {
    const TemperatureDifference error = reading(k).shown - kelvin(k);
    out.low = std::min(out.low, error);
    out.high = std::max(out.high, error);
  }
  const Limits& limits = look.options->limits;
  const double hot = std::min(look.matchedHot, inKelvin(look.sender->valid().high));
  const double latest = std::min(look.matchedHot + inKelvin(limits.late), inKelvin(look.sender->valid().high));
  const double low = inKelvin(look.covered.low);
  const double middle = (low + inKelvin(look.covered.high)) / 2;
  out.atHotMark = reading(hot);
  out.atBandLow = reading(low);
  out.readsLow = out.low < -limits.low ||
                 inKelvin(reading(latest).shown) <
                     inKelvin(failed.gauge->hotMark()) - (look.matchedHot + inKelvin(limits.late) - latest);
  const TemperatureSpan marked = failed.gauge->dial().marked();
  const Temperature dead = marked.low + kAtTheColdMark * (marked.high - marked.low);
  const auto seen = [&](const gauge::Reading& r) { return r.where == gauge::Where::pastTheMarks || r.shown < dead; };
  out.noticed = seen(out.atBandLow) && seen(reading(middle));
  out.severity = severityOf(out, limits);
  const double travel = inKelvin(out.atHotMark.shown) - inKelvin(out.atBandLow.shown);
  out.sentence = fmt::format("{} {}: {}.", capitalised("the " + failed.part), modeInWords(failed.mode),
                             consequence(out, travel, limits, look.options->units));
  return out;
}

}  // namespace

bool forbidsStaying(const Failure& failure) {
  if (!failure.readsLow || failure.noticed) return false;
  return failure.mode == FailureMode::opens || failure.mode == FailureMode::shorts ||
         failure.mode == FailureMode::leadOpens;
}

std::vector<Failure> failuresOf(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                                TemperatureSpan covered, const TrimOptions& options) {
  std::vector<Case> cases;
  if (network.hasSeries()) addSeries(cases, gauge, network);
  if (network.hasParallel()) addParallel(cases, gauge, network);
  std::vector<gauge::Gauge> afterFeed;
  const gauge::Gauge* whole = &gauge;
  const SeenBy asItIs = [network](Ohms r) { return network.seen(r); };
  if (network.topology() == Topology::feedToSender) {
    afterFeed = gaugesAfterFeedFailure(gauge, network.feedOhms());
    whole = &afterFeed.back();
    const std::string part = "feed resistor " + printNominal(network.feedOhms());
    std::size_t i = 0;
    for (const FailureMode mode :
         {FailureMode::opens, FailureMode::shorts, FailureMode::driftsUp, FailureMode::driftsDown})
      cases.push_back({part, mode, asItIs, &afterFeed[i++]});
  }
  cases.push_back({"lead", FailureMode::leadOpens, [network](Ohms) { return network.seen(kOpen); }, whole});
  cases.push_back({"lead", FailureMode::leadGrounded, [network](Ohms) { return network.seen(ohms(0)); }, whole});

  const Look look{&sender, covered, matchedHotKelvin(gauge, options.pair.conditions), &options};
  std::vector<Failure> out;
  out.reserve(cases.size());
  for (const Case& each : cases) out.push_back(lookedAt(each, look));
  return out;
}

}  // namespace ohmkin::pairing
