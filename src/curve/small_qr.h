#pragma once
#include <Eigen/Core>
#include <array>
#include <cstddef>

/// Linear least squares of a few parameters by Householder QR of [X | y], on the stack for short runs.
namespace ohmkin::curve {

template <int P>
struct SmallFit {
  Eigen::Matrix<double, P, 1> p;
  Eigen::Matrix<double, P, P> triangle;  ///< R of X = QR; below the diagonal it means nothing
  double sumOfSquares = 0;               ///< of the residuals
  double explained = 0;                  ///< sum of squares the parameters account for
  bool sound = false;                    ///< false: columns (nearly) dependent, or not finite

  /// (XᵀX)⁻¹. Asked for once at the end of a search, not at each of its steps.
  [[nodiscard]] Eigen::Matrix<double, P, P> covariance() const {
    const Eigen::Matrix<double, P, P> inverse =
        triangle.template triangularView<Eigen::Upper>().solve(Eigen::Matrix<double, P, P>::Identity());
    return inverse * inverse.transpose();
  }
};

inline constexpr int kStackRows = 32;  ///< tables up to here live on the stack
/// Tables up to here are padded with rows of zeros, which change nothing, so that every size is known to the compiler.
inline constexpr int kShortRows = 16;

inline constexpr double kLeastIndependent = 1e-11;  ///< part of a column not explained by those before it

template <int P, int Rows, int MaxRows>
using SmallTable = Eigen::Matrix<double, Rows, P + 1, Eigen::ColMajor, MaxRows, P + 1>;

/// Of [X | y], which it overwrites. For the shapes below, compiled once in small_qr.cpp: unrolled, each takes seconds.
template <int P, int Rows, int MaxRows>
SmallFit<P> solved(SmallTable<P, Rows, MaxRows>& xy);

template <int P, int Rows, int MaxRows, class Fill>
SmallFit<P> smallQr(std::size_t rows, Fill&& fill) {
  SmallTable<P, Rows, MaxRows> xy;
  const auto n = static_cast<Eigen::Index>(rows);
  if constexpr (Rows == Eigen::Dynamic) xy.resize(n, P + 1);
  else xy.setZero();
  for (Eigen::Index i = 0; i < n; ++i) {
    std::array<double, P + 1> row{};
    fill(static_cast<std::size_t>(i), row);
    for (int k = 0; k <= P; ++k) xy(i, k) = row[static_cast<std::size_t>(k)];
  }
  return solved<P, Rows, MaxRows>(xy);
}

/// `fill(i, row)` writes P columns and the response of row i, already divided by its spread. Needs more rows than P.
template <int P, class Fill>
SmallFit<P> smallLeastSquares(std::size_t rows, Fill&& fill) {
  if (rows <= static_cast<std::size_t>(P)) return {};
  if (rows <= static_cast<std::size_t>(kShortRows)) return smallQr<P, kShortRows, kShortRows>(rows, fill);
  if (rows <= static_cast<std::size_t>(kStackRows)) return smallQr<P, Eigen::Dynamic, kStackRows>(rows, fill);
  return smallQr<P, Eigen::Dynamic, Eigen::Dynamic>(rows, fill);
}

}  // namespace ohmkin::curve
