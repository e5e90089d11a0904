#pragma once
#include <curve/kelvin_span.h>
#include <curve/model.h>
#include <array>
#include <span>

/// 1/T = c0 + c1·L + c2·L³ + c3·L², L = ln(R/Ω), made ready for inner loops. L → T is direct. T → L solves the cubic:
/// in closed form for the usual signs (c1, c2 > 0, no square term), by guarded Newton steps on the branch in use
/// otherwise.
///
/// A cubic may pass the same temperatures on several branches. Looked for between 1 mΩ and 1 GΩ; a falling branch goes
/// before a rising one, and of two falling branches the one at more ohms is meant (for the three-term form the other
/// lies below one ohm).
namespace ohmkin::curve {

class SteinhartHartLaw {
 public:
  static Expected<SteinhartHartLaw> make(const SteinhartHart& model, KelvinSpan span);

  [[nodiscard]] double lnOhms(double kelvin) const;  ///< NaN off the branch
  [[nodiscard]] double kelvinAt(double lnOhms) const { return 1.0 / reciprocal(lnOhms); }
  [[nodiscard]] double slope(double kelvin) const;
  [[nodiscard]] std::size_t parameters() const { return terms_; }
  /// d ln R / d (c0, c1, …) for as many as there are terms
  void gradient(double kelvin, std::span<double> out) const;

 private:
  [[nodiscard]] double reciprocal(double l) const { return c_[0] + l * (c_[1] + l * (c_[3] + l * c_[2])); }
  [[nodiscard]] double reciprocalSlope(double l) const { return c_[1] + l * (2 * c_[3] + 3 * l * c_[2]); }
  [[nodiscard]] bool takeBranch(KelvinSpan span);
  [[nodiscard]] double solvedOnBranch(double reciprocalKelvin) const;

  std::array<double, 4> c_{};
  std::size_t terms_ = 3;
  enum class Way { line, closedForm, newton } way_ = Way::line;
  double halfWidth_ = 0;  ///< 2·√(p/3) of the depressed cubic L³ + pL + q, closed form only
  double scale_ = 0;      ///< −q → sinh argument, closed form only
  double branchLow_ = 0;  ///< ln Ω
  double branchHigh_ = 0;
};

}  // namespace ohmkin::curve
