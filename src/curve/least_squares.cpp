#include <curve/least_squares.h>
#include <curve/small_qr.h>
#include <fmt/format.h>
#include <cmath>

#include <Eigen/Dense>

namespace ohmkin::curve {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

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

}  // namespace

double LeastSquares::scatter() const { return std::sqrt(sumOfSquares / static_cast<double>(freedom)); }

Expected<LeastSquares> linearLeastSquares(std::span<const double> columns, std::span<const double> response) {
  const std::size_t rows = response.size();
  const std::size_t parameters = rows == 0 ? 0 : columns.size() / rows;
  if (parameters == 0 || rows <= parameters)
    return refuse("fit-too-few-points", "fit", fmt::format("{} points for {} parameters", rows, parameters),
                  fmt::format("at least {} points", parameters + 1));
  const Eigen::Map<const Matrix> x(columns.data(), static_cast<Eigen::Index>(rows),
                                   static_cast<Eigen::Index>(parameters));
  const Eigen::Map<const Vector> y(response.data(), static_cast<Eigen::Index>(rows));
  const Scaled scaled(x);
  if (!scaled.independent())
    return refuse("fit-undetermined", "fit", "columns that depend on each other",
                  "data that determine every parameter");
  const Vector p = scaled.solve(y);
  const Matrix covariance = scaled.covariance();
  return LeastSquares{{p.begin(), p.end()},
                      {covariance.data(), covariance.data() + covariance.size()},
                      (y - x * p).squaredNorm(),
                      rows - parameters};
}

}  // namespace ohmkin::curve
