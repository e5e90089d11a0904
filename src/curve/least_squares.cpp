#include <ceres/tiny_solver.h>
#include <curve/least_squares.h>
#include <fmt/format.h>
#include <cmath>

#include <Eigen/Dense>

namespace ohmkin::curve {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr double kLeastIndependent = 1e-11;
constexpr int kMostPolishing = 60;
constexpr int kMostHalvings = 20;
constexpr double kSettled = 1e-20;   // part of the sum of squares that a further step promises
constexpr double kRounding = 1e-11;  // the same, where rounding hides whether the step delivers: it is taken on trust
constexpr int kMostUnseen = 4;       // such steps

std::size_t length(const Vector& v) { return static_cast<std::size_t>(v.size()); }

/// QR of the columns brought to one length, so that units do not matter.
struct Scaled {
  explicit Scaled(const Matrix& x) : norms(x.colwise().norm()), qr(x * norms.cwiseInverse().asDiagonal()) {}

  [[nodiscard]] bool independent() const {
    return norms.allFinite() && norms.minCoeff() > 0 &&
           qr.matrixQR().diagonal().cwiseAbs().minCoeff() > kLeastIndependent;
  }
  [[nodiscard]] Vector solve(const Vector& y) const { return norms.cwiseInverse().asDiagonal() * qr.solve(y); }
  [[nodiscard]] Matrix covariance() const {
    const Eigen::Index p = norms.size();
    const Matrix inverse = qr.matrixQR().topRows(p).triangularView<Eigen::Upper>().solve(Matrix::Identity(p, p));
    return norms.cwiseInverse().asDiagonal() * (inverse * inverse.transpose()) * norms.cwiseInverse().asDiagonal();
  }

  Vector norms;
  Eigen::HouseholderQR<Matrix> qr;
};

/// What TinySolver asks for. Parameters are counted in units of their start, since its step test measures them
/// together.
class InUnitsOfTheStart {
 public:
  using Scalar = double;
  enum { NUM_RESIDUALS = Eigen::Dynamic, NUM_PARAMETERS = Eigen::Dynamic };

  InUnitsOfTheStart(const Residuals& residuals, std::size_t count, Vector unit)
      : residuals_(residuals), count_(count), unit_(std::move(unit)) {}

  [[nodiscard]] int NumResiduals() const { return static_cast<int>(count_); }
  [[nodiscard]] int NumParameters() const { return static_cast<int>(unit_.size()); }

  bool operator()(const double* scaled, double* residuals, double* jacobian) const {
    const Vector p = unit_.cwiseProduct(Eigen::Map<const Vector>(scaled, unit_.size()));
    const std::size_t cells = jacobian ? count_ * length(unit_) : 0;
    if (!residuals_({p.data(), length(p)}, {residuals, count_}, {jacobian, cells})) {
      std::fill(residuals, residuals + count_, 1e150);  // such a step is never kept
      return false;
    }
    if (jacobian) Eigen::Map<Matrix>(jacobian, static_cast<Eigen::Index>(count_), unit_.size()) *= unit_.asDiagonal();
    return true;
  }

 private:
  const Residuals& residuals_;
  std::size_t count_;
  Vector unit_;
};

/// Takes the step, halved until the sum of squares falls; false where it does not.
bool descend(const InUnitsOfTheStart& function, Vector& at, const Vector& step, const Vector& residuals) {
  Vector next(residuals.size());
  double part = 1;
  for (int halving = 0; halving < kMostHalvings; ++halving, part /= 2) {
    const Vector trial = at - part * step;
    if (!function(trial.data(), next.data(), nullptr) || !(next.squaredNorm() < residuals.squaredNorm())) continue;
    at = trial;
    return true;
  }
  return false;
}

LeastSquares reported(const Vector& p, const Matrix& covariance, double sum, std::size_t count, int steps) {
  LeastSquares out;
  out.parameters.assign(p.begin(), p.end());
  out.covariance.assign(covariance.data(), covariance.data() + covariance.size());
  out.sumOfSquares = sum;
  out.freedom = count - length(p);
  out.steps = steps;
  return out;
}

tl::unexpected<Refusal> tooFew(std::size_t rows, std::size_t parameters) {
  return refuse("fit-too-few-points", "fit", fmt::format("{} points for {} parameters", rows, parameters),
                fmt::format("at least {} points", parameters + 1));
}

}  // namespace

double LeastSquares::scatter() const { return std::sqrt(sumOfSquares / static_cast<double>(freedom)); }
double LeastSquares::uncertainty(std::size_t i) const {
  return scatter() * std::sqrt(covariance[i * parameters.size() + i]);
}
double LeastSquares::correlation(std::size_t i, std::size_t j) const {
  const std::size_t n = parameters.size();
  return covariance[i * n + j] / std::sqrt(covariance[i * n + i] * covariance[j * n + j]);
}

Expected<LeastSquares> linearLeastSquares(std::span<const double> columns, std::span<const double> response) {
  const std::size_t rows = response.size();
  const std::size_t parameters = rows == 0 ? 0 : columns.size() / rows;
  if (parameters == 0 || rows <= parameters) return tooFew(rows, parameters);
  const Eigen::Map<const Matrix> x(columns.data(), static_cast<Eigen::Index>(rows),
                                   static_cast<Eigen::Index>(parameters));
  const Eigen::Map<const Vector> y(response.data(), static_cast<Eigen::Index>(rows));
  const Scaled scaled(x);
  if (!scaled.independent())
    return refuse("fit-undetermined", "fit", "columns that depend on each other",
                  "data that determine every parameter");
  const Vector p = scaled.solve(y);
  return reported(p, scaled.covariance(), (y - x * p).squaredNorm(), rows, 1);
}

Expected<LeastSquares> leastSquares(const Residuals& residuals, std::size_t count, std::vector<double> start) {
  if (start.empty() || count <= start.size()) return tooFew(count, start.size());
  Vector unit = Eigen::Map<const Vector>(start.data(), static_cast<Eigen::Index>(start.size()));
  Vector scaled = Vector::Ones(unit.size());
  for (Eigen::Index i = 0; i < unit.size(); ++i)
    if (unit[i] == 0) unit[i] = 1, scaled[i] = 0;
  const InUnitsOfTheStart function(residuals, count, unit);

  Vector r(static_cast<Eigen::Index>(count));
  if (!function(scaled.data(), r.data(), nullptr) || !r.allFinite())
    return refuse("fit-start", "fit", "a start where the model has no value",
                  "starting values inside the model's domain");
  ceres::TinySolver<InUnitsOfTheStart> solver;
  solver.options.max_num_iterations = 2000;
  solver.options.gradient_tolerance = 0;
  solver.options.parameter_tolerance = 1e-12;
  solver.options.function_tolerance = 0;
  solver.options.cost_threshold = 0;
  solver.Solve(function, &scaled);
  int steps = solver.summary.iterations;

  Matrix j(r.size(), unit.size());
  function(scaled.data(), r.data(), j.data());
  int unseen = 0;
  for (int polish = 0; polish < kMostPolishing; ++polish, ++steps) {
    const Scaled qr(j);
    if (!r.allFinite() || !j.allFinite() || !qr.independent()) break;
    const Vector step = qr.solve(r);
    const double sum = r.squaredNorm();
    const double gain = (j * step).squaredNorm();
    if (gain <= kSettled * sum || unseen == kMostUnseen)
      return reported(unit.cwiseProduct(scaled), unit.asDiagonal() * qr.covariance() * unit.asDiagonal(), sum, count,
                      steps);
    if (gain <= kRounding * sum) scaled -= step, ++unseen;
    else if (!descend(function, scaled, step, r)) break;
    function(scaled.data(), r.data(), j.data());
  }
  return refuse("fit-not-settled", "fit", fmt::format("no minimum after {} steps", steps),
                "data and starting values from which the fit settles");
}

}  // namespace ohmkin::curve
