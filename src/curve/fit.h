#pragma once
#include <curve/curve.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// From bench readings to a curve that says how well it is known, which readings do not belong, and why this model and
/// no other.
namespace ohmkin::curve {

enum class Direction { heating, cooling };

/// One reading of a sender in a bath. The standard uncertainties are the meter's (of ln R: relative) and the bath
/// reference's; a fit wants them of all readings or of none, and where there are none the scatter about the curve takes
/// their place.
struct Sample {
  Temperature at;
  Ohms ohms;
  Direction direction = Direction::heating;
  double uKelvin = 0;
  double uLnOhms = 0;
};

enum class Form { beta, steinhartHart3, steinhartHart4, exponential, straight, quadratic, cubic, table };
std::string_view formName(Form form);  ///< "Steinhart–Hart with 3 terms", …
std::size_t parametersOf(Form form);   ///< fitted ones; 0 for a table

struct FitOptions {
  std::optional<Form> form;  ///< none: chosen by AICc
  bool robust = true;        ///< look for readings that do not belong; needs 4 more points than parameters
  /// With no uncertainties stated: scatter the same in ohms all along, instead of the same in ln R.
  bool spreadInOhms = false;
};

/// A reading that lies beyond 4.7 standard deviations of the others (Tukey's biweight gives it no weight).
struct Outlier {
  std::size_t index = 0;           ///< in the samples as given
  double lnResidual = 0;           ///< ln of its ohms − ln of the curve's
  TemperatureDifference residual;  ///< the temperature its ohms stand for on the curve, less its own
  std::string reason;              ///< one plain sentence
};

/// Cooling run less heating run at the same bath temperature: positive where the sender still reads hot while it cools
/// (lag).
struct Hysteresis {
  TemperatureDifference difference;
  TemperatureDifference uncertainty;  ///< standard
  bool significant = false;  ///< above 2 standard uncertainties: the curve then lies in the middle of the two runs
};

/// How each form did; AICc none where the readings are too few for it (points < parameters + 3) or the form was
/// refused.
struct Candidate {
  Form form = Form::beta;
  std::optional<double> aicc;
  double scatter = 0;   ///< standard deviation of ln R about it
  std::string refusal;  ///< empty where it could be fitted
};

struct Band {
  Ohms low;
  Ohms high;
  TemperatureDifference half;  ///< the same as half a width in temperature
};

struct Fit {
  Curve curve;  ///< with covariance; established over the readings used
  Form form = Form::beta;
  /// Of every sample as given: ln of its ohms − ln of the curve's; the hysteresis taken off.
  std::vector<double> lnResiduals;
  std::vector<TemperatureDifference> residuals;  ///< the same in kelvin
  std::vector<Outlier> outliers;
  std::optional<Hysteresis> hysteresis;  ///< where both directions have at least two readings
  double scatter = 0;                    ///< standard deviation of ln R about the curve
  double chiSquare = 0;  ///< with stated uncertainties; else the sum of squares of ln R (of ohms with spreadInOhms)
  std::size_t freedom = 0;
  bool stated = false;  ///< uncertainties were stated
  /// False: more scatter than the stated uncertainties explain (95 %); the covariance is widened by it.
  bool consistent = true;
  std::string reason;  ///< why this form, in plain words
  std::vector<Candidate> candidates;

  /// Where the curve lies with this probability, in the established span; none outside the curve's valid span.
  /// Student's t where the scatter was estimated, normal where it was stated.
  [[nodiscard]] std::optional<Band> band(Temperature t, double probability = 0.95) const;
  /// Factor on a standard uncertainty for this probability.
  [[nodiscard]] double coverage(double probability = 0.95) const;
};

/// Least temperature range of the readings: 10 K for two parameters, 20 K for three, 30 K for four, 5 K for a table.
/// Shorter runs determine a slope or a bend so badly that the curve would mislead; a judgement.
TemperatureDifference leastRange(Form form);

/// Refuses fewer points than parameters + 1, a range too short, readings that are not monotone over their range or
/// whose ohms do not clearly change, ohms of 0 or below, uncertainties of some readings only.
///
/// Falling runs are tried as B-parameter, Steinhart–Hart of 3 and 4 terms and a·exp(b/(T + c)); rising ones as
/// polynomials of degree 1 to 3, Steinhart–Hart of 3 terms and the exponential. Where none follows the readings
/// (residuals that go in waves, beyond 1 % or beyond what was stated), the readings themselves become a monotone table.
Expected<Fit> fit(const std::vector<Sample>& samples, const FitOptions& options = {});

}  // namespace ohmkin::curve
