#include <curve/polynomial_law.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <limits>
#include <ranges>

namespace ohmkin::curve {
namespace {

constexpr std::size_t kMostPowers = 8;

double at(const std::vector<double>& p, double t) {
  double sum = 0;
  for (const double power : std::views::reverse(p)) sum = sum * t + power;
  return sum;
}

double slopeAt(const std::vector<double>& p, double t) {
  double sum = 0;
  for (std::size_t i = p.size(); i-- > 1;) sum = sum * t + static_cast<double>(i) * p[i];
  return sum;
}

std::vector<double> derivative(const std::vector<double>& p) {
  std::vector<double> out;
  for (std::size_t i = 1; i < p.size(); ++i) out.push_back(static_cast<double>(i) * p[i]);
  return out;
}

/// Roots between low and high where the sign changes: between two neighbouring turns there is at most one.
std::vector<double> rootsIn(const std::vector<double>& p, double low, double high) {
  if (p.size() < 2) return {};
  const std::vector<double> turns = rootsIn(derivative(p), low, high);
  std::vector<double> edges{low};
  edges.insert(edges.end(), turns.begin(), turns.end());
  edges.push_back(high);
  std::vector<double> roots;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    if (at(p, edges[i]) * at(p, edges[i + 1]) >= 0) continue;
    boost::uintmax_t most = 200;
    const auto [a, b] = boost::math::tools::toms748_solve([&](double t) { return at(p, t); }, edges[i], edges[i + 1],
                                                          boost::math::tools::eps_tolerance<double>(50), most);
    roots.push_back((a + b) / 2);
  }
  return roots;
}

/// +1 or −1 where the slope keeps that sign all over [low, high], ends included; 0 otherwise. The slope is least at an
/// end or at its own turn.
int signOfSlope(const std::vector<double>& p, double low, double high) {
  std::vector<double> places = rootsIn(derivative(derivative(p)), low, high);
  places.insert(places.end(), {low, high});
  int sign = 0;
  for (const double t : places) {
    const double slope = slopeAt(p, t);
    const int here = slope > 0 ? 1 : slope < 0 ? -1 : 0;
    if (here == 0 || (sign != 0 && here != sign)) return 0;
    sign = here;
  }
  return sign;
}

}  // namespace

Expected<PolynomialLaw> PolynomialLaw::make(const Polynomial& model, KelvinSpan span) {
  const bool finite = std::isfinite(inOhms(model.r0)) && std::isfinite(model.vanDusen) &&
                      std::all_of(model.a.begin(), model.a.end(), [](double a) { return std::isfinite(a); });
  if (!finite || inOhms(model.r0) <= 0 || model.a.empty() || model.a.size() > kMostPowers)
    return refuse("curve-numbers", "curve",
                  fmt::format("r0 = {:g} Ω and {} coefficients", inOhms(model.r0), model.a.size()),
                  fmt::format("r0 above 0 Ω and 1 to {} finite coefficients", kMostPowers));
  PolynomialLaw law;
  law.r0_ = inOhms(model.r0);
  law.lnR0_ = std::log(law.r0_);
  law.above_ = {1.0};
  law.above_.insert(law.above_.end(), model.a.begin(), model.a.end());
  law.below_ = law.above_;
  if (model.vanDusen != 0) {
    law.below_.resize(std::max<std::size_t>(law.below_.size(), 5), 0.0);
    law.below_[3] -= 100 * model.vanDusen;
    law.below_[4] += model.vanDusen;
  }
  law.low_ = span.low - kZeroCelsius;
  law.high_ = span.high - kZeroCelsius;
  law.quadratic_ = law.above_.size() == 3 && law.above_[2] != 0 && (law.low_ >= 0 || model.vanDusen == 0);

  const int cold = law.low_ < 0 ? signOfSlope(law.below_, law.low_, std::min(law.high_, 0.0)) : 2;
  const int warm = law.high_ > 0 ? signOfSlope(law.above_, std::max(law.low_, 0.0), law.high_) : 2;
  if (cold == 0 || warm == 0 || cold * warm == -1)
    return refuse("curve-not-monotone", "curve",
                  fmt::format("a turn between {:.2f} and {:.2f} °C", law.low_, law.high_),
                  "a polynomial that rises or falls over its whole span");
  if (at(law.piece(law.low_), law.low_) <= 0 || at(law.piece(law.high_), law.high_) <= 0)
    return refuse("curve-not-positive", "curve",
                  fmt::format("ohms at or below 0 between {:.2f} and {:.2f} °C", law.low_, law.high_),
                  "a polynomial above 0 Ω over its whole span");
  return law;
}

double PolynomialLaw::lnOhms(double kelvin) const {
  const double t = kelvin - kZeroCelsius;
  return lnR0_ + std::log(at(piece(t), t));
}

double PolynomialLaw::kelvinAt(double lnOhms) const {
  const double ratio = std::exp(lnOhms - lnR0_);
  if (quadratic_) {
    // the root that goes to (ratio − 1)/a1 as a2 vanishes, if the span lies on that side of the turn; the other one
    // else
    const double a1 = above_[1];
    const double root = std::sqrt(a1 * a1 + 4 * above_[2] * (ratio - 1));
    const bool near = (a1 + 2 * above_[2] * (low_ + high_) / 2) * a1 > 0;
    const double q = -0.5 * (a1 + std::copysign(root, a1));
    return kZeroCelsius + (near ? (1 - ratio) / q : q / above_[2]);
  }
  const double atLow = at(piece(low_), low_) - ratio;
  const double atHigh = at(piece(high_), high_) - ratio;
  if (!(atLow * atHigh < 0))
    return atLow == 0    ? kZeroCelsius + low_
           : atHigh == 0 ? kZeroCelsius + high_
                         : std::numeric_limits<double>::quiet_NaN();
  boost::uintmax_t most = 80;
  return kZeroCelsius + boost::math::tools::newton_raphson_iterate(
                            [&](double t) {
                              return std::pair{at(piece(t), t) - ratio, slopeAt(piece(t), t)};
                            },
                            low_ + (high_ - low_) * atLow / (atLow - atHigh), low_, high_,
                            std::numeric_limits<double>::digits - 1, most);
}

double PolynomialLaw::slope(double kelvin) const {
  const double t = kelvin - kZeroCelsius;
  return slopeAt(piece(t), t) / at(piece(t), t);
}

void PolynomialLaw::gradient(double kelvin, std::span<double> out) const {
  const double t = kelvin - kZeroCelsius;
  double power = 1 / at(piece(t), t);
  out[0] = 1 / r0_;
  for (std::size_t i = 1; i < above_.size(); ++i) out[i] = power *= t;
}

}  // namespace ohmkin::curve
