#pragma once
#include <quantity/quantity.h>

/// A span in bare kelvin, for the laws' own arithmetic.
namespace ohmkin::curve {

struct KelvinSpan {
  double low = 0;
  double high = 0;
};
inline KelvinSpan bareKelvin(const TemperatureSpan& span) { return {span.low.value(), span.high.value()}; }

}  // namespace ohmkin::curve
