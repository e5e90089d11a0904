#pragma once
#include <bench/reading.h>

/// From a log of a bath that is warmed or cools to the points where it stood still.
namespace ohmkin::bench {

struct LogRow {
  double seconds = 0;  ///< from any start; never falling
  Temperature at;
  std::optional<Ohms> ohms;  ///< none: overload
};

struct SteadyOptions {
  double perMinute = kSteadyPerMinute;  ///< |d ln R/dt| over a dwell stays below
  double dwellSeconds = 60;             ///< and does so for at least this long
  double longestGapSeconds = 300;       ///< rows further apart do not belong to one dwell
};

/// Means over the dwell; the scatters are standard deviations of one row (n − 1), drift within the dwell included.
struct SteadyPoint {
  std::size_t firstRow = 0;
  std::size_t lastRow = 0;  ///< inclusive
  std::size_t rows = 0;     ///< with ohms
  Temperature at;
  TemperatureDifference scatter;
  Ohms ohms;  ///< geometric mean
  double scatterLnOhms = 0;
  std::optional<Direction> direction;  ///< from where it was reached; none where the log does not show it
  /// With the uncertainty of bath and meter added in quadrature to the scatter; the scatter is not divided by √n, since
  /// the rows of a log follow one another and are not independent.
  [[nodiscard]] Reading reading(TemperatureDifference uBath, double uLnMeter) const;
};

/// A dwell that keeps on drifting below the limit is cut into points that differ by 0.5 % (perMinute) of ohms at most.
/// Empty where the log is never still. Refuses time that goes back, numbers that are not finite, ohms of 0 and below,
/// options not above 0.
Expected<std::vector<SteadyPoint>> steadyPoints(std::span<const LogRow> log, const SteadyOptions& options = {});

}  // namespace ohmkin::bench
