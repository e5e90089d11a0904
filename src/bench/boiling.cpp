#include <bench/boiling.h>
#include <fmt/core.h>

#include <array>
#include <cmath>

namespace ohmkin::bench {
namespace {

// IAPWS R7-97(2012) Table 34.
constexpr std::array<double, 11> n{0,
                                   0.11670521452767e4,
                                   -0.72421316703206e6,
                                   -0.17073846940092e2,
                                   0.12020824702470e5,
                                   -0.32325550322333e7,
                                   0.14915108613530e2,
                                   -0.48232657361591e4,
                                   0.40511340542057e6,
                                   -0.23855557567849,
                                   0.65017534844798e3};
constexpr double kLowestKelvin = 273.15;
constexpr double kCriticalKelvin = 647.096;
constexpr double kLowestPascal = 611.213;
constexpr double kCriticalPascal = 22.064e6;

// ISO 2533:1975, defining constants.
constexpr double kSeaLevelPascal = 101325;
constexpr double kSeaLevelKelvin = 288.15;
constexpr double kGradient = -0.0065;       // K/m
constexpr double kGravity = 9.80665;        // m/s²
constexpr double kGasConstant = 287.05287;  // J/(kg·K)
constexpr double kLowestMetre = -2000;
constexpr double kTropopauseMetre = 11000;

/// The meaningful root of a·x² + b·x + c, written so that no digits cancel.
double root(double a, double b, double c) { return 2 * c / (-b + std::sqrt(b * b - 4 * a * c)); }

}  // namespace

Expected<Pressure> saturationPressure(Temperature t) {
  const double kelvin = inKelvin(t);
  if (!(kelvin >= kLowestKelvin && kelvin <= kCriticalKelvin))
    return refuse("no-saturation", "temperature", fmt::format("{:.2f} °C", inCelsius(t)),
                  "a temperature at which water boils at some pressure, 0 to 373.9 °C");
  const double theta = kelvin + n[9] / (kelvin - n[10]);
  const double a = theta * theta + n[1] * theta + n[2];
  const double b = n[3] * theta * theta + n[4] * theta + n[5];
  const double c = n[6] * theta * theta + n[7] * theta + n[8];
  return kilopascals(std::pow(root(a, b, c), 4) * 1e3);
}

Expected<Temperature> saturationTemperature(Pressure p) {
  const double pascal = p.value();
  if (!(pascal >= kLowestPascal && pascal <= kCriticalPascal))
    return refuse("no-saturation", "pressure", fmt::format("{:g} kPa", inKilopascals(p)),
                  "an absolute pressure at which water boils at some temperature, 0.611213 to 22 064 kPa");
  const double beta = std::pow(pascal * 1e-6, 0.25);
  const double e = beta * beta + n[3] * beta + n[6];
  const double f = n[1] * beta * beta + n[4] * beta + n[7];
  const double g = n[2] * beta * beta + n[5] * beta + n[8];
  const double d = 2 * g / (-f - std::sqrt(f * f - 4 * e * g));
  return kelvin((n[10] + d - std::sqrt((n[10] + d) * (n[10] + d) - 4 * (n[9] + n[10] * d))) / 2);
}

Expected<Pressure> standardPressure(Length geopotentialAltitude) {
  const double metres = geopotentialAltitude.value();
  if (!(metres >= kLowestMetre && metres <= kTropopauseMetre))
    return refuse("altitude-out-of-range", "altitude", fmt::format("{:g} m", metres),
                  "an altitude of −2000 to 11 000 m");
  const double ratio = 1 + kGradient * metres / kSeaLevelKelvin;
  return kilopascals(kSeaLevelPascal * 1e-3 * std::pow(ratio, -kGravity / (kGasConstant * kGradient)));
}

Expected<Pressure> stationPressure(Pressure reducedToSeaLevel, Length geopotentialAltitude) {
  const auto sea = standardPressure(millimetres(0));
  const auto here = standardPressure(geopotentialAltitude);
  if (!sea || !here) return tl::make_unexpected(sea ? here.error() : sea.error());
  // Along a gradient layer p^κ falls linearly with altitude, so what it falls by from the sea to here is the same
  // whatever the pressure at the sea.
  constexpr double kExponent = -kGradient * kGasConstant / kGravity;
  const double lifted = std::pow(reducedToSeaLevel.value(), kExponent) + std::pow(here->value(), kExponent) -
                        std::pow(sea->value(), kExponent);
  if (!(lifted > 0))
    return refuse("barometer-out-of-range", "barometer", fmt::format("{:g} kPa", inKilopascals(reducedToSeaLevel)),
                  "a pressure weather can have");
  return kilopascals(std::pow(lifted, 1 / kExponent) * 1e-3);
}

Expected<Temperature> boilingAtAltitude(Length geopotentialAltitude) {
  return standardPressure(geopotentialAltitude).and_then(saturationTemperature);
}

Expected<Temperature> boilingUnderCap(Pressure capAboveAmbient, Pressure ambient) {
  if (!(capAboveAmbient.value() >= 0))
    return refuse("cap-below-ambient", "pressure cap", fmt::format("{:g} kPa", inKilopascals(capAboveAmbient)),
                  "kilopascals above ambient, 0 or more");
  if (!(ambient.value() > 0))
    return refuse("ambient-pressure", "ambient pressure", fmt::format("{:g} kPa", inKilopascals(ambient)),
                  "an absolute pressure above 0");
  return saturationTemperature(ambient + capAboveAmbient);
}

}  // namespace ohmkin::bench
