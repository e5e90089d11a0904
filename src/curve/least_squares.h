#pragma once
#include <finding/refusal.h>
#include <span>
#include <vector>

/// Linear least squares of any number of columns. Rows are divided by their spread before they come here.
namespace ohmkin::curve {

struct LeastSquares {
  std::vector<double> parameters;
  std::vector<double> covariance;  ///< (JᵀJ)⁻¹, row-major: times sumOfSquares/freedom where the spreads are not known
  double sumOfSquares = 0;
  std::size_t freedom = 0;  ///< residuals − parameters

  /// Standard deviation of a residual: √(sumOfSquares/freedom).
  [[nodiscard]] double scatter() const;
};

/// y = X·p by Householder QR of the columns brought to one length. `columns` holds X column by column. Refuses fewer
/// than parameters + 1 rows and columns that depend on each other.
Expected<LeastSquares> linearLeastSquares(std::span<const double> columns, std::span<const double> response);

}  // namespace ohmkin::curve
