#pragma once
#include <finding/refusal.h>
#include <optional>
#include <quantity/quantity.h>
#include <string_view>
#include <variant>
#include <vector>

/// What turns the sender's ohms into a needle angle. Resistances may be 0 (lead grounded) or infinite (lead open).
namespace ohmkin::gauge {

/// Any linear crossed-coil gauge: angle = grounded + atan2(x·sin sweep, 1 + x·cos sweep), x = Rs/half. Three numbers, all measurable at the posts.
struct CrossedCoil {
  Angle grounded;  ///< needle with the lead grounded: past hot
  Angle sweep;     ///< from there to lead open; 0 < |sweep| < 180, negative where cold lies to the left
  Ohms half;       ///< ohms at exactly half that angle, at 20 °C of the coils
  std::optional<Ohms> feedCoil;    ///< coil between feed and sender post, where measured
  std::optional<Ohms> groundCoil;  ///< coil between sender post and ground, where measured
};

/// Heater and bimetal behind a regulator: deflection ∝ (Vrms/Vn)²·(heater/(heater + Rs))².
struct Bimetal {
  Angle rest;      ///< no current
  Angle grounded;  ///< lead grounded at the regulator's working voltage
  Ohms heater;
  Volts regulated;  ///< RMS, the working voltage of the regulator
};

/// Iron-vane and unknown linear gauges: monotone PCHIP through bench points in u = Rs/(Rs + scale), 0 grounded … 1 open.
struct BenchPoints {
  Ohms scale;
  std::vector<std::pair<double, Angle>> points;  ///< by rising u, at least four
};

using Movement = std::variant<CrossedCoil, Bimetal, BenchPoints>;
std::string_view movementName(const Movement& movement);  ///< "crossed coil", …

/// What else acts on the needle. The defaults are a cluster at 20 °C on a good ground behind a working regulator.
struct Conditions {
  Temperature cluster = celsius(20);  ///< copper: coil ohms grow 0.39 %/K
  Volts supply = volts(13.5);
  bool regulatorWorks = true;  ///< false: the bimetal sees the supply, V² law
  double groundRise = 0;       ///< v of movements: rise of a shared gauge ground by other loads, as a part of the feed
};

/// Refuses numbers out of range: a sweep of 0 or beyond 180°, ohms ≤ 0, fewer than four bench points, points not monotone.
Expected<Movement> checked(Movement movement);

/// Needle angle before the stops; `sender` in [0, ∞].
Angle deflection(const Movement& movement, Ohms sender, const Conditions& conditions = {});
/// The sender's ohms that put the needle there; none where no resistance does.
std::optional<Ohms> ohmsFor(const Movement& movement, Angle angle, const Conditions& conditions = {});

}  // namespace ohmkin::gauge
