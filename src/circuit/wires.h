#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <string>
#include <vector>

/// Wire for a direct-wiring plan: voltage drop by gauge and length, and the fuse that guards it.
namespace ohmkin::circuit {

/// Diameter of a solid round wire: 0.005 in · 92^((36 − n)/39), the rule of ASTM B258 (from memory). American wire
/// gauge 4 … 40; refuses others.
Expected<Length> diameterOf(int awg);
/// Of annealed copper (International Annealed Copper Standard: 0.15328 Ω·g/m² at 20 °C, 8.89 g/cm³, 0.00393 per kelvin;
/// NBS Circular 31, NBS Handbook 100), solid round wire; stranded wire differs by a few percent. Refuses a length below
/// 0.
Expected<Ohms> ohmsOf(int awg, Length length, Temperature at = celsius(20));
Expected<Volts> dropOf(int awg, Length length, Amperes current, Temperature at = celsius(20));

/// One wire of the plan. Colours are not assumed: they are looked up on the car.
struct Wire {
  std::string name;  ///< "feed"
  std::string from;
  std::string to;
  int awg = 18;
  Length length;
  Amperes current;  ///< the most it carries when all is well
  Volts drop;
  std::string note;
};
struct WirePlan {
  std::vector<Wire> wires;
  Amperes fuse;
  std::vector<Finding> findings;
};
struct WireLengths {
  Length feed = millimetres(1500);
  Length lead = millimetres(3000);
  Length ground = millimetres(1500);
};
/// The thinnest even gauge of 10 … 20 that drops no more than `most` with the current; 20 is the thinnest taken, for
/// its strength (common practice, no source). Refuses where 10 does not do.
Expected<int> wireFor(Length length, Amperes current, Volts most);
/// A fuse of the usual row (1, 2, 3, 5, 7.5, 10 A) not below 1.25 times the current (common practice, no source).
/// Refuses more than 8 A.
Expected<Amperes> fuseFor(Amperes current);
/// A charging system at its highest: what a gauge without a regulator may get (common practice, no source).
inline constexpr double kChargingVolts = 15;
/// Feed with its fuse at the supply, lead, and a ground of its own, for a gauge that draws `current`. `regulated`: the
/// gauge's own regulator stays in the feed, and its housing on ground.
Expected<WirePlan> directWiring(Amperes current, bool regulated, const WireLengths& lengths = {});

}  // namespace ohmkin::circuit
