#include <pairing/hot_mark.h>

#include <pairing/budget.h>
#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <optional>

namespace ohmkin::pairing {
namespace {

/// Gauge, network and curve read backwards; none where one of them does not go that way.
std::optional<double> readBackwards(const Pair& pair, double mark) {
  if (!pair.standard()) return std::nullopt;
  const auto seen = pair.gauge().ohmsAt(kelvin(mark));
  const auto sender = seen ? pair.trim().senderBehind(*seen) : std::nullopt;
  if (!sender) return std::nullopt;
  return pair.sender().kelvinAt(std::log(inOhms(*sender)));
}

/// Where shown(T) = mark, given that it lies between.
double crossing(const Pair& pair, double mark, double low, double high) {
  if (const auto at = readBackwards(pair, mark); at && low <= *at && *at <= high) return *at;
  const auto below = [&](double t) { return pair.shown(t) - mark; };
  const double atLow = below(low);
  const double atHigh = below(high);
  if (atLow == 0) return low;
  if (atHigh == 0) return high;
  std::uintmax_t most = 100;
  const auto found = boost::math::tools::toms748_solve(below, low, high, atLow, atHigh,
                                                       boost::math::tools::eps_tolerance<double>(50), most);
  return (found.first + found.second) / 2;
}

HotSign signOf(double late, double known) {
  if (std::abs(late) <= kOnTime && known <= kOnTime) return HotSign::onTime;
  if (late - known > 0) return HotSign::late;
  if (late + known < 0) return HotSign::early;
  return HotSign::notSettled;
}

HotAnswer reached(const Pair& pair, const PairOptions& options, double at, double matched) {
  const Budget budget = budgetAt(pair, at, options);
  const double gain = std::abs(pair.gain(at));
  double curves = budget.curves / gain;
  if (!pair.original().readByFamily() && !options.sameFamily) {
    const curve::Curve& family = pair.original().family();
    curves = std::hypot(curves, knowledgeNear(family, matched) / std::abs(family.lnOhmsSlope(matched)));
  }
  const Uncertainty known{kelvins(2 * std::hypot(curves, budget.resistors / gain)),
                          kelvins(2 * budget.senderTolerance / gain)};
  const Temperature t = kelvin(at);
  const double late = at - matched;
  return {Reaches{t, kelvins(late), known, !pair.sender().established().holds(t)},
          signOf(late, inKelvin(known.mismatch))};
}

/// The needle does not get to the mark on the curve: how sure is that where the curve ends?
bool surelyShort(const Pair& pair, const PairOptions& options, double at, double mark) {
  return std::abs(pair.shown(at) - mark) > 2 * budgetAt(pair, at, options).mismatch();
}

/// The sender's curve continued for `reach` past both established ends, or as far as it goes one way.
std::optional<curve::Curve> continued(const curve::Curve& sender, double reach) {
  for (const double part : {1.0, 0.6, 0.3}) {
    const double lowest = std::max(inKelvin(sender.established().low) - part * reach, 1.0);
    const auto wider = sender.extendedTo({kelvin(lowest), sender.established().high + kelvins(part * reach)});
    if (wider) return *wider;
  }
  return std::nullopt;
}

HotAnswer answerOn(const Pair& pair, const PairOptions& options, double mark, double matched) {
  const double low = inKelvin(pair.sender().valid().low);
  const double high = inKelvin(pair.sender().valid().high);
  if (pair.shown(high) < mark) {
    const bool settled = high >= matched && surelyShort(pair, options, high, mark);
    return {NeverReaches{kelvin(high), kelvins(high - matched)}, settled ? HotSign::late : HotSign::notSettled};
  }
  if (pair.shown(low) > mark) {
    const bool settled = low <= matched && surelyShort(pair, options, low, mark);
    return {PastAlready{kelvin(low), kelvins(matched - low)}, settled ? HotSign::early : HotSign::notSettled};
  }
  return reached(pair, options, crossing(pair, mark, low, high), matched);
}

}  // namespace

double matchedHotKelvin(const gauge::Gauge& gauge, const gauge::Conditions& conditions) {
  const double mark = inKelvin(gauge.hotMark());
  if (gauge.readByFamily()) return mark;
  const auto atTheMark = gauge::ohmsFor(*gauge.movement(), gauge.dial().angleOf(gauge.hotMark()), conditions);
  const auto at = atTheMark ? gauge.family().temperature(*atTheMark) : std::nullopt;
  return at ? inKelvin(*at) : mark;
}

HotAnswer hotAnswer(const Pair& pair, const PairOptions& options, bool backwards) {
  const double mark = inKelvin(pair.gauge().hotMark());
  const double matched = matchedHotKelvin(pair.original(), options.conditions);
  if (backwards) {
    const Temperature end = pair.sender().valid().high;
    return {NeverReaches{end, kelvins(inKelvin(end) - matched)}, HotSign::late};
  }
  HotAnswer answer = answerOn(pair, options, mark, matched);
  if (std::holds_alternative<Reaches>(answer.warning) || !(inKelvin(options.reach) > 0)) return answer;
  const auto wider = continued(pair.sender(), inKelvin(options.reach));
  if (!wider) return answer;
  const auto further = Pair::make(pair.original(), *wider, pair.trim(), options.conditions);
  return further ? answerOn(*further, options, mark, matched) : answer;
}

}  // namespace ohmkin::pairing
