#pragma once
#include <finding/finding.h>
#include <gauge/box_reading.h>
#include <string_view>

/// A movement found on the bench from decade-box readings.
namespace ohmkin::gauge {

struct FittedNumber {
  std::string_view name;  ///< "grounded", "half", …
  std::string_view unit;  ///< "°", "Ω", or nothing
  double value = 0;
  double uncertainty = 0;  ///< standard
};

/// Points on a stop say only "at or past it". They are left out of the least squares, and the fitted law must then take
/// the needle to the stop or past it at their ohms, within three standard uncertainties; where it does not, a finding
/// names them. Beside three free points a censored likelihood would add little, and it would hide such a
/// contradiction in the estimate.
struct MovementFit {
  Movement movement;
  std::vector<FittedNumber> numbers;
  /// Of the numbers in that order, row-major, ohms as their natural logarithms. Grown by χ²/freedom where the readings
  /// scatter more than their uncertainty says.
  std::vector<double> covariance;
  double chiSquare = 0;
  int freedom = 0;  ///< free points less the numbers; with none, nothing tells whether the law holds
  std::size_t onStops = 0;
  std::vector<Finding> findings;

  /// Standard uncertainty of the needle's angle at these ohms and kStandardVolts, degrees, from how well the movement
  /// is known.
  [[nodiscard]] double knowledge(Ohms sender) const;
};

/// Least squares by Levenberg–Marquardt from the best of a grid of starts. Refuses readings that are no numbers, fewer
/// than three free points at different ohms, and readings so close together that they do not tell the three numbers
/// apart.
Expected<MovementFit> fitCrossedCoil(const std::vector<BoxReading>& readings);
/// The same for a bimetal behind a regulator that works; `regulated` is its RMS voltage.
Expected<MovementFit> fitBimetal(const std::vector<BoxReading>& readings, Volts regulated);

/// A crossed coil with a return magnet, read at two supplies or more. At one supply the magnet is not to be seen: its
/// field only gives the three numbers other values. `keyOff` is the needle without current, `uncertainty` of reading
/// it in degrees; the coils' ohms by ohmmeter at the posts, where known, settle how the sender weakens the coils' field
/// (weakening = feed coil × ground coil / their sum, for coils tapped at the sender post).
/// Refuses what fitCrossedCoil() refuses, fewer than four free points, supplies that differ by less than 1 V, and
/// readings that show no magnet (its strength not above two standard uncertainties, or not told from the coils').
struct KeyOffNeedle {
  Angle needle;
  double uncertainty = 1;
};
struct CoilOhms {
  Ohms feed;
  Ohms ground;
};
Expected<MovementFit> fitMagneticCoil(const std::vector<BoxReading>& readings, KeyOffNeedle keyOff,
                                      const std::optional<CoilOhms>& coils = std::nullopt);

}  // namespace ohmkin::gauge
