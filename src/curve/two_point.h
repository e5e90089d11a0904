#pragma once
#include <curve/curve.h>

/// Families the trade states by two numbers: ohms cold and ohms hot, often without saying at what temperatures.
namespace ohmkin::curve {

/// Where a temperature is stated, low equals high; where it is not, the span it may lie in (uniform).
struct TwoPoint {
  Ohms cold;
  Ohms hot;
  TemperatureSpan coldAt;
  TemperatureSpan hotAt;
  [[nodiscard]] bool stated() const { return coldAt.low == coldAt.high && hotAt.low == hotAt.high; }
};

/// B-parameter curve through the two points (middle of the spans where not stated), established between them. Its
/// knowledge is honest: it carries the unstated temperatures, the rounding of the ohms, and the bow a real sender may
/// have away from a two-parameter curve in between. Refuses ohms ≤ 0 or equal, and spans of temperature that touch.
Expected<Curve> fromTwoPoints(const TwoPoint& stated);

/// Half of the step a number was rounded to, as far as it shows: the last digit that is not 0, but of two digits at
/// least both are taken as meant (51 → 0.5, 350 → 5, 1365 → 0.5, 100 → 5, 9.6 → 0.05).
double halfStepOf(double stated);

/// Standard uncertainty of ln R half way between the two points in 1/T, from the bow of real senders. A B-parameter
/// curve is straight in (1/T, ln R); a real curve is bent by about the same amount everywhere, so its bow grows with
/// the ratio of the ohms and with the width in 1/T: bow = k·|ln(cold/hot)|·(1/Tcold − 1/Thot).
///   falling: k = 13 K, from the published table of a general 10 kΩ NTC thermistor with B25/85 = 3435 K, which lies
///            1.4 % away from its own B-parameter curve at 50 °C;
///   rising:  k = 41 K, from the Pt100 of IEC 60751 drawn the same way (1.0 % between 20 and 110 °C).
/// Senders of old dashes are discs of unknown mixture or wound wire, so the bow of an ordinary part is taken as one
/// standard uncertainty: the expanded one (k = 2) allows twice as much to either side. A judgement, not a measurement.
double bowBetween(const TwoPoint& stated);

}  // namespace ohmkin::curve
