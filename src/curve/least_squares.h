#pragma once
#include <finding/refusal.h>
#include <functional>
#include <span>
#include <vector>

/// Least squares for whatever is not one of the curve's own forms: a line or polynomial through readings, a gauge's
/// law, any smooth model. Residuals are divided by their spread before they come here.
namespace ohmkin::curve {

struct LeastSquares {
  std::vector<double> parameters;
  std::vector<double> covariance;  ///< (JᵀJ)⁻¹, row-major: times sumOfSquares/freedom where the spreads are not known
  double sumOfSquares = 0;
  std::size_t freedom = 0;  ///< residuals − parameters
  int steps = 0;

  /// Standard deviation of a residual: √(sumOfSquares/freedom).
  [[nodiscard]] double scatter() const;
  /// Standard uncertainty of parameter i with the spread taken from the scatter.
  [[nodiscard]] double uncertainty(std::size_t i) const;
  [[nodiscard]] double correlation(std::size_t i, std::size_t j) const;
};

/// y = X·p by Householder QR of the columns brought to one length. `columns` holds X column by column. Refuses fewer
/// than parameters + 1 rows and columns that depend on each other.
Expected<LeastSquares> linearLeastSquares(std::span<const double> columns, std::span<const double> response);

/// Writes residuals (model − data) and, where `jacobian` is not empty, their derivatives, column by column. Returns
/// false where the model cannot be evaluated there.
using Residuals =
    std::function<bool(std::span<const double> parameters, std::span<double> residuals, std::span<double> jacobian)>;

/// Levenberg–Marquardt (Ceres's TinySolver) from `start`, then Gauss–Newton steps by QR until nothing is gained: about
/// nine digits on the harder NIST sets. Refuses where it does not settle.
Expected<LeastSquares> leastSquares(const Residuals& residuals, std::size_t count, std::vector<double> start);

}  // namespace ohmkin::curve
