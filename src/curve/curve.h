#pragma once
#include <curve/law.h>
#include <curve/model.h>
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Resistance–temperature curves of senders. A curve is a value: a model, the span over which it was established, and
/// how well it is known. It answers inside its valid span and nowhere else.
namespace ohmkin::curve {

/// Covariance of the model's parameters in the order model.h declares them; row-major, empty where not known. Beta: r0
/// (Ω), t0 (K), b (K); SteinhartHart: as many as terms, c0, c1, …; Exponential: a, b, c; Polynomial: r0, a1, … (the Van
/// Dusen term is exact); MonotoneTable: the ohms of its points.
struct Covariance {
  std::vector<double> values;
  std::size_t size = 0;
};

class Curve {
 public:
  /// Refuses a model that is not strictly monotone and positive over `established`, or whose numbers are not finite.
  /// `floor` is a standard uncertainty of ln R that no covariance may go below (reading scatter, rounding of a stated
  /// value).
  static Expected<Curve> make(Model model, TemperatureSpan established, Covariance covariance = {}, double floor = 0);

  [[nodiscard]] const Model& model() const;
  [[nodiscard]] TemperatureSpan valid() const;           ///< where the curve answers
  [[nodiscard]] TemperatureSpan established() const;     ///< where it was measured or stated; within valid()
  [[nodiscard]] bool extrapolates(Temperature t) const;  ///< inside valid() but outside established()
  [[nodiscard]] bool falls() const;                      ///< resistance falls as temperature rises

  [[nodiscard]] std::optional<Ohms> resistance(Temperature t) const;   ///< none outside valid()
  [[nodiscard]] std::optional<Temperature> temperature(Ohms r) const;  ///< inverse; none where r is not met in valid()
  [[nodiscard]] std::optional<double> slope(Temperature t) const;      ///< d ln R / dT, 1/K
  /// Standard uncertainty (k = 1) of ln R at t from how well the curve is known; not the part's tolerance. None outside
  /// valid().
  [[nodiscard]] std::optional<double> knowledge(Temperature t) const;

  /// The same curve allowed to answer over `wider` as well; still refuses where the model stops being monotone there.
  /// The one way to extrapolate, so that it is never silent: extrapolates() tells where.
  [[nodiscard]] Expected<Curve> extendedTo(TemperatureSpan wider) const;

  /// The same curve with a bow added to its knowledge: a standard uncertainty of ln R that is nil at the ends of
  /// established(), `middle` half way between them in 1/T, and grows as a parabola beyond. For curves with fewer
  /// parameters than a real sender has bends.
  [[nodiscard]] Curve withBow(double middle) const;
  [[nodiscard]] const Covariance& covariance() const { return covariance_; }
  [[nodiscard]] double floor() const { return floor_; }

  // For the inner loops of pairing: the model itself in bare numbers, T in kelvin and R in ohms, no range check.
  [[nodiscard]] double lnOhms(double kelvin) const;
  [[nodiscard]] double kelvinAt(double lnOhms) const;
  [[nodiscard]] double lnOhmsSlope(double kelvin) const;

 private:
  Curve(Model model, Law law, TemperatureSpan established, Covariance covariance, double floor);
  void settleEnds();
  [[nodiscard]] double bowAt(double kelvin) const;

  Model model_;
  Law law_;
  TemperatureSpan established_;
  TemperatureSpan valid_;
  Covariance covariance_;
  double floor_ = 0;
  double bow_ = 0;
  double lnAtLow_ = 0;   ///< ln R at valid_.low
  double lnAtHigh_ = 0;  ///< ln R at valid_.high
};

}  // namespace ohmkin::curve
