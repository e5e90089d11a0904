#include <math.h>

#include <curve/table_law.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <limits>
#include <ranges>

namespace ohmkin::curve {

struct TableLaw::Knots {
  using Pchip = boost::math::interpolators::pchip<std::vector<double>>;

  Knots(std::vector<double> reciprocals, std::vector<double> logarithms)
      : x(std::move(reciprocals)), y(std::move(logarithms)), between(std::vector<double>(x), std::vector<double>(y)) {
    for (const double knot : x) d.push_back(between.prime(knot));
  }

  [[nodiscard]] bool rising() const { return y.back() > y.front(); }
  /// Index of the interval that holds x, 0 … n − 2.
  [[nodiscard]] std::size_t interval(double at) const {
    const auto it = std::upper_bound(x.begin() + 1, x.end() - 1, at);
    return static_cast<std::size_t>(it - x.begin()) - 1;
  }

  /// What each knot's ln R does to the slope at `knot`, times `weight`: the harmonic mean of the two chords beside it
  /// (Fritsch and Butland, as Boost has it), the one chord at the ends.
  template <class Add>
  void addSlopeEffects(std::size_t knot, double weight, Add&& add) const {
    const auto chord = [this](std::size_t i) { return (y[i + 1] - y[i]) / (x[i + 1] - x[i]); };
    const auto addChord = [&](std::size_t i, double w) {
      add(i, -w / (x[i + 1] - x[i]));
      add(i + 1, w / (x[i + 1] - x[i]));
    };
    if (knot == 0) return addChord(0, weight);
    if (knot + 1 == x.size()) return addChord(knot - 1, weight);
    const double before = x[knot] - x[knot - 1];
    const double after = x[knot + 1] - x[knot];
    const double w1 = 2 * after + before;
    const double w2 = after + 2 * before;
    const double toBefore = d[knot] / chord(knot - 1);
    const double toAfter = d[knot] / chord(knot);
    addChord(knot - 1, weight * w1 / (w1 + w2) * toBefore * toBefore);
    addChord(knot, weight * w2 / (w1 + w2) * toAfter * toAfter);
  }

  std::vector<double> x;  ///< 1/T, rising (so by falling temperature)
  std::vector<double> y;  ///< ln R
  std::vector<double> d;  ///< dy/dx at the knots
  Pchip between;
};

Expected<TableLaw> TableLaw::make(const MonotoneTable& model, KelvinSpan) {
  const auto& points = model.points;
  if (points.size() < 4)
    return refuse("curve-too-few-points", "curve", fmt::format("{} points", points.size()),
                  "a table of at least 4 points");
  std::vector<double> x;
  std::vector<double> y;
  for (const auto& [at, ohms] : std::views::reverse(points)) {
    const double kelvin = inKelvin(at);
    const double r = inOhms(ohms);
    if (!std::isfinite(kelvin) || kelvin <= 0 || !std::isfinite(r) || r <= 0)
      return refuse("curve-numbers", "curve", fmt::format("{:g} K, {:g} Ω", kelvin, r),
                    "temperatures above 0 K and ohms above 0");
    if (!x.empty() && 1 / kelvin <= x.back())
      return refuse("curve-points-order", "curve", fmt::format("{:.2f} °C out of order", kelvin - kZeroCelsius),
                    "points by strictly rising temperature");
    x.push_back(1 / kelvin);
    y.push_back(std::log(r));
  }
  const bool rising = y.back() > y.front();
  for (std::size_t i = 1; i < y.size(); ++i)
    if (y[i] == y[i - 1] || (y[i] > y[i - 1]) != rising)
      return refuse("curve-not-monotone", "curve",
                    fmt::format("{:g} Ω at {:.2f} °C beside {:g} Ω at {:.2f} °C", std::exp(y[i]),
                                1 / x[i] - kZeroCelsius, std::exp(y[i - 1]), 1 / x[i - 1] - kZeroCelsius),
                    "ohms that rise or fall all along the table");
  TableLaw law;
  law.knots_ = std::make_shared<const Knots>(std::move(x), std::move(y));
  return law;
}

std::size_t TableLaw::parameters() const { return knots_->x.size(); }

double TableLaw::lnOhms(double kelvin) const {
  const Knots& k = *knots_;
  const double x = 1 / kelvin;
  if (x <= k.x.front()) return k.y.front() + k.d.front() * (x - k.x.front());
  if (x >= k.x.back()) return k.y.back() + k.d.back() * (x - k.x.back());
  return k.between(x);
}

double TableLaw::slope(double kelvin) const {
  const Knots& k = *knots_;
  const double x = 1 / kelvin;
  const double dydx = x <= k.x.front() ? k.d.front() : x >= k.x.back() ? k.d.back() : k.between.prime(x);
  return -dydx * x * x;
}

double TableLaw::kelvinAt(double lnOhms) const {
  const Knots& k = *knots_;
  const bool beforeFirst = k.rising() ? lnOhms <= k.y.front() : lnOhms >= k.y.front();
  const bool afterLast = k.rising() ? lnOhms >= k.y.back() : lnOhms <= k.y.back();
  if (beforeFirst) return 1 / (k.x.front() + (lnOhms - k.y.front()) / k.d.front());
  if (afterLast) return 1 / (k.x.back() + (lnOhms - k.y.back()) / k.d.back());
  const auto it = k.rising() ? std::upper_bound(k.y.begin(), k.y.end(), lnOhms)
                             : std::upper_bound(k.y.begin(), k.y.end(), lnOhms, std::greater<>());
  const auto i = static_cast<std::size_t>(it - k.y.begin()) - 1;
  const double start = k.x[i] + (k.x[i + 1] - k.x[i]) * (lnOhms - k.y[i]) / (k.y[i + 1] - k.y[i]);
  boost::uintmax_t most = 80;
  return 1 / boost::math::tools::newton_raphson_iterate(
                 [&](double x) {
                   return std::pair{k.between(x) - lnOhms, k.between.prime(x)};
                 },
                 start, k.x[i], k.x[i + 1], std::numeric_limits<double>::digits - 1, most);
}

void TableLaw::gradient(double kelvin, std::span<double> out) const {
  const Knots& k = *knots_;
  std::fill(out.begin(), out.end(), 0.0);
  const double x = std::clamp(1 / kelvin, k.x.front(), k.x.back());
  const std::size_t i = k.interval(x);
  const double h = k.x[i + 1] - k.x[i];
  const double t = (x - k.x[i]) / h;
  const std::size_t last = k.x.size() - 1;  // the points of the model run the other way
  const auto add = [&](std::size_t knot, double perLn) { out[last - knot] += perLn * std::exp(-k.y[knot]); };

  const double rise = t * t * (3 - 2 * t);
  add(i, 1 - rise);
  add(i + 1, rise);
  k.addSlopeEffects(i, h * t * (1 - t) * (1 - t), add);
  k.addSlopeEffects(i + 1, -h * t * t * (1 - t), add);
  // continued straight beyond the outermost points
  const double beyond = 1 / kelvin - x;
  if (beyond != 0) k.addSlopeEffects(beyond < 0 ? 0 : last, beyond, add);
}

}  // namespace ohmkin::curve
