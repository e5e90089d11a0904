#pragma once
#include <bench/bath.h>
#include <bench/meter.h>
#include <curve/fit.h>
#include <span>

/// A bench reading: a temperature and ohms that belong together, each with its standard uncertainty.
namespace ohmkin::bench {

using curve::Direction;

struct Reading {
  Temperature at;
  TemperatureDifference u;  ///< standard, 0 or above
  Ohms ohms;                ///< above 0
  double uLnOhms = 0;       ///< standard, relative; 0 or above
  std::optional<Direction> direction;
};

/// For curve::fit; a reading whose direction is not known counts as heating.
curve::Sample sampleOf(const Reading& reading);

/// How the reading was taken; what was not looked at is none. Unknown is not wrong: it is asked for, not held against.
struct Practice {
  std::optional<double> perMinute;  ///< ln of the ohms' change a minute while the reading was written down, unsigned
  std::optional<bool> immersedPastHex;  ///< water over the hex, nothing touching the vessel
  std::optional<bool> stirred;
  std::optional<bool> probesSwapped;  ///< read both ways round and averaged
};

inline constexpr double kSteadyPerMinute = 0.005;  ///< of the ohms: steadier than this is a reading

struct TakenReading {
  Reading reading;
  std::vector<Finding> findings;
};

/// Puts bath, meter and practice together. What bad practice costs is added to the temperature's uncertainty (standard,
/// all from memory, no source): 0.1 K in a stirred bath, 0.6 K in one that is not or of which it is not known; 1 K
/// where the hex is dry; what the sender moves in a minute where it is not steady (to the ohms).
/// Self-heating is not corrected for; its size counts as rectangular limits of the temperature. Refuses temperatures or
/// ohms that are not finite.
Expected<TakenReading> take(const BathReference& bath, const MeterReading& meter, const Practice& practice,
                            std::optional<Direction> direction = {});

/// Probes one way round and the other: the mean, and a finding where the two differ by more than 1 % (a voltage in the
/// circuit: damp sender, dissimilar metals, feed still connected). Refuses ohms not above 0.
struct Swapped {
  Ohms mean;
  std::vector<Finding> findings;
};
Expected<Swapped> averageSwapped(Ohms oneWay, Ohms otherWay);

}  // namespace ohmkin::bench
