#include <curve/trial.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <limits>

namespace ohmkin::curve {
namespace {

Model modelOf(Form form, const BareFit& fit) {
  const auto& p = fit.p;
  switch (form) {
    case Form::beta:
      return Beta{ohms(p[0]), kelvin(p[1]), p[2]};
    case Form::steinhartHart3:
      return SteinhartHart{{p[0], p[1], p[2], 0}, 3};
    case Form::steinhartHart4:
      return SteinhartHart{p, 4};
    case Form::exponential:
      return Exponential{p[0], p[1], p[2]};
    default:
      break;
  }
  return Polynomial{ohms(p[0]), {p.begin() + 1, p.begin() + static_cast<std::ptrdiff_t>(fit.size)}};
}

}  // namespace

tl::unexpected<Refusal> undetermined(Form form) {
  return refuse("fit-undetermined", "fit", "readings that leave its parameters open",
                fmt::format("readings that determine {}", formName(form)));
}

BareFit bareFit(Form form, const BarePoints& points) {
  switch (form) {
    case Form::beta:
      return fitBeta(points);
    case Form::steinhartHart3:
      return fitSteinhartHart(points, 3);
    case Form::steinhartHart4:
      return fitSteinhartHart(points, 4);
    case Form::exponential:
      return fitExponential(points);
    case Form::straight:
      return fitPolynomial(points, 1);
    case Form::quadratic:
      return fitPolynomial(points, 2);
    case Form::cubic:
      return fitPolynomial(points, 3);
    case Form::table:
      break;
  }
  return {};
}

double mostChiSquare(std::size_t freedom) {
  return boost::math::quantile(boost::math::chi_squared(static_cast<double>(freedom)), 0.95);
}

void describe(Trial& trial, const Readings& readings) {
  trial.lnResiduals.clear();
  double squares = 0;
  trial.chiSquare = 0;
  trial.used = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double r = readings.lnOhms[i] - trial.curve.lnOhms(readings.kelvin[i]);
    trial.lnResiduals.push_back(r);
    if (readings.weight[i] == 0) continue;
    const double spread = readings.spread(i, trial.curve.lnOhmsSlope(readings.kelvin[i]));
    squares += r * r;
    trial.chiSquare += r * r / (spread * spread);
    ++trial.used;
  }
  const std::size_t parameters = parametersOf(trial.form);
  trial.freedom = trial.used > parameters ? trial.used - parameters : 0;
  trial.scatter = trial.freedom > 0 ? std::sqrt(squares / static_cast<double>(trial.freedom)) : 0;
}

Readings::Readings(const std::vector<Sample>& samples, bool spreadInOhms) : inOhms(spreadInOhms) {
  for (const Sample& sample : samples) {
    kelvin.push_back(inKelvin(sample.at));
    lnOhms.push_back(std::log(ohmkin::inOhms(sample.ohms)));
    uKelvin.push_back(sample.uKelvin);
    uLnOhms.push_back(sample.uLnOhms);
    weight.push_back(1);
    direction.push_back(sample.direction);
    stated = stated || sample.uKelvin > 0 || sample.uLnOhms > 0;
  }
  if (!stated) uKelvin.clear(), uLnOhms.clear();
  inOhms = inOhms && !stated;
  // a column of zeros is left out: it spares the fits their second pass
  const auto none = [](const std::vector<double>& v) {
    return std::all_of(v.begin(), v.end(), [](double u) { return u == 0; });
  };
  if (none(uKelvin)) uKelvin.clear();
  if (none(uLnOhms)) uLnOhms.clear();
}

BarePoints Readings::bare() const { return {kelvin, lnOhms, uKelvin, uLnOhms, weight, inOhms}; }

double Readings::spread(std::size_t i, double slope) const {
  if (!stated) return inOhms ? std::exp(-lnOhms[i]) : 1;
  return std::hypot(uLnOhms.empty() ? 0 : uLnOhms[i], uKelvin.empty() ? 0 : uKelvin[i] * slope);
}

KelvinSpan Readings::range() const {
  KelvinSpan span{std::numeric_limits<double>::infinity(), 0};
  for (std::size_t i = 0; i < size(); ++i) {
    if (weight[i] == 0) continue;
    span.low = std::min(span.low, kelvin[i]);
    span.high = std::max(span.high, kelvin[i]);
  }
  return span;
}

std::size_t Readings::used() const {
  return static_cast<std::size_t>(std::count_if(weight.begin(), weight.end(), [](double w) { return w > 0; }));
}

Expected<Trial> tryForm(Form form, const Readings& readings) {
  const std::size_t parameters = parametersOf(form);
  if (readings.used() < parameters + 1)
    return refuse("fit-too-few-points", "fit", fmt::format("{} readings", readings.used()),
                  fmt::format("at least {} readings for {}", parameters + 1, formName(form)));
  const auto [low, high] = readings.range();
  if (high - low < inKelvin(leastRange(form)))
    return refuse("fit-range-too-short", "fit", fmt::format("readings over {:.1f} K", high - low),
                  fmt::format("at least {:.0f} K for {}", inKelvin(leastRange(form)), formName(form)));
  const BareFit bare = bareFit(form, readings.bare());
  if (!bare.sound) return undetermined(form);

  const TemperatureSpan span{kelvin(low), kelvin(high)};
  const auto plain = Curve::make(modelOf(form, bare), span);
  if (!plain) return tl::make_unexpected(plain.error());
  Trial trial{form, *plain, {}, {}};
  describe(trial, readings);
  const double freedom = static_cast<double>(trial.freedom);
  trial.consistent = !readings.stated || bare.chiSquare <= mostChiSquare(trial.freedom);
  const double factor = trial.consistent && readings.stated ? 1 : bare.chiSquare / freedom;
  Covariance covariance{{}, bare.size};
  for (std::size_t i = 0; i < bare.size * bare.size; ++i) covariance.values.push_back(factor * bare.covariance[i]);
  auto known = Curve::make(plain->model(), span, std::move(covariance));
  if (!known) return tl::make_unexpected(known.error());
  trial.curve = std::move(*known);
  trial.chiSquare = bare.chiSquare;
  return trial;
}

std::optional<double> aicc(const Trial& trial, bool stated) {
  const auto n = static_cast<double>(trial.used);
  const auto p = static_cast<double>(parametersOf(trial.form));
  const double k = stated ? p : p + 1;  // the scatter is one more where it is estimated
  if (n < p + 3 || n - k - 1 <= 0) return std::nullopt;
  const double penalty = 2 * k + 2 * k * (k + 1) / (n - k - 1);
  if (stated) return trial.chiSquare + penalty;
  const double least = n * 1e-24;  // exact data: all forms that reach it are equal
  return n * std::log(std::max(trial.chiSquare, least) / n) + penalty;
}

bool goesInWaves(const Trial& trial, const Readings& readings) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (readings.weight[i] > 0) order.push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return readings.kelvin[a] < readings.kelvin[b]; });
  const auto n = static_cast<double>(order.size());
  if (n < 8) return false;
  double steps = 0;
  double squares = 0;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const double r = trial.lnResiduals[order[i]];
    squares += r * r;
    if (i > 0) steps += (r - trial.lnResiduals[order[i - 1]]) * (r - trial.lnResiduals[order[i - 1]]);
  }
  // expected 2 with variance 4(n − 2)/(n² − 1) for noise (von Neumann 1941); 3.09 standard deviations below
  return steps / squares < 2 - 3.09 * 2 * std::sqrt((n - 2) / (n * n - 1));
}

}  // namespace ohmkin::curve
