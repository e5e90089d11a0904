#pragma once
#include <curve/bare_fit.h>
#include <curve/fit.h>

/// One form fitted to one set of readings, outliers found; the parts fit() is put together from.
namespace ohmkin::curve {

/// Readings as columns, by the order given.
struct Readings {
  explicit Readings(const std::vector<Sample>& samples, bool spreadInOhms);

  [[nodiscard]] std::size_t size() const { return kelvin.size(); }
  [[nodiscard]] BarePoints bare() const;  ///< views; valid while this lives
  /// Standard deviation of ln R of reading i, or its unit where not stated.
  [[nodiscard]] double spread(std::size_t i, double slope) const;
  [[nodiscard]] KelvinSpan range() const;  ///< of readings with weight
  [[nodiscard]] std::size_t used() const;  ///< readings with weight

  std::vector<double> kelvin, lnOhms, uKelvin, uLnOhms, weight;
  std::vector<Direction> direction;
  bool stated = false;
  bool inOhms = false;
};

struct Trial {
  Form form;
  Curve curve;
  std::vector<double> lnResiduals;
  std::vector<std::size_t> outliers;
  double chiSquare = 0;  ///< over the readings used
  double scatter = 0;
  std::size_t used = 0;
  std::size_t freedom = 0;
  bool consistent = true;
};

// What plain and robust fits share.
tl::unexpected<Refusal> undetermined(Form form);
BareFit bareFit(Form form, const BarePoints& points);
/// Chi-square that readings with these stated uncertainties exceed in one case of twenty.
double mostChiSquare(std::size_t freedom);
/// Residuals, scatter, chi-square over the readings with weight.
void describe(Trial& trial, const Readings& readings);

/// Fits with the weights as they are.
Expected<Trial> tryForm(Form form, const Readings& readings);
/// Looks for outliers first: Huber's loss to find the middle and the scale (median of the residuals), then Tukey's
/// biweight from there; what that casts out is confirmed by a t test before the biweight is settled with the scatter of
/// the readings that stay. Where nothing falls out, the plain fit; otherwise the biweight's curve with the covariance
/// of the readings that stay.
Expected<Trial> tryFormRobustly(Form form, Readings readings);
/// The readings averaged where they repeat and joined by a monotone table; its covariance is theirs (or the roughness
/// of the run).
Expected<Trial> tryTable(const Readings& readings);

/// AICc of a trial among trials on the same readings; none where points < parameters + 3.
std::optional<double> aicc(const Trial& trial, bool stated);
/// True where the residuals, ordered by temperature, follow each other too closely for noise (von Neumann's ratio, 99.9
/// %).
bool goesInWaves(const Trial& trial, const Readings& readings);

// Standard deviations at which each loss is 95 % efficient for normal readings (Huber, Robust Statistics, 1981; Tukey's
// from memory).
inline constexpr double kTukey = 4.685;
inline constexpr double kHuber = 1.345;

}  // namespace ohmkin::curve
