#include <curve/steinhart_hart_law.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <limits>
#include <vector>

namespace ohmkin::curve {
namespace {

constexpr double kLeastLn = -6.907755278982137;  // 1 mΩ
constexpr double kMostLn = 20.72326583694641;    // 1 GΩ

/// Real roots of k0 + k1·x + k2·x², rising; computed so that neither suffers from cancellation.
std::vector<double> quadraticRoots(double k0, double k1, double k2) {
  if (k2 == 0) return k1 == 0 ? std::vector<double>{} : std::vector<double>{-k0 / k1};
  const double discriminant = k1 * k1 - 4 * k0 * k2;
  if (discriminant < 0) return {};
  const double q = -0.5 * (k1 + std::copysign(std::sqrt(discriminant), k1));
  if (q == 0) return {0.0};
  std::vector<double> roots{q / k2, k0 / q};
  std::sort(roots.begin(), roots.end());
  return roots;
}

}  // namespace

Expected<SteinhartHartLaw> SteinhartHartLaw::make(const SteinhartHart& model, KelvinSpan span) {
  if (model.terms < 2 || model.terms > 4)
    return refuse("curve-numbers", "curve", fmt::format("{} terms", model.terms), "2, 3 or 4 Steinhart–Hart terms");
  SteinhartHartLaw law;
  law.terms_ = static_cast<std::size_t>(model.terms);
  for (std::size_t i = 0; i < law.terms_; ++i) {
    if (!std::isfinite(model.c[i]))
      return refuse("curve-numbers", "curve", fmt::format("coefficient {} is {}", i, model.c[i]),
                    "finite coefficients");
    law.c_[i] = model.c[i];
  }
  if (!law.takeBranch(span))
    return refuse(
        "curve-not-monotone", "curve",
        fmt::format("no stretch of the curve that covers {:.2f} to {:.2f} °C", span.low - kZeroCelsius,
                    span.high - kZeroCelsius),
        "Steinhart–Hart coefficients that give one resistance between 1 mΩ and 1 GΩ for each temperature of the span");
  if (law.c_[2] == 0 && law.c_[3] == 0) {
    law.way_ = Way::line;
  } else if (law.c_[3] == 0 && law.c_[1] / law.c_[2] > 0) {
    law.way_ = Way::closedForm;
    const double p = law.c_[1] / law.c_[2];
    law.halfWidth_ = 2 * std::sqrt(p / 3);
    law.scale_ = 1.5 / (p * law.c_[2]) * std::sqrt(3 / p);
  } else {
    law.way_ = Way::newton;
  }
  return law;
}

bool SteinhartHartLaw::takeBranch(KelvinSpan span) {
  std::vector<double> edges{kLeastLn};
  for (const double turn : quadraticRoots(c_[1], 2 * c_[3], 3 * c_[2]))
    if (turn > edges.back() && turn < kMostLn) edges.push_back(turn);
  edges.push_back(kMostLn);

  bool found = false;
  bool foundFalls = false;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const double a = reciprocal(edges[i]);
    const double b = reciprocal(edges[i + 1]);
    const bool covers = std::min(a, b) < 1 / span.high && 1 / span.low < std::max(a, b);
    const bool branchFalls = b > a;
    if (!covers || (foundFalls && !branchFalls)) continue;
    branchLow_ = edges[i];
    branchHigh_ = edges[i + 1];
    found = true;
    foundFalls = branchFalls;
  }
  return found;
}

double SteinhartHartLaw::lnOhms(double kelvin) const {
  const double reciprocalKelvin = 1.0 / kelvin;
  switch (way_) {
    case Way::line:
      return (reciprocalKelvin - c_[0]) / c_[1];
    case Way::closedForm:
      return halfWidth_ * std::sinh(std::asinh((reciprocalKelvin - c_[0]) * scale_) / 3);
    case Way::newton:
      break;
  }
  return solvedOnBranch(reciprocalKelvin);
}

double SteinhartHartLaw::solvedOnBranch(double reciprocalKelvin) const {
  const double atLow = reciprocal(branchLow_) - reciprocalKelvin;
  const double atHigh = reciprocal(branchHigh_) - reciprocalKelvin;
  if (!(atLow * atHigh < 0)) return std::numeric_limits<double>::quiet_NaN();
  const double start = branchLow_ + (branchHigh_ - branchLow_) * atLow / (atLow - atHigh);
  boost::uintmax_t most = 80;
  return boost::math::tools::newton_raphson_iterate(
      [&](double l) {
        return std::pair{reciprocal(l) - reciprocalKelvin, reciprocalSlope(l)};
      },
      start, branchLow_, branchHigh_, std::numeric_limits<double>::digits - 1, most);
}

double SteinhartHartLaw::slope(double kelvin) const {
  return -1.0 / (kelvin * kelvin * reciprocalSlope(lnOhms(kelvin)));
}

void SteinhartHartLaw::gradient(double kelvin, std::span<double> out) const {
  const double l = lnOhms(kelvin);
  const double factor = -1.0 / reciprocalSlope(l);
  const std::array<double, 4> powers{1, l, l * l * l, l * l};
  for (std::size_t i = 0; i < terms_; ++i) out[i] = factor * powers[i];
}

}  // namespace ohmkin::curve
