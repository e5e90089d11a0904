#include <pairing/error_table.h>

#include <fmt/format.h>
#include <pairing/budget.h>
#include <pairing/hot_mark.h>
#include <pairing/pair.h>
#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>

namespace ohmkin::pairing {
namespace {

std::string inWords(TemperatureSpan span) {
  return fmt::format("{:.1f} to {:.1f} °C", inCelsius(span.low), inCelsius(span.high));
}

Expected<bool> soundOptions(const PairOptions& options) {
  const Inputs& in = options.inputs;
  const auto fraction = [](double f) { return f >= 0 && f < 1; };
  const auto width = [](double w) { return w >= 0 && std::isfinite(w); };
  if (options.rows < 2)
    return refuse("rows-too-few", "rows", fmt::format("{}", options.rows), "at least 2 temperatures");
  if (!fraction(in.senderTolerance.value_or(0)) || !fraction(in.resistorTolerance) || !fraction(in.gaugeTolerance))
    return refuse("tolerance-out-of-range", "tolerance",
                  fmt::format("sender {:g}, resistors {:g}, gauge {:g}", in.senderTolerance.value_or(0),
                              in.resistorTolerance, in.gaugeTolerance),
                  "parts of one, 0 or more and below 1");
  if (!width(inKelvin(in.cluster)) || !width(inKelvin(in.location)) || !width(inVolts(in.supply)) ||
      !width(inKelvin(options.reach)))
    return refuse("width-out-of-range", "uncertainty", "a negative or infinite width", "widths of 0 or more");
  return true;
}

/// The smallest of sign·error near a row, between its neighbours; the row itself where nothing is smaller.
double refined(const Pair& pair, const std::vector<ErrorRow>& rows, std::size_t i, double sign) {
  const double at = inKelvin(rows[i].trueTemperature);
  const double low = inKelvin(rows[i == 0 ? 0 : i - 1].trueTemperature);
  const double high = inKelvin(rows[std::min(i + 1, rows.size() - 1)].trueTemperature);
  constexpr int kBits = 26;  // of the place; the error is flat there, so it comes out to twice as many
  const auto found =
      boost::math::tools::brent_find_minima([&](double t) { return sign * (pair.shown(t) - t); }, low, high, kBits);
  return found.second < sign * inKelvin(rows[i].error) ? found.first : at;
}

Extreme extremeOf(const Pair& pair, const std::vector<ErrorRow>& rows, double sign, const PairOptions& options) {
  const auto smallest = std::min_element(
      rows.begin(), rows.end(), [&](const ErrorRow& a, const ErrorRow& b) { return sign * a.error < sign * b.error; });
  const auto i = static_cast<std::size_t>(smallest - rows.begin());
  const double at = refined(pair, rows, i, sign);
  if (at == inKelvin(smallest->trueTemperature))
    return {smallest->error, smallest->trueTemperature, smallest->uncertainty};
  return {kelvins(pair.shown(at) - at), kelvin(at), expanded(budgetAt(pair, at, options))};
}

}  // namespace

Expected<TemperatureSpan> coveredPart(TemperatureSpan band, const curve::Curve& sender) {
  if (!std::isfinite(inKelvin(band.low)) || !std::isfinite(inKelvin(band.high)) || !(band.low < band.high))
    return refuse("band-reversed", "band", inWords(band), "a band whose low end is below its high end");
  const TemperatureSpan valid = sender.valid();
  const TemperatureSpan both{std::max(band.low, valid.low), std::min(band.high, valid.high)};
  if (!(both.low < both.high))
    return refuse("band-off-curve", "band", inWords(band), "a band that meets the sender's curve, " + inWords(valid));
  return both;
}

TemperatureDifference Uncertainty::total() const { return kelvins(std::hypot(inKelvin(mismatch), inKelvin(shared))); }

Expected<ErrorTable> errorTable(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                                TemperatureSpan band, const PairOptions& options) {
  const auto covered = coveredPart(band, sender);
  if (!covered) return tl::make_unexpected(covered.error());
  if (const auto sound = soundOptions(options); !sound) return tl::make_unexpected(sound.error());
  const auto pair = Pair::make(gauge, sender, trim, options.conditions);
  if (!pair) return tl::make_unexpected(pair.error());

  ErrorTable out;
  out.trim = trim;
  out.asked = band;
  out.covered = *covered;
  out.options = options;
  out.senderToleranceAssumed = !options.inputs.senderTolerance;
  out.movementAssumed = !gauge.movement();
  out.rows.reserve(options.rows);
  for (const double t : evenly(*covered, options.rows)) {
    const gauge::Reading reading = pair->reading(t);
    out.rows.push_back({kelvin(t), reading, kelvins(inKelvin(reading.shown) - t), expanded(budgetAt(*pair, t, options)),
                        sender.extrapolates(kelvin(t))});
  }
  out.backwards = pair->shown(inKelvin(covered->high)) < pair->shown(inKelvin(covered->low));
  out.low = extremeOf(*pair, out.rows, 1, options);
  out.high = extremeOf(*pair, out.rows, -1, options);
  out.worst = -out.low.error > out.high.error ? out.low : out.high;
  HotAnswer hot = hotAnswer(*pair, options, out.backwards);
  out.hotMark = gauge.hotMark();
  out.hot = std::move(hot.warning);
  out.hotSign = hot.sign;
  return out;
}

std::vector<double> evenly(TemperatureSpan span, std::size_t count) {
  std::vector<double> out;
  out.reserve(count);
  const double low = inKelvin(span.low);
  const double step = (inKelvin(span.high) - low) / static_cast<double>(count - 1);
  for (std::size_t i = 0; i + 1 < count; ++i) out.push_back(low + step * static_cast<double>(i));
  out.push_back(inKelvin(span.high));
  return out;
}

}  // namespace ohmkin::pairing
