#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>
#include <vector>

/// The temperature a sender is compared with, and how well that is known.
namespace ohmkin::bench {

/// `u` is a standard uncertainty (k = 1) of the water at the sender, stirring not yet counted.
struct BathReference {
  Temperature at;
  TemperatureDifference u;
  std::string evidence;  ///< "water boiling at 1 600 m, barometer not reduced"
  std::vector<Finding> findings;
};

/// Crushed ice of pure water, packed, with just enough water to fill the gaps; or cubes from the tap in water.
enum class Ice { crushedPure, tapCubes };
/// 0 °C. Standard uncertainty 0.05 K or 0.2 K; from memory, no source. Anything dissolved only lowers it.
BathReference icePoint(Ice ice);

/// A forecast, a telephone and most wall barometers give pressure reduced to sea level; a sensor in the shop does not.
enum class Reduced { toSeaLevel, no, notKnown };
struct Barometer {
  Pressure shown;
  Reduced reduced = Reduced::notKnown;
  Pressure u = kilopascals(0.1);  ///< standard, of the instrument; 0 or above
};

struct BoilingWater {
  std::optional<Length> altitude;       ///< geopotential, or as a map has it: see boiling.h
  Length altitudeU = millimetres(3e4);  ///< standard, 0 or above; 30 m is a map's
  std::optional<Barometer> barometer;
  bool plain = true;  ///< nothing dissolved in it
};

/// Altitude alone: the standard atmosphere's boiling point, with the weather's ±0.6 K as rectangular limits. Altitude
/// and a barometer reduced to sea level: reduced back along the standard atmosphere (ISO 2533:1975), with 0.4 % of the
/// pressure for each kilometre, since a weather service may reduce by the day's temperature instead. A barometer that
/// is not reduced needs no altitude. Not known whether: with an altitude the one reading that weather could have made
/// (station pressure within 6 kPa of the standard) is taken and said; where both or neither could, the answer is the
/// refusal `barometer-reduced-question`, and its sentence is the question to ask. 0.1 K (standard) for the water's
/// superheat; from memory, no source.
///
/// Refuses water with something dissolved, a reduced pressure without altitude, neither altitude nor barometer.
Expected<BathReference> boilingPoint(const BoilingWater& water);

/// A thermometer in the bath beside the sender. `accuracy` is what it came with: limits (± on the data sheet, taken as
/// rectangular) or a standard uncertainty from its certificate. Refuses an accuracy not above 0.
enum class Stated { limits, standardUncertainty };
Expected<BathReference> referenceThermometer(Temperature shown, TemperatureDifference accuracy, Stated stated,
                                             const std::string& name = "thermometer");

}  // namespace ohmkin::bench
