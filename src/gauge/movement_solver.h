#pragma once
#include <ceres/tiny_solver.h>
#include <gauge/fit_movement.h>
#include <Eigen/Dense>
#include <algorithm>
#include <limits>

/// Least squares for any of the laws in movement_shapes.h.
namespace ohmkin::gauge {

/// One of the fitted numbers seen by itself: the needle with the key off is where a return magnet pulls.
struct SeenNumber {
  int which;
  double value;
  double uncertainty;  ///< standard
};

template <class Shape>
using Numbers = Eigen::Matrix<double, Shape::kNumbers, 1>;
template <class Shape>
using Square = Eigen::Matrix<double, Shape::kNumbers, Shape::kNumbers>;

template <class Shape>
struct Residuals {
  using Scalar = double;
  enum { NUM_PARAMETERS = Shape::kNumbers, NUM_RESIDUALS = Eigen::Dynamic };
  const std::vector<BoxReading>& free;
  const std::vector<SeenNumber>& seen;

  [[nodiscard]] int NumResiduals() const { return static_cast<int>(free.size() + seen.size()); }
  bool operator()(const double* p, double* residuals, double* jacobian) const {
    const auto rows = static_cast<Eigen::Index>(free.size() + seen.size());
    Eigen::Map<Eigen::VectorXd> off(residuals, rows);
    Eigen::Matrix<double, Eigen::Dynamic, Shape::kNumbers> unused;
    if (jacobian == nullptr) unused.resize(rows, Shape::kNumbers);
    Eigen::Map<Eigen::Matrix<double, Eigen::Dynamic, Shape::kNumbers>> by(
        jacobian == nullptr ? unused.data() : jacobian, rows, Shape::kNumbers);
    Eigen::Index row = 0;
    for (const BoxReading& reading : free) {
      Numbers<Shape> slopes;
      off[row] = (Shape::at(p, reading, slopes.data()) - reading.needle.degrees) / reading.uncertainty;
      by.row(row++) = slopes.transpose() / reading.uncertainty;
    }
    for (const SeenNumber& number : seen) {
      off[row] = (p[number.which] - number.value) / number.uncertainty;
      by.row(row).setZero();
      by(row++, number.which) = 1 / number.uncertainty;
    }
    return true;
  }
};

template <class Shape>
struct Solution {
  Numbers<Shape> at = Numbers<Shape>::Zero();
  Square<Shape> covariance = Square<Shape>::Zero();  ///< by the stated uncertainties, not grown by the scatter
  Eigen::VectorXd off;                               ///< residuals in standard uncertainties: free readings, then seen
};

/// The best of the solutions from all starts; none where the readings do not tell the numbers apart.
template <class Shape>
std::optional<Solution<Shape>> solved(const std::vector<BoxReading>& free, const std::vector<SeenNumber>& seen,
                                      const std::vector<Numbers<Shape>>& starts) {
  const Residuals<Shape> residuals{free, seen};
  double best = std::numeric_limits<double>::infinity();
  Solution<Shape> out;
  for (const Numbers<Shape>& start : starts) {
    ceres::TinySolver<Residuals<Shape>> solver;
    solver.options.max_num_iterations = 200;
    solver.options.gradient_tolerance = 1e-12;
    solver.options.parameter_tolerance = 1e-12;
    Numbers<Shape> at = start;
    const auto summary = solver.Solve(residuals, &at);
    if (!std::isfinite(summary.final_cost) || summary.final_cost >= best) continue;
    best = summary.final_cost;
    out.at = at;
  }
  if (!std::isfinite(best)) return std::nullopt;
  out.off.resize(residuals.NumResiduals());
  Eigen::MatrixXd jacobian(residuals.NumResiduals(), Shape::kNumbers);
  residuals(out.at.data(), out.off.data(), jacobian.data());
  const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(jacobian);
  if (qr.rank() < Shape::kNumbers) return std::nullopt;
  const Square<Shape> r = qr.matrixR().template topRows<Shape::kNumbers>().template triangularView<Eigen::Upper>();
  const Square<Shape> inverse = qr.colsPermutation() * Square<Shape>(r.inverse());
  out.covariance = inverse * inverse.transpose();
  return out;
}

/// What every fit says of itself: scatter, covariance grown by it, points on stops. `movement` and the names of the
/// numbers are the law's own.
MovementFit reported(const std::vector<BoxReading>& readings, const std::vector<BoxReading>& free,
                     const Eigen::VectorXd& off, Movement movement, std::vector<FittedNumber> numbers,
                     const Eigen::MatrixXd& covariance);

/// Those with the needle free, of which at least `fewest` are at different ohms and one is neither grounded nor open.
Expected<std::vector<BoxReading>> enoughFree(const std::vector<BoxReading>& readings, std::size_t fewest);
tl::unexpected<Refusal> tooClose();
std::vector<Numbers<struct CoilShape>> coilStarts(const std::vector<BoxReading>& free);

}  // namespace ohmkin::gauge
