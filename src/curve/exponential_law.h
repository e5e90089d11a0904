#pragma once
#include <curve/kelvin_span.h>
#include <curve/model.h>
#include <span>

/// ln R = ln a + b/(T + c) made ready for inner loops. Monotone on either side of its pole at T = −c; a span may not
/// hold the pole.
namespace ohmkin::curve {

class ExponentialLaw {
 public:
  static Expected<ExponentialLaw> make(const Exponential& model, KelvinSpan span);

  [[nodiscard]] double lnOhms(double kelvin) const { return lnA_ + b_ / (kelvin + c_); }
  [[nodiscard]] double kelvinAt(double lnOhms) const { return b_ / (lnOhms - lnA_) - c_; }
  [[nodiscard]] double slope(double kelvin) const { return -b_ / ((kelvin + c_) * (kelvin + c_)); }
  [[nodiscard]] std::size_t parameters() const { return 3; }
  /// d ln R / d (a, b, c)
  void gradient(double kelvin, std::span<double> out) const;

 private:
  double a_ = 1;
  double lnA_ = 0;
  double b_ = 0;
  double c_ = 0;
};

}  // namespace ohmkin::curve
