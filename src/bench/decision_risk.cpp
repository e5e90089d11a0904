#include <bench/acceptance.h>
#include <bench/distributions.h>
#include <fmt/core.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <numbers>

namespace ohmkin::bench {
namespace {

double normalDensity(double z) { return std::exp(-0.5 * z * z) / std::sqrt(2 * std::numbers::pi); }

}  // namespace

Expected<DecisionRisk> decisionRisk(double spread, double u, double tolerance, double acceptance) {
  if (!(spread > 0 && u > 0 && tolerance > 0 && acceptance >= 0 && std::isfinite(spread + u + tolerance + acceptance)))
    return refuse("risk-out-of-range", "risk",
                  fmt::format("spread {:g}, u {:g}, tolerance {:g}, acceptance {:g}", spread, u, tolerance, acceptance),
                  "numbers above 0 (acceptance: 0 or above)");
  // All in standard deviations of the parts. Pieces end where the chance of passing turns over, so that a sharp meter
  // makes no step inside one.
  const double limit = tolerance / spread;
  const double passing = acceptance / spread;
  const double blur = u / spread;
  const auto passes = [&](double part) {
    return normalBelow((passing - part) / blur) - normalBelow((-passing - part) / blur);
  };
  const auto integral = [&](auto f, double from, double to) {
    double sum = 0;
    double at = from;
    for (const double next : {passing - 8 * blur, passing, passing + 8 * blur, to}) {
      if (!(next > at && next <= to)) continue;
      sum += boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, at, next, 10, 1e-11);
      at = next;
    }
    return sum;
  };
  constexpr double kFar = 12;  // standard deviations: beyond, nothing in doubles
  DecisionRisk risk;
  if (limit < kFar)
    risk.consumer = 2 * integral([&](double part) { return normalDensity(part) * passes(part); }, limit, kFar);
  risk.producer =
      2 * integral([&](double part) { return normalDensity(part) * (1 - passes(part)); }, 0, std::min(limit, kFar));
  return risk;
}

}  // namespace ohmkin::bench
