#pragma once
#include <array>
#include <finding/refusal.h>
#include <optional>
#include <quantity/quantity.h>
#include <string_view>
#include <variant>
#include <vector>

/// Resistance–temperature curves of senders. A curve is a value: a model, the span over which it was established, and how
/// well it is known. It answers inside its valid span and nowhere else.
namespace ohmkin::curve {

/// R = r0·exp(b·(1/T − 1/t0)); IEC 60539-1. Two points decide it.
struct Beta {
  Ohms r0;
  Temperature t0;
  double b;  ///< K; above 0 for a falling curve
};

/// 1/T = c0 + c1·L + c2·L³ with L = ln(R/Ω); Steinhart and Hart, Deep-Sea Research 15 (1968) 497. Two terms leave c2 at 0; four
/// terms add c3·L² (the form with all powers).
struct SteinhartHart {
  std::array<double, 4> c;
  int terms = 3;  ///< 2, 3 or 4
};

/// R = a·exp(b/(T + c)), T in kelvin: the form of NIST StRD MGH10.
struct Exponential {
  double a;  ///< Ω
  double b;  ///< K
  double c;  ///< K
};

/// R = r0·(1 + a1·t + a2·t² + …), t in °C; two coefficients are the Callendar–Van Dusen form of IEC 60751 above 0 °C. For
/// below 0 °C the standard's third term c·(t − 100)·t³ is `vanDusen`.
struct Polynomial {
  Ohms r0;
  std::vector<double> a;
  double vanDusen = 0;
};

/// Monotone piecewise cubic (PCHIP) in (1/T, ln R) through at least four measured points.
struct MonotoneTable {
  std::vector<std::pair<Temperature, Ohms>> points;  ///< by rising temperature
};

using Model = std::variant<Beta, SteinhartHart, Exponential, Polynomial, MonotoneTable>;
std::string_view modelName(const Model& model);  ///< "B-parameter", "Steinhart–Hart", …

/// Covariance of the model's parameters in the order they are declared above; row-major, empty where not known.
struct Covariance {
  std::vector<double> values;
  std::size_t size = 0;
};

class Curve {
 public:
  /// Refuses a model that is not strictly monotone and positive over `established`, or whose numbers are not finite.
  /// `floor` is a standard uncertainty of ln R that no covariance may go below (reading scatter, rounding of a stated value).
  static Expected<Curve> make(Model model, TemperatureSpan established, Covariance covariance = {}, double floor = 0);

  [[nodiscard]] const Model& model() const;
  [[nodiscard]] TemperatureSpan valid() const;        ///< where the curve answers
  [[nodiscard]] TemperatureSpan established() const;  ///< where it was measured or stated; within valid()
  [[nodiscard]] bool extrapolates(Temperature t) const;  ///< inside valid() but outside established()
  [[nodiscard]] bool falls() const;                      ///< resistance falls as temperature rises

  [[nodiscard]] std::optional<Ohms> resistance(Temperature t) const;     ///< none outside valid()
  [[nodiscard]] std::optional<Temperature> temperature(Ohms r) const;    ///< inverse; none where r is not met in valid()
  [[nodiscard]] std::optional<double> slope(Temperature t) const;        ///< d ln R / dT, 1/K
  /// Standard uncertainty (k = 1) of ln R at t from how well the curve is known; not the part's tolerance. None outside valid().
  [[nodiscard]] std::optional<double> knowledge(Temperature t) const;

  /// The same curve allowed to answer over `wider` as well; still refuses where the model stops being monotone there. The one
  /// way to extrapolate, so that it is never silent: extrapolates() tells where.
  [[nodiscard]] Expected<Curve> extendedTo(TemperatureSpan wider) const;

  // For the inner loops of pairing: the model itself in bare numbers, T in kelvin and R in ohms, no range check.
  [[nodiscard]] double lnOhms(double kelvin) const;
  [[nodiscard]] double kelvinAt(double lnOhms) const;
  [[nodiscard]] double lnOhmsSlope(double kelvin) const;

 private:
  Curve(Model model, TemperatureSpan established, Covariance covariance, double floor);
  Model model_;
  TemperatureSpan established_;
  TemperatureSpan valid_;
  Covariance covariance_;
  double floor_ = 0;
  bool falls_ = true;
};

}  // namespace ohmkin::curve
