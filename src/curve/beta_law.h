#pragma once
#include <curve/kelvin_span.h>
#include <curve/model.h>
#include <span>

/// ln R = ln r0 + b·(1/T − 1/t0) made ready for inner loops. IEC 60539-1; monotone wherever T > 0.
namespace ohmkin::curve {

class BetaLaw {
 public:
  static Expected<BetaLaw> make(const Beta& model, KelvinSpan span);

  [[nodiscard]] double lnOhms(double kelvin) const { return lnR0_ + b_ * (1.0 / kelvin - 1.0 / t0_); }
  [[nodiscard]] double kelvinAt(double lnOhms) const { return 1.0 / (1.0 / t0_ + (lnOhms - lnR0_) / b_); }
  [[nodiscard]] double slope(double kelvin) const { return -b_ / (kelvin * kelvin); }
  [[nodiscard]] std::size_t parameters() const { return 3; }
  /// d ln R / d (r0, t0, b)
  void gradient(double kelvin, std::span<double> out) const;

 private:
  double lnR0_ = 0;
  double t0_ = 0;
  double b_ = 0;
};

}  // namespace ohmkin::curve
