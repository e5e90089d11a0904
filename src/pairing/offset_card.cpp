#include <pairing/offset_card.h>

#include <fmt/format.h>
#include <pairing/pair.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::pairing {
namespace {

double roundStep(const DisplayUnits& units) { return units.temperature == TemperatureUnit::celsius ? 5 : 10; }

Temperature inUnits(double value, const DisplayUnits& units) {
  return units.temperature == TemperatureUnit::celsius ? celsius(value) : fahrenheit(value);
}

/// Round temperatures of the unit within the span.
std::vector<Temperature> roundTemperatures(TemperatureSpan span, double step, const DisplayUnits& units) {
  constexpr double kHair = 1e-9;
  std::vector<Temperature> out;
  const double first = std::ceil(inUnit(span.low, units.temperature) / step - kHair);
  const double last = std::floor(inUnit(span.high, units.temperature) / step + kHair);
  for (double n = first; n <= last; ++n) out.push_back(std::clamp(inUnits(n * step, units), span.low, span.high));
  return out;
}

std::string inWords(const gauge::Reading& reading, const DisplayUnits& units) {
  if (reading.where == gauge::Where::belowTheMarks) return "below the first mark";
  if (reading.where == gauge::Where::pastTheMarks) return "past the last mark";
  return print(reading.shown, units);
}

/// One row by way of the error table, so that card and table never differ. `t` is on the sender's curve.
Expected<CardRow> rowAt(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim, Temperature t,
                        PairOptions options, const DisplayUnits& units) {
  options.rows = 2;
  constexpr double kNext = 1e-3;  // K; a band has two ends
  const bool atTheEnd = t + kelvins(kNext) > sender.valid().high;
  const TemperatureSpan around =
      atTheEnd ? TemperatureSpan{t - kelvins(kNext), t} : TemperatureSpan{t, t + kelvins(kNext)};
  const auto table = errorTable(gauge, sender, trim, around, options);
  if (!table) return tl::make_unexpected(table.error());
  const ErrorRow& row = atTheEnd ? table->rows.back() : table->rows.front();
  return CardRow{row.trueTemperature, row.indicated, row.error, row.uncertainty.total(), inWords(row.indicated, units)};
}

std::string driverLine(const CardRow& warm, const DisplayUnits& units) {
  const std::string thermostat = print(warm.trueTemperature, units);
  if (warm.indicated.where == gauge::Where::onTheMarks)
    return fmt::format("Warmed up with the {} thermostat the needle stands at {}.", thermostat, warm.shown);
  return fmt::format("Warmed up with the {} thermostat the needle lies {}.", thermostat, warm.shown);
}

/// The curve continued to the hot mark where that is near and the model goes on one way; else as it is.
curve::Curve upTo(const curve::Curve& sender, Temperature hot) {
  const TemperatureSpan valid = sender.valid();
  if (valid.holds(hot) || hot > sender.established().high + PairOptions{}.reach) return sender;
  return sender.extendedTo({std::min(valid.low, hot), std::max(valid.high, hot)}).value_or(sender);
}

}  // namespace

Expected<OffsetCard> offsetCard(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                                std::optional<Temperature> thermostat, const PairOptions& options,
                                const DisplayUnits& units) {
  const auto covered = coveredPart(gauge.dial().marked(), sender);
  if (!covered) return tl::make_unexpected(covered.error());
  OffsetCard out;
  for (const Temperature& t : roundTemperatures(*covered, roundStep(units), units)) {
    auto row = rowAt(gauge, sender, trim, t, options, units);
    if (!row) return tl::make_unexpected(row.error());
    out.rows.push_back(std::move(*row));
  }
  if (thermostat) {
    if (!sender.valid().holds(*thermostat))
      return refuse("thermostat-off-curve", "thermostat", print(*thermostat, units),
                    fmt::format("a temperature on the sender's curve, {} to {}", print(sender.valid().low, units),
                                print(sender.valid().high, units)));
    auto warm = rowAt(gauge, sender, trim, *thermostat, options, units);
    if (!warm) return tl::make_unexpected(warm.error());
    out.driverLine = driverLine(*warm, units);
    out.warmedUp = std::move(*warm);
  }
  out.cautions = {"The gauge is an aid. Stop where the needle leaves the place it is used to, whatever it says.",
                  "Never open a hot cooling system: it is under pressure."};
  return out;
}

Expected<RemarkedDial> remarkedDial(const gauge::Gauge& gauge, const curve::Curve& stated, const TrimNetwork& trim,
                                    const DisplayUnits& units) {
  const gauge::Dial& old = gauge.dial();
  const Temperature hot = gauge.hotMark();
  const curve::Curve sender = upTo(stated, hot);
  const auto pair = Pair::make(gauge, sender, trim, {});
  if (!pair) return tl::make_unexpected(pair.error());
  if (!sender.valid().holds(hot))
    return refuse("hot-mark-off-curve", "hot mark", print(hot, units),
                  fmt::format("a hot mark on the sender's curve, {} to {}", print(sender.valid().low, units),
                              print(sender.valid().high, units)));
  const auto covered =
      coveredPart({std::min(old.marked().low, hot - kelvins(1)), std::max(hot, old.marked().high)}, sender);
  if (!covered) return tl::make_unexpected(covered.error());
  // The old scale, continued, carries angles for whatever the needle shows.
  const auto angleAt = [&](Temperature t) { return old.angleOf(kelvin(pair->shown(inKelvin(t)))); };
  const auto reached = [&](Angle a) { return old.onStops(a) == a; };
  const Angle hotAngle = angleAt(hot);
  if (!reached(hotAngle))
    return refuse("hot-mark-on-stop", "dial", fmt::format("a needle on its stop at {}", print(hot, units)),
                  "a sender that leaves the needle free at the hot mark");

  const double step = 2 * roundStep(units);
  std::vector<gauge::Mark> marks;
  std::vector<Temperature> leftOut;
  for (const Temperature& t : roundTemperatures(*covered, step, units)) {
    const Angle angle = angleAt(t);
    if (!reached(angle)) leftOut.push_back(t);
    else if (t != hot)
      marks.push_back({gauge::MarkKind::numbered, fmt::format("{:.0f}", inUnit(t, units.temperature)), t, angle});
  }
  const auto place = std::find_if(marks.begin(), marks.end(), [&](const gauge::Mark& m) { return *m.at > hot; });
  marks.insert(place, {gauge::MarkKind::hot, "H", hot, hotAngle});
  auto dial = gauge::Dial::make(std::move(marks), old.lowStop(), old.highStop());
  if (!dial) return tl::make_unexpected(dial.error());
  const TemperatureSpan drawn = dial->marked();
  const bool extrapolated = !sender.established().holds(drawn.low) || !sender.established().holds(drawn.high);
  return RemarkedDial{std::move(*dial), extrapolated, std::move(leftOut)};
}

}  // namespace ohmkin::pairing
