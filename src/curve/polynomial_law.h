#pragma once
#include <curve/kelvin_span.h>
#include <curve/model.h>
#include <span>
#include <vector>

/// R = r0·(1 + a1·t + a2·t² + … [+ c·(t − 100)·t³ below 0 °C]), t in °C, made ready for inner loops. The inverse is the
/// quadratic formula for IEC 60751 above 0 °C and guarded Newton steps over the span otherwise (continued a little
/// beyond it, NaN further out).
namespace ohmkin::curve {

class PolynomialLaw {
 public:
  static Expected<PolynomialLaw> make(const Polynomial& model, KelvinSpan span);

  [[nodiscard]] double lnOhms(double kelvin) const;
  [[nodiscard]] double kelvinAt(double lnOhms) const;
  [[nodiscard]] double slope(double kelvin) const;
  [[nodiscard]] std::size_t parameters() const { return above_.size(); }
  /// d ln R / d (r0, a1, a2, …); the Van Dusen term is taken as exact
  void gradient(double kelvin, std::span<double> out) const;

 private:
  [[nodiscard]] const std::vector<double>& piece(double t) const { return t < 0 ? below_ : above_; }

  double r0_ = 0;
  double lnR0_ = 0;
  std::vector<double> above_;  ///< of R/r0 in rising powers of t, t ≥ 0 °C; the first is 1
  std::vector<double> below_;  ///< the same with the Van Dusen term expanded
  double low_ = 0;             ///< °C, span of the inverse
  double high_ = 0;
  bool quadratic_ = false;
};

}  // namespace ohmkin::curve
