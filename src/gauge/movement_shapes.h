#pragma once
#include <ceres/jet.h>
#include <gauge/box_reading.h>
#include <cmath>
#include <limits>

/// The laws a movement is fitted by, written in the numbers that are fitted: the needle's angle in degrees, and its
/// derivatives by each of them. Ohms are fitted as their logarithms, so that they stay above 0.
namespace ohmkin::gauge {

/// grounded °, sweep °, ln half.
struct CoilShape {
  static constexpr int kNumbers = 3;
  static double at(const double* p, const BoxReading& reading, double* by) {
    const double ohms = inOhms(reading.box);
    const double delta = p[1] * kRadiansPerDegree;
    by[0] = 1;
    if (std::isinf(ohms)) {
      by[1] = 1;
      by[2] = 0;
      return p[0] + p[1];
    }
    const double x = ohms / std::exp(p[2]);
    const double square = 1 + x * (2 * std::cos(delta) + x);
    by[1] = x * (x + std::cos(delta)) / square;
    by[2] = -x * std::sin(delta) / square / kRadiansPerDegree;
    return p[0] + std::atan2(x * std::sin(delta), 1 + x * std::cos(delta)) / kRadiansPerDegree;
  }
};

/// rest °, grounded °, ln heater; behind a regulator that works, so that the supply does not matter.
struct BimetalShape {
  static constexpr int kNumbers = 3;
  static double at(const double* p, const BoxReading& reading, double* by) {
    const double heater = std::exp(p[2]);
    const double share = heater / (heater + inOhms(reading.box));
    by[0] = 1 - share * share;
    by[1] = share * share;
    by[2] = 2 * (p[1] - p[0]) * share * share * (1 - share);
    return p[0] + (p[1] - p[0]) * share * share;
  }
};

/// grounded °, sweep °, ln half, strength, pull °, ln weakening: the coils' field and a constant one beside it
/// (needle_law.cpp has the same law for the inner loops). Differentiated by dual numbers.
struct MagnetShape {
  static constexpr int kNumbers = 6;
  static double at(const double* p, const BoxReading& reading, double* by) {
    using std::atan2, std::cos, std::exp, std::sin;
    using Number = ceres::Jet<double, kNumbers>;
    std::array<Number, kNumbers> n;
    for (int i = 0; i < kNumbers; ++i) n[static_cast<std::size_t>(i)] = Number(p[i], i);
    const double ohms = inOhms(reading.box);
    const double drive = inVolts(reading.supply) / kStandardVolts;
    // Multiplied through by the coils' shared denominator, or for an open lead divided by the ohms: neither turns it.
    const bool open = std::isinf(ohms);
    const Number x = open ? exp(-n[2]) : ohms * exp(-n[2]);
    const Number weakened = open ? exp(-n[5]) : 1.0 + ohms * exp(-n[5]);
    const Number sweep = n[1] * kRadiansPerDegree;
    const Number pull = (n[4] - n[0]) * kRadiansPerDegree;
    const Number along = drive * ((open ? 0.0 : 1.0) + x * cos(sweep)) + n[3] * cos(pull) * weakened;
    const Number across = drive * x * sin(sweep) + n[3] * sin(pull) * weakened;
    const Number angle = n[0] + atan2(across, along) / kRadiansPerDegree;
    for (int i = 0; i < kNumbers; ++i) by[i] = angle.v[i];
    return angle.a;
  }
};

}  // namespace ohmkin::gauge
