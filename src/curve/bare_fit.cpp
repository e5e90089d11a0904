#include <curve/bare_fit.h>
#include <curve/small_qr.h>
#include <quantity/quantity.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::curve {
namespace {

double at(std::span<const double> values, std::size_t i, double otherwise) {
  return values.empty() ? otherwise : values[i];
}

/// Spread of ln R of point i before the temperature's share: stated, or the same for all in ln R or in ohms.
double ownSpread(const BarePoints& points, std::size_t i) {
  if (!points.uLnOhms.empty()) return points.uLnOhms[i];
  if (!points.uKelvin.empty()) return 0;
  return points.inOhms ? std::exp(-points.lnOhms[i]) : 1;
}

/// What a row is multiplied by: the root of its weight over its spread.
double scaleOf(const BarePoints& points, std::size_t i, double perLn, double perKelvin) {
  const double ofLn = ownSpread(points, i) * perLn;
  const double ofKelvin = at(points.uKelvin, i, 0) * perKelvin;
  return std::sqrt(at(points.weight, i, 1) / (ofLn * ofLn + ofKelvin * ofKelvin));
}

/// d ln R / d(1/T) over the whole run: good enough for first spreads.
double secant(const BarePoints& points) {
  const auto [low, high] = std::minmax_element(points.kelvin.begin(), points.kelvin.end());
  const auto i = static_cast<std::size_t>(low - points.kelvin.begin());
  const auto j = static_cast<std::size_t>(high - points.kelvin.begin());
  return (points.lnOhms[i] - points.lnOhms[j]) / (1 / points.kelvin[i] - 1 / points.kelvin[j]);
}

template <int P>
BareFit bare(const SmallFit<P>& fit) {
  BareFit out;
  out.sound = fit.sound;
  if (!fit.sound) return out;
  out.size = P;
  out.chiSquare = fit.sumOfSquares;
  const Eigen::Matrix<double, P, P> covariance = fit.covariance();
  for (int i = 0; i < P; ++i) {
    out.p[static_cast<std::size_t>(i)] = fit.p[i];
    for (int j = 0; j < P; ++j)
      out.covariance[static_cast<std::size_t>(i) * P + static_cast<std::size_t>(j)] = covariance(i, j);
  }
  return out;
}

template <int P>
std::array<double, P> powersOf(double l) {
  std::array<double, P> out{1, l};
  // cppcheck-suppress containerOutOfBounds ; it does not see if constexpr
  if constexpr (P > 2) out[2] = l * l * l;
  // cppcheck-suppress containerOutOfBounds
  if constexpr (P > 3) out[3] = l * l;
  return out;
}

template <int P>
BareFit steinhartHart(const BarePoints& points) {
  const double chord = 1 / secant(points);
  SmallFit<P> fit;
  const bool ofLnToo = !points.uLnOhms.empty() || points.uKelvin.empty();
  for (int pass = 0; pass < (ofLnToo && P > 2 ? 2 : 1); ++pass) {
    if (pass > 0 && !fit.sound) break;
    const Eigen::Matrix<double, P, 1> before = fit.p;
    fit = smallLeastSquares<P>(points.size(), [&](std::size_t i, std::array<double, P + 1>& row) {
      const double l = points.lnOhms[i];
      double slope = chord;
      if constexpr (P > 2)
        if (pass > 0) slope = before[1] + 3 * before[2] * l * l;
      if constexpr (P > 3)
        if (pass > 0) slope += 2 * before[3] * l;
      const double x = 1 / points.kelvin[i];
      const double scale = scaleOf(points, i, slope, x * x);
      const std::array<double, P> columns = powersOf<P>(l);
      for (std::size_t k = 0; k < P; ++k) row[k] = columns[k] * scale;
      row[P] = x * scale;
    });
  }
  return bare<P>(fit);
}

template <int D>
BareFit polynomial(const BarePoints& points) {
  constexpr int P = D + 1;
  SmallFit<P> fit;
  const auto value = [&fit](double s) {
    double sum = 0;
    for (int k = D; k >= 0; --k) sum = sum * s + fit.p[k];
    return sum;
  };
  const auto slopeOf = [&fit](double s) {
    double sum = 0;
    for (int k = D; k >= 1; --k) sum = sum * s + k * fit.p[k];
    return sum;
  };
  const double chord = secant(points);
  for (int pass = 0; pass < 2; ++pass) {
    if (pass > 0 && !fit.sound) break;
    fit = smallLeastSquares<P>(points.size(), [&](std::size_t i, std::array<double, P + 1>& row) {
      const double s = (points.kelvin[i] - kZeroCelsius) / 100;
      const double r = std::exp(points.lnOhms[i]);
      const double perKelvin = pass > 0 ? slopeOf(s) / 100 : -r * chord / (points.kelvin[i] * points.kelvin[i]);
      const double perLn = pass > 0 && !points.inOhms ? value(s) : r;
      const double scale = scaleOf(points, i, perLn, perKelvin);
      double power = scale;
      for (std::size_t k = 0; k < P; ++k, power *= s) row[k] = power;
      row[P] = r * scale;
    });
  }
  BareFit out = bare<P>(fit);
  if (!out.sound) return out;
  const double r0 = fit.p[0];
  out.sound = r0 > 0;
  Eigen::Matrix<double, P, P> j = Eigen::Matrix<double, P, P>::Zero();  // d(r0, a1, …)/d(q0, q1, …)
  j(0, 0) = 1;
  for (int k = 1; k < P; ++k) {
    const double unit = std::pow(100.0, k) * r0;
    out.p[static_cast<std::size_t>(k)] = fit.p[k] / unit;
    j(k, k) = 1 / unit;
    j(k, 0) = -fit.p[k] / (unit * r0);
  }
  const Eigen::Matrix<double, P, P> covariance = j * fit.covariance() * j.transpose();
  for (int a = 0; a < P; ++a)
    for (int b = 0; b < P; ++b)
      out.covariance[static_cast<std::size_t>(a) * P + static_cast<std::size_t>(b)] = covariance(a, b);
  return out;
}

}  // namespace

BareFit fitBeta(const BarePoints& points) {
  if (points.size() < 3) return {};
  double sum = 0;
  for (const double t : points.kelvin) sum += 1 / t;
  const double middle = sum / static_cast<double>(points.size());
  double b = secant(points);
  SmallFit<2> fit;
  for (int pass = 0; pass < (points.uKelvin.empty() ? 1 : 2); ++pass) {
    fit = smallLeastSquares<2>(points.size(), [&](std::size_t i, std::array<double, 3>& row) {
      const double x = 1 / points.kelvin[i];
      const double scale = scaleOf(points, i, 1, b * x * x);
      row = {scale, (x - middle) * scale, points.lnOhms[i] * scale};
    });
    if (!fit.sound) return {};
    b = fit.p[1];
  }
  BareFit out;
  out.size = 3;
  out.sound = true;
  out.chiSquare = fit.sumOfSquares;
  const double r0 = std::exp(fit.p[0]);
  out.p = {r0, 1 / middle, fit.p[1], 0};
  const Eigen::Matrix2d covariance = fit.covariance();
  out.covariance = {r0 * r0 * covariance(0, 0), 0, r0 * covariance(0, 1), 0, 0, 0,
                    r0 * covariance(1, 0),      0, covariance(1, 1)};
  return out;
}

BareFit fitSteinhartHart(const BarePoints& points, int terms) {
  if (terms < 2 || terms > 4 || points.size() <= static_cast<std::size_t>(terms)) return {};
  return terms == 2 ? steinhartHart<2>(points) : terms == 3 ? steinhartHart<3>(points) : steinhartHart<4>(points);
}

BareFit fitPolynomial(const BarePoints& points, int degree) {
  if (degree < 1 || degree > 3 || points.size() <= static_cast<std::size_t>(degree) + 1) return {};
  return degree == 1 ? polynomial<1>(points) : degree == 2 ? polynomial<2>(points) : polynomial<3>(points);
}

}  // namespace ohmkin::curve
