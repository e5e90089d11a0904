#pragma once
#include <bench/identify.h>

#include <random>
#include <string>
#include <vector>

/// Families as nobody makes them, for tests and measurements of the bench.
namespace ohmkin::bench::test {

inline FamilyCurve family(std::string name, double r0, double t0Celsius, double b, double knowledge,
                          std::optional<double> tolerance, TemperatureSpan valid = {celsius(-20), celsius(130)},
                          double weight = 1) {
  return {std::move(name), *curve::Curve::make(curve::Beta{ohms(r0), celsius(t0Celsius), b}, valid, {}, knowledge),
          tolerance, weight};
}

inline std::vector<FamilyCurve> threeFamilies() {
  return {family("A", 1380, 20, 3450, 0.01, 0.1), family("B", 1250, 20, 3900, 0.01, 0.1),
          family("C", 400, 20, 3100, 0.02, std::nullopt)};
}

/// One reading of a part whose common scale is `scale` (ln), as the model of identify.h has it.
inline Reading readingOf(const FamilyCurve& family, double celsiusAt, double scale, double own, double uLn) {
  return {celsius(celsiusAt),
          kelvins(0.3),
          ohms(std::exp(family.curve.lnOhms(inKelvin(celsius(celsiusAt))) + scale + own)),
          uLn,
          {}};
}

}  // namespace ohmkin::bench::test
