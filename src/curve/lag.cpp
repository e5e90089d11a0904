#include <curve/lag.h>
#include <curve/least_squares.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::curve {
namespace {

/// Readings that count; none where a direction has fewer than two.
std::vector<std::size_t> counted(const Trial& trial, const Readings& readings) {
  std::vector<std::size_t> rows;
  std::size_t cooling = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (std::find(trial.outliers.begin(), trial.outliers.end(), i) != trial.outliers.end()) continue;
    rows.push_back(i);
    cooling += readings.direction[i] == Direction::cooling ? 1 : 0;
  }
  return cooling < 2 || rows.size() - cooling < 2 ? std::vector<std::size_t>{} : rows;
}

/// Positions in the model's covariance of the parameters that were fitted: t0 of a B-parameter curve is none.
std::vector<std::size_t> fittedOnes(Form form, std::size_t all) {
  if (form == Form::beta) return {0, 2};
  std::vector<std::size_t> out(all);
  for (std::size_t i = 0; i < all; ++i) out[i] = i;
  return out;
}

}  // namespace

std::optional<Lag> lagOf(const Trial& trial, const Readings& readings) {
  const std::vector<std::size_t> rows = counted(trial, readings);
  if (rows.empty() || trial.form == Form::table) return std::nullopt;
  const auto law = lawOf(trial.curve.model(), bareKelvin(trial.curve.valid()));
  if (!law) return std::nullopt;

  const std::size_t all = std::visit([](const auto& l) { return l.parameters(); }, *law);
  const std::vector<std::size_t> fitted = fittedOnes(trial.form, all);
  const std::size_t p = fitted.size();
  std::vector<double> columns(rows.size() * (p + 1));
  std::vector<double> response(rows.size());
  std::vector<double> gradient(all);
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const std::size_t i = rows[k];
    const double slope = trial.curve.lnOhmsSlope(readings.kelvin[i]);
    const double spread = readings.spread(i, slope);
    std::visit([&](const auto& l) { l.gradient(readings.kelvin[i], gradient); }, *law);
    for (std::size_t j = 0; j < p; ++j) columns[j * rows.size() + k] = gradient[fitted[j]] / spread;
    columns[p * rows.size() + k] = (readings.direction[i] == Direction::cooling ? 0.5 : -0.5) * slope / spread;
    response[k] = trial.lnResiduals[i] / spread;
  }
  const auto solved = linearLeastSquares(columns, response);
  if (!solved) return std::nullopt;

  const double unit = readings.stated ? std::max(1.0, solved->scatter()) : solved->scatter();
  const double difference = solved->parameters.back();
  const double u = unit * std::sqrt(solved->covariance.back());
  Lag lag{{kelvins(difference), kelvins(u), std::abs(difference) > 2 * u}, {std::vector<double>(all * all, 0.0), all}};
  for (std::size_t a = 0; a < p; ++a)
    for (std::size_t b = 0; b < p; ++b)
      lag.covariance.values[fitted[a] * all + fitted[b]] = unit * unit * solved->covariance[a * (p + 1) + b];
  return lag;
}

Readings withoutLag(Readings readings, double kelvins) {
  for (std::size_t i = 0; i < readings.size(); ++i)
    readings.kelvin[i] += readings.direction[i] == Direction::cooling ? kelvins / 2 : -kelvins / 2;
  return readings;
}

}  // namespace ohmkin::curve
