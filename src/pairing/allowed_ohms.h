#pragma once
#include <pairing/stations.h>
#include <cstddef>
#include <vector>

/// Which ohms at the sender post keep the needle within a target at each temperature of a band. Bare numbers: kelvin,
/// ohms.
namespace ohmkin::pairing {

/// Worst error in kelvins, both ways, reading low already weighted; either may be below 0.
struct Worst {
  double high = 0;
  double low = 0;
  [[nodiscard]] double weighted() const { return high > low ? high : low; }
};

class AllowedOhms {
 public:
  AllowedOhms(const gauge::Gauge& gauge, const Stations& stations, double lowWeight);

  /// Narrows the spans to a weighted worst error of at most `target`. Outward by a hair, so that rounding excludes
  /// nothing.
  void narrowTo(double target);
  /// As they were at the beginning: every ohms allowed.
  void widen();

  [[nodiscard]] bool gaugeFalls() const { return falls_; }          ///< more ohms, lower reading
  [[nodiscard]] std::size_t bounding() const { return bounding_; }  ///< how many of the stations, the first, have spans
  [[nodiscard]] double low(std::size_t i) const { return low_[i]; }
  [[nodiscard]] double high(std::size_t i) const { return high_[i]; }
  [[nodiscard]] double lowWeight() const { return lowWeight_; }

  // Ohms that put the needle at or past the mark, where stations.hotBy is set; every ohms where not.
  [[nodiscard]] double hotLow() const { return hotLow_; }
  [[nodiscard]] double hotHigh() const { return hotHigh_; }

 private:
  [[nodiscard]] double ohmsShowing(double kelvin) const;
  const gauge::Gauge* gauge_;
  const Stations* stations_;
  std::size_t bounding_;
  double lowWeight_;
  double shownGrounded_;
  double shownOpen_;
  bool falls_;
  double hotLow_;
  double hotHigh_;
  std::vector<double> low_;
  std::vector<double> high_;
};

}  // namespace ohmkin::pairing
