#include <pairing/error_table.h>

#include <fmt/format.h>
#include <pairing/budget.h>
#include <pairing/extreme_error.h>
#include <pairing/hot_mark.h>
#include <pairing/pair.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::pairing {
namespace {

std::string inWords(TemperatureSpan span) {
  return fmt::format("{:.1f} to {:.1f} °C", inCelsius(span.low), inCelsius(span.high));
}

Expected<void> soundOptions(const PairOptions& options) {
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
  return {};
}

Extreme withUncertainty(const ExtremeError& found, const Pair& pair, const std::vector<ErrorRow>& rows,
                        const PairOptions& options) {
  if (found.row) {
    const ErrorRow& row = rows[*found.row];
    return {row.error, row.trueTemperature, row.uncertainty};
  }
  return {kelvins(found.error), kelvin(found.kelvin), expanded(budgetAt(pair, found.kelvin, options))};
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
  const std::vector<double> places = evenly(*covered, options.rows);
  std::vector<double> errors;
  out.rows.reserve(places.size());
  errors.reserve(places.size());
  for (const double t : places) {
    const gauge::Reading reading = pair->reading(t);
    errors.push_back(inKelvin(reading.shown) - t);
    out.rows.push_back({kelvin(t), reading, kelvins(errors.back()), expanded(budgetAt(*pair, t, options)),
                        sender.extrapolates(kelvin(t))});
  }
  out.backwards = pair->shown(inKelvin(covered->high)) < pair->shown(inKelvin(covered->low));
  out.low = withUncertainty(extremeError(*pair, places, errors, Reads::low), *pair, out.rows, options);
  out.high = withUncertainty(extremeError(*pair, places, errors, Reads::high), *pair, out.rows, options);
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
