#include <curve/bare_fit.h>
#include <curve/small_qr.h>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace ohmkin::curve {
namespace {

constexpr int kMostSteps = 60;
constexpr int kMostHalvings = 20;
/// Part of the sum of squares the last step explains: the one after it would be lost in rounding.
constexpr double kSettled = 1e-14;
constexpr double kLeastBend = 1e-6;  // γ times the half width of the data: below it a, b and c cannot be told
constexpr double kMostBend = 0.999;  // 1 would put the pole on the outermost point

/// The form in α, β, γ over data centred at `middle`.
struct Work {
  const BarePoints& points;
  double middle = 0;
  double lowest = 0;   ///< d of the coldest point, below 0
  double highest = 0;  ///< d of the hottest

  using Shape = Eigen::Vector3d;  // α, β, γ

  [[nodiscard]] bool poleOutside(double gamma) const {
    return 1 + gamma * lowest > 1 - kMostBend && 1 + gamma * highest > 1 - kMostBend;
  }

  /// What a row is multiplied by: root of the weight over the spread of ln R (of R for a fit in ohms), at this slope of
  /// ln R.
  [[nodiscard]] double scale(std::size_t i, double slope) const {
    const double own = !points.uLnOhms.empty() ? points.uLnOhms[i] : !points.uKelvin.empty() ? 0 : 1;
    const double ofKelvin = points.uKelvin.empty() ? 0 : points.uKelvin[i] * slope;
    const double weight = points.weight.empty() ? 1 : points.weight[i];
    return std::sqrt(weight / (own * own + ofKelvin * ofKelvin));
  }

  /// Columns d/dα, d/dβ, d/dγ and what is left over, of one point.
  void row(const Shape& shape, double s, std::size_t i, std::array<double, 4>& out) const {
    const double d = points.kelvin[i] - middle;
    const double phi = d / (1 + shape[2] * d);
    const double ln = shape[0] + shape[1] * phi;
    if (points.inOhms) {
      const double r = std::exp(ln) * s;
      out = {r, r * phi, -r * shape[1] * phi * phi, std::exp(points.lnOhms[i]) * s - r};
    } else {
      out = {s, s * phi, -s * shape[1] * phi * phi, (points.lnOhms[i] - ln) * s};
    }
  }

  [[nodiscard]] double sumOfSquares(const Shape& shape, std::span<const double> scales) const {
    double sum = 0;
    std::array<double, 4> out{};
    for (std::size_t i = 0; i < points.size(); ++i) {
      row(shape, scales[i], i, out);
      sum += out[3] * out[3];
    }
    return sum;
  }
};

Work workOn(const BarePoints& points) {
  const auto [low, high] = std::minmax_element(points.kelvin.begin(), points.kelvin.end());
  const double middle = (*low + *high) / 2;
  return {points, middle, *low - middle, *high - middle};
}

/// y = ln R − mean obeys y = α + (αγ + β)·d − γ·(y·d): linear, and near enough to start from.
std::optional<Work::Shape> linearStart(const Work& work) {
  const BarePoints& points = work.points;
  const double mean =
      std::accumulate(points.lnOhms.begin(), points.lnOhms.end(), 0.0) / static_cast<double>(points.size());
  const SmallFit<3> fit = smallLeastSquares<3>(points.size(), [&](std::size_t i, std::array<double, 4>& row) {
    const double d = points.kelvin[i] - work.middle;
    const double y = points.lnOhms[i] - mean;
    const double s = points.weight.empty() ? 1 : std::sqrt(points.weight[i]);
    row = {s, d * s, y * d * s, y * s};
  });
  if (!fit.sound) return std::nullopt;
  const double gamma = std::clamp(-fit.p[2], -0.9 / work.highest, -0.9 / work.lowest);
  return Work::Shape{fit.p[0] + mean, fit.p[1] - fit.p[0] * gamma, gamma};
}

struct Settled {
  Work::Shape shape;
  SmallFit<3> last;
  double sumOfSquares = 0;
};

std::optional<Settled> settle(const Work& work, Work::Shape shape, std::span<const double> scales) {
  double sum = 0;  // at the shape in hand; the first fit tells it
  for (int step = 0; step < kMostSteps && std::isfinite(sum); ++step) {
    const SmallFit<3> fit = smallLeastSquares<3>(
        work.points.size(), [&](std::size_t i, std::array<double, 4>& row) { work.row(shape, scales[i], i, row); });
    if (!fit.sound) return std::nullopt;
    if (step == 0) sum = fit.sumOfSquares + fit.explained;
    if (fit.explained <= kSettled * fit.sumOfSquares) return Settled{shape + fit.p, fit, fit.sumOfSquares};
    double part = 1;
    double next = std::numeric_limits<double>::infinity();
    Work::Shape trial = shape;
    for (int halving = 0; halving < kMostHalvings; ++halving, part /= 2) {
      trial = shape + part * fit.p;
      if (!work.poleOutside(trial[2])) continue;
      next = work.sumOfSquares(trial, scales);
      if (next < sum) break;
    }
    if (!(next < sum)) return Settled{shape, fit, sum};  // nothing left but rounding
    shape = trial;
    sum = next;
  }
  return std::nullopt;
}

/// Back to a, b, c, and their covariance through the derivatives.
BareFit inModelTerms(const Work& work, const Settled& settled) {
  const double beta = settled.shape[1];
  const double gamma = settled.shape[2];
  BareFit out;
  out.chiSquare = settled.sumOfSquares;
  out.size = 3;
  if (std::abs(gamma) * work.highest < kLeastBend || beta == 0) return out;
  const double a = std::exp(settled.shape[0] + beta / gamma);
  out.p = {a, -beta / (gamma * gamma), 1 / gamma - work.middle, 0};
  Eigen::Matrix3d j;
  j << a, a / gamma, -a * beta / (gamma * gamma),                   //
      0, -1 / (gamma * gamma), 2 * beta / (gamma * gamma * gamma),  //
      0, 0, -1 / (gamma * gamma);
  const Eigen::Matrix3d covariance = j * settled.last.covariance() * j.transpose();
  for (int r = 0; r < 3; ++r)
    for (int c = 0; c < 3; ++c)
      out.covariance[3 * static_cast<std::size_t>(r) + static_cast<std::size_t>(c)] = covariance(r, c);
  out.sound = std::isfinite(a) && a > 0 && covariance.allFinite();
  return out;
}

}  // namespace

BareFit fitExponential(const BarePoints& points, const std::optional<std::array<double, 3>>& start) {
  if (points.size() < 4) return {};
  const Work work = workOn(points);
  if (!(work.highest > 0)) return {};
  std::optional<Work::Shape> shape;
  if (start) {
    const auto [a, b, c] = *start;
    const double gamma = 1 / (work.middle + c);
    if (a > 0 && work.poleOutside(gamma)) shape = Work::Shape{std::log(a) + b * gamma, -b * gamma * gamma, gamma};
  } else {
    shape = linearStart(work);
  }
  if (!shape) return {};

  // Uncertain temperatures count through the slope of the curve, which is taken from the shape in hand and settles in
  // two rounds.
  std::array<double, kStackRows> few;
  std::vector<double> many(points.size() > few.size() ? points.size() : 0);
  const std::span<double> scales = many.empty() ? std::span(few).first(points.size()) : std::span(many);
  std::optional<Settled> settled;
  for (int round = 0; round < (points.uKelvin.empty() ? 1 : 2); ++round) {
    for (std::size_t i = 0; i < scales.size(); ++i) {
      const double q = 1 + (*shape)[2] * (points.kelvin[i] - work.middle);
      scales[i] = work.scale(i, (*shape)[1] / (q * q));
    }
    settled = settle(work, *shape, scales);
    if (!settled) return {};
    shape = settled->shape;
  }
  return inModelTerms(work, *settled);
}

}  // namespace ohmkin::curve
