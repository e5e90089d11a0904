#include <curve/trial.h>
#include <fmt/format.h>
#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>

namespace ohmkin::curve {
namespace {

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

/// Chi-square that readings with these stated uncertainties exceed in one case of twenty.
double mostChiSquare(std::size_t freedom) {
  return boost::math::quantile(boost::math::chi_squared(static_cast<double>(freedom)), 0.95);
}

/// Residuals, scatter, chi-square over the readings with weight.
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

double medianOf(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 1) return *middle;
  return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

/// Residuals over their spread.
std::vector<double> standardized(const Trial& trial, const Readings& readings) {
  std::vector<double> out;
  for (std::size_t i = 0; i < readings.size(); ++i)
    out.push_back(trial.lnResiduals[i] / readings.spread(i, trial.curve.lnOhmsSlope(readings.kelvin[i])));
  return out;
}

/// Standard deviation from the median of the sizes, so that outliers do not count; never finer than stated, or than 1
/// ppm.
double robustScale(const std::vector<double>& standard, const Readings& readings, std::size_t parameters) {
  std::vector<double> sizes;
  for (const double u : standard) sizes.push_back(std::abs(u));
  const auto n = static_cast<double>(sizes.size());
  const double scale = 1.4826 * medianOf(std::move(sizes)) * std::sqrt(n / (n - static_cast<double>(parameters)));
  const double unit = readings.inOhms ? std::exp(*std::min_element(readings.lnOhms.begin(), readings.lnOhms.end())) : 1;
  return std::max(scale, readings.stated ? 1.0 : 1e-6 * unit);
}

enum class Loss { huber, tukey };

double weightOf(Loss loss, double u) {
  const double size = std::abs(u);
  if (loss == Loss::huber) return size <= kHuber ? 1 : kHuber / size;
  const double inside = 1 - (size / kTukey) * (size / kTukey);
  return size < kTukey ? inside * inside : 0;
}

/// Reweights until the weights stand still; keeps the scale where one is given.
Expected<Trial> reweighted(Loss loss, Form form, Readings& readings, Trial trial, std::optional<double> scale) {
  constexpr int most = 100;
  for (int round = 0; round < most; ++round) {
    const std::vector<double> standard = standardized(trial, readings);
    const double s = scale ? *scale : robustScale(standard, readings, parametersOf(form));
    double moved = 0;
    for (std::size_t i = 0; i < standard.size(); ++i) {
      const double weight = weightOf(loss, standard[i] / s);
      moved = std::max(moved, std::abs(weight - readings.weight[i]));
      readings.weight[i] = weight;
    }
    if (moved < 1e-9) break;
    if (readings.used() <= parametersOf(form) + 1) return undetermined(form);
    auto next = tryForm(form, readings);
    if (!next) return next;
    trial = std::move(*next);
  }
  return trial;
}

/// One reading far off can bend a form until it is no longer monotone and is refused. A B-parameter curve cannot bend:
/// what lies far from one that is fitted robustly is set aside, to have a start.
void leaveOutGross(Readings& readings) {
  const auto straight = tryForm(Form::beta, readings);
  if (!straight) return;
  Readings trying = readings;
  const auto middle = reweighted(Loss::huber, Form::beta, trying, *straight, std::nullopt);
  if (!middle) return;
  const std::vector<double> standard = standardized(*middle, readings);
  const double scale = robustScale(standard, readings, parametersOf(Form::beta));
  for (std::size_t i = 0; i < readings.size(); ++i) readings.weight[i] = std::abs(standard[i]) < kTukey * scale ? 1 : 0;
}

/// The biweight's scale comes from the median of a few residuals and cries wolf. Readings it casts out stay out only
/// where Student's t, with the scatter and the curve of the others, would put a good reading there in one run of a
/// hundred. Returns the standard deviation of those that stay, in units of their spread; none where all do.
std::optional<double> confirmedScale(Form form, Readings& readings) {
  for (double& weight : readings.weight) weight = weight > 0 ? 1 : 0;
  const auto n = static_cast<double>(readings.size());
  while (readings.used() < readings.size()) {
    const auto others = tryForm(form, readings);
    if (!others) return std::nullopt;
    const double scatter = std::sqrt(others->chiSquare / static_cast<double>(others->freedom));
    const double scale = readings.stated ? std::max(1.0, scatter) : scatter;
    const double limit =
        boost::math::quantile(boost::math::students_t(static_cast<double>(others->freedom)), 1 - 0.005 / n);
    const auto widest =
        others->curve.extendedTo({kelvin(*std::min_element(readings.kelvin.begin(), readings.kelvin.end())),
                                  kelvin(*std::max_element(readings.kelvin.begin(), readings.kelvin.end()))});
    const Curve& curve = widest ? *widest : others->curve;
    bool restored = false;
    for (std::size_t i = 0; i < readings.size(); ++i) {
      if (readings.weight[i] > 0) continue;
      const double own = scale * readings.spread(i, curve.lnOhmsSlope(readings.kelvin[i]));
      const double sigma = std::hypot(own, curve.knowledge(kelvin(readings.kelvin[i])).value_or(0));
      if (std::abs(others->lnResiduals[i]) > limit * sigma) continue;
      readings.weight[i] = 1;
      restored = true;
    }
    if (!restored) return scale;
  }
  return std::nullopt;
}

/// How much wider than the plain fit's the biweight's covariance is: Huber, Robust Statistics (1981) 7.6, over the
/// readings that stay.
double widening(const std::vector<double>& standard, double scale, std::size_t parameters) {
  double squares = 0;
  double slopes = 0;
  double count = 0;
  for (const double value : standard) {
    const double u = value / scale;
    if (std::abs(u) >= kTukey) continue;
    const double q = (u / kTukey) * (u / kTukey);
    squares += u * u * std::pow(1 - q, 4);
    slopes += (1 - q) * (1 - 5 * q);
    ++count;
  }
  const double mean = slopes / count;
  return scale * scale * squares / (count - static_cast<double>(parameters)) / (mean * mean);
}

}  // namespace

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

Expected<Trial> tryFormRobustly(Form form, Readings readings) {
  const std::size_t parameters = parametersOf(form);
  const auto plain = tryForm(form, readings);
  if (readings.size() < parameters + 4) return plain;
  auto start = plain;
  if (!start) {
    leaveOutGross(readings);
    start = tryForm(form, readings);
    if (!start) return plain;
  }
  // In Steinhart–Hart the ohms are the regressor, so that one far off pulls even Huber's fit; the start must then do.
  Readings trying = readings;
  const auto huber = reweighted(Loss::huber, form, trying, *start, std::nullopt);
  const Trial& middle = huber ? *huber : *start;
  const double first = robustScale(standardized(middle, readings), readings, parameters);
  const auto proposed = reweighted(Loss::tukey, form, readings, middle, first);
  if (!proposed) return plain;
  const auto scale = confirmedScale(form, readings);
  if (!scale) return plain;
  const auto settled = reweighted(Loss::tukey, form, readings, *proposed, *scale);
  if (!settled) return plain;
  std::vector<std::size_t> outliers;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (readings.weight[i] == 0) outliers.push_back(i);
  if (outliers.empty()) return plain;

  const double wider = widening(standardized(*settled, readings), *scale, parameters);
  for (double& weight : readings.weight) weight = weight > 0 ? 1 : 0;
  const BareFit staying = bareFit(form, readings.bare());
  if (!staying.sound) return undetermined(form);
  Covariance covariance{{}, staying.size};
  const double factor = readings.stated ? std::max(1.0, wider) : wider;
  for (std::size_t i = 0; i < staying.size * staying.size; ++i)
    covariance.values.push_back(factor * staying.covariance[i]);
  const auto [low, high] = readings.range();
  auto known = Curve::make(settled->curve.model(), {kelvin(low), kelvin(high)}, std::move(covariance));
  if (!known) return tl::make_unexpected(known.error());
  Trial trial{form, std::move(*known), {}, std::move(outliers)};
  describe(trial, readings);
  trial.consistent = !readings.stated || trial.chiSquare <= mostChiSquare(trial.freedom);
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
