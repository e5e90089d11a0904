#include <curve/trial.h>
#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace ohmkin::curve {
namespace {

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
  sizes.reserve(standard.size());
  for (const double u : standard) sizes.push_back(std::abs(u));
  const auto n = static_cast<double>(sizes.size());
  constexpr double kPerMedian = 1.4826;  // standard deviations in a median of sizes, of normal readings
  const double scale = kPerMedian * medianOf(std::move(sizes)) * std::sqrt(n / (n - static_cast<double>(parameters)));
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

}  // namespace ohmkin::curve
