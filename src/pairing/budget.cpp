#include <pairing/budget.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::pairing {
namespace {

const double kRectangular = 1 / std::sqrt(3.0);  // standard uncertainty of a half-width, JCGM 100, 4.3.7

double rootSum(std::initializer_list<double> parts) {
  double sum = 0;
  for (const double part : parts) sum += part * part;
  return std::sqrt(sum);
}

/// Half the change of what is shown between two conditions.
double halfChange(const Pair& pair, Ohms seen, const gauge::Conditions& less, const gauge::Conditions& more) {
  const auto shown = [&](const gauge::Conditions& c) { return inKelvin(pair.gauge().indicated(seen, c).shown); };
  return std::abs(shown(more) - shown(less)) / 2;
}

double clusterEffect(const Pair& pair, Ohms seen, double slope, TemperatureDifference width) {
  if (inKelvin(width) == 0) return 0;
  // The ohms at half angle grow with the copper: for the needle the same as that much less at the sender.
  if (!pair.gauge().movement()) return std::abs(slope) * gauge::kCopperPerKelvin * inKelvin(width);
  if (std::holds_alternative<gauge::Bimetal>(*pair.gauge().movement())) return 0;
  gauge::Conditions cold = pair.conditions();
  gauge::Conditions warm = pair.conditions();
  cold.cluster -= width;
  warm.cluster += width;
  return halfChange(pair, seen, cold, warm);
}

double supplyEffect(const Pair& pair, Ohms seen, Volts width) {
  if (inVolts(width) == 0 || !supplyActs(pair.gauge(), pair.conditions())) return 0;
  gauge::Conditions less = pair.conditions();
  gauge::Conditions more = pair.conditions();
  less.supply -= width;
  more.supply += width;
  return halfChange(pair, seen, less, more);
}

/// Half the change of what is shown over the feed resistor's tolerance.
double feedEffect(const Pair& pair, double kelvin, double tolerance) {
  const auto shownWith = [&](double part) {
    const auto other = Pair::make(pair.original(), pair.sender(),
                                  TrimNetwork::feedToSender(pair.trim().feedOhms() * part), pair.conditions());
    return other ? other->shown(kelvin) : pair.shown(kelvin);
  };
  return std::abs(shownWith(1 + tolerance) - shownWith(1 - tolerance)) / 2;
}

double resistorEffect(const Pair& pair, double kelvin, const TrimNetwork::Sensitivity& on, double slope,
                      double tolerance) {
  if (tolerance == 0) return 0;
  if (pair.trim().topology() == Topology::feedToSender) return feedEffect(pair, kelvin, tolerance);
  return std::abs(slope) * rootSum({on.series, on.parallel}) * tolerance;
}

/// Sender's and family's curves. Of one family they are one curve, so that not knowing it moves both alike.
double curveEffect(const Pair& pair, double kelvin, double shown, double perLn, double slope, bool sameFamily) {
  const double sender = perLn * knowledgeNear(pair.sender(), kelvin);
  if (!pair.original().readByFamily()) return std::abs(sender);
  const double family = slope * knowledgeNear(pair.original().family(), shown);
  return sameFamily ? std::abs(sender - family) : rootSum({sender, family});
}

}  // namespace

double knowledgeNear(const curve::Curve& curve, double at) {
  const TemperatureSpan valid = curve.valid();
  return curve.knowledge(kelvin(std::clamp(at, inKelvin(valid.low), inKelvin(valid.high)))).value_or(0);
}

bool supplyActs(const gauge::Gauge& gauge, const gauge::Conditions& conditions) {
  if (!gauge.movement()) return false;
  if (const auto* coil = std::get_if<gauge::CrossedCoil>(&*gauge.movement())) return coil->magnet.has_value();
  return std::holds_alternative<gauge::Bimetal>(*gauge.movement()) && !conditions.regulatorWorks;
}

double Budget::mismatch() const { return rootSum({curves, resistors}); }
double Budget::shared() const { return rootSum({senderTolerance, gaugeTolerance, cluster, supply, location}); }

Uncertainty expanded(const Budget& budget) { return {kelvins(2 * budget.mismatch()), kelvins(2 * budget.shared())}; }

Budget budgetAt(const Pair& pair, double kelvin, const PairOptions& options) {
  const Inputs& in = options.inputs;
  const Ohms sender = pair.senderOhms(kelvin);
  const Ohms seen = pair.trim().seen(sender);
  const auto on = pair.trim().sensitivity(sender);
  const double slope = pair.shownSlope(seen);
  const double perLn = slope * on.sender;
  const TemperatureSpan marked = pair.gauge().dial().marked();

  Budget out;
  out.curves = curveEffect(pair, kelvin, pair.shownFor(seen), perLn, slope, options.sameFamily);
  out.resistors = kRectangular * resistorEffect(pair, kelvin, on, slope, in.resistorTolerance);
  out.senderTolerance = kRectangular * std::abs(perLn) * in.senderTolerance.value_or(curve::kAssumedTolerance);
  out.gaugeTolerance = kRectangular * in.gaugeTolerance * inKelvin(marked.high - marked.low);
  out.cluster = kRectangular * clusterEffect(pair, seen, slope, in.cluster);
  out.supply = kRectangular * supplyEffect(pair, seen, in.supply);
  out.location = kRectangular * std::abs(perLn * pair.sender().lnOhmsSlope(kelvin)) * inKelvin(in.location);
  return out;
}

}  // namespace ohmkin::pairing
