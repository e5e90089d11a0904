#pragma once
#include <finding/finding.h>
#include <gauge/box_reading.h>
#include <array>

/// A movement found on the bench from decade-box readings.
namespace ohmkin::gauge {

/// Points on a stop say only "at or past it". They are left out of the least squares, and the fitted law must then take
/// the needle to the stop or past it at their ohms, within three standard uncertainties; where it does not, a finding
/// names them. Beside three free points a censored likelihood would add little, and it would hide such a
/// contradiction in the estimate.
struct MovementFit {
  Movement movement;
  /// Of the three parameters, row-major: a crossed coil's grounded (°), sweep (°), ln half; a bimetal's rest (°),
  /// grounded (°), ln heater. Grown by χ²/freedom where the readings scatter more than their uncertainty says.
  std::array<double, 9> covariance{};
  double chiSquare = 0;
  int freedom = 0;  ///< free points less three; with none, nothing tells whether the law holds
  std::size_t onStops = 0;
  std::vector<Finding> findings;

  /// Standard uncertainty of the needle's angle at these ohms, degrees, from how well the movement is known.
  [[nodiscard]] double knowledge(Ohms sender) const;
};

/// Least squares by Levenberg–Marquardt from the best of a grid of starts. Refuses readings that are no numbers, fewer
/// than three free points at different ohms, and readings so close together that they do not tell the three numbers
/// apart.
Expected<MovementFit> fitCrossedCoil(const std::vector<BoxReading>& readings);
/// The same for a bimetal behind a regulator that works; `regulated` is its RMS voltage.
Expected<MovementFit> fitBimetal(const std::vector<BoxReading>& readings, Volts regulated);

}  // namespace ohmkin::gauge
