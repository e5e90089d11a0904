#pragma once
#include <curve/kelvin_span.h>
#include <curve/model.h>
#include <memory>
#include <span>
#include <vector>

/// Monotone piecewise cubic (Fritsch–Carlson PCHIP of Boost.Math) in x = 1/T, y = ln R, made once and shared by copies.
/// Beyond the outermost points it goes on straight in (1/T, ln R), as a B-parameter curve would.
namespace ohmkin::curve {

class TableLaw {
 public:
  static Expected<TableLaw> make(const MonotoneTable& model, KelvinSpan span);

  [[nodiscard]] double lnOhms(double kelvin) const;
  [[nodiscard]] double kelvinAt(double lnOhms) const;
  [[nodiscard]] double slope(double kelvin) const;
  [[nodiscard]] std::size_t parameters() const;
  /// d ln R / d (ohms of each point)
  void gradient(double kelvin, std::span<double> out) const;

 private:
  struct Knots;
  std::shared_ptr<const Knots> knots_;
};

}  // namespace ohmkin::curve
