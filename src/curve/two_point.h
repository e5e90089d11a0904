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

/// B-parameter curve through the two points (middle of the spans where not stated), established between them. Its knowledge is honest: it
/// carries the unstated temperatures, the rounding of the ohms, and the bow a real sender may have away from a two-parameter curve in between.
Expected<Curve> fromTwoPoints(const TwoPoint& stated);

}  // namespace ohmkin::curve
