#pragma once
#include <array>
#include <optional>
#include <span>

/// Least-squares fits in bare numbers: kelvin, ln ohms. No heap up to 32 points, so that simulations may run millions.
/// fit.h puts the checks, the choice of model, outliers and words around them.
namespace ohmkin::curve {

/// Points to fit. `uKelvin` and `uLnOhms` are standard uncertainties and may be left empty (none); where both are empty
/// every point has the same spread of 1 in ln R, or in ohms where `inOhms` says so, and chi-square is a sum of squares.
/// `weight` multiplies squares (robust fits); empty: 1.
struct BarePoints {
  std::span<const double> kelvin;
  std::span<const double> lnOhms;
  std::span<const double> uKelvin = {};
  std::span<const double> uLnOhms = {};
  std::span<const double> weight = {};
  bool inOhms = false;

  [[nodiscard]] std::size_t size() const { return kelvin.size(); }
};

/// Parameters in the order of model.h and their covariance as it follows from the stated uncertainties; where none are
/// stated, to be multiplied by chiSquare / (points − parameters).
struct BareFit {
  std::array<double, 4> p{};
  std::array<double, 16> covariance{};  ///< size × size, row-major
  std::size_t size = 0;                 ///< of the covariance
  double chiSquare = 0;                 ///< weighted, in the response named at each function
  bool sound = false;                   ///< false: too few points, or the data do not determine the parameters
};

/// r0, t0, b: QR of ln R on 1/T. t0 is chosen at the middle of the data, where r0 and b are uncorrelated, and is exact.
BareFit fitBeta(const BarePoints& points);

/// c0, c1[, c2[, c3]]: QR of 1/T on powers of ln R. Spread of ln R counts through the slope, taken from a first pass.
BareFit fitSteinhartHart(const BarePoints& points, int terms);

/// r0, a1 … a_degree (1 to 3): QR of R on powers of t. Spread of ln R counts through the fitted R, taken from a first
/// pass.
BareFit fitPolynomial(const BarePoints& points, int degree);

/// a, b, c: Gauss–Newton steps by QR on ln R, or on R where `points.inOhms`. Worked in α, β, γ of ln R = α + β·d/(1 +
/// γ·d), d = T − T_middle, which stay well apart where a, b, c nearly cancel; γ = 1/(T_middle + c). Without a start, γ
/// comes from the linear equation that the form obeys.
BareFit fitExponential(const BarePoints& points, const std::optional<std::array<double, 3>>& start = std::nullopt);

}  // namespace ohmkin::curve
