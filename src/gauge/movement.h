#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

/// What turns the sender's ohms into a needle angle. Resistances may be 0 (lead grounded) or infinite (lead open).
namespace ohmkin::gauge {

/// What a gauge is stated for and fed with where nothing else is said: a charging system with the engine running.
inline constexpr double kStandardVolts = 13.5;

/// A small magnet that takes the needle home without current. It makes a crossed coil depend on the supply after all.
struct ReturnMagnet {
  double strength = 0;  ///< its field as a part of the coils' own, lead grounded, kStandardVolts, coils at 20 °C
  Angle pull;           ///< where it alone would turn the needle
  Ohms weakening;  ///< the sender's ohms at which the coils' currents share a denominator twice that of a grounded lead
};

/// Any linear crossed-coil gauge: angle = grounded + atan2(x·sin sweep, 1 + x·cos sweep), x = Rs/half. Three numbers,
/// all measurable at the posts.
struct CrossedCoil {
  Angle grounded;                  ///< needle with the lead grounded: past hot
  Angle sweep;                     ///< from there to lead open; 0 < |sweep| < 180, negative where cold lies to the left
  Ohms half;                       ///< ohms at exactly half that angle, at 20 °C of the coils
  std::optional<Ohms> feedCoil;    ///< coil between feed and sender post, where measured
  std::optional<Ohms> groundCoil;  ///< coil between sender post and ground, where measured
  std::optional<ReturnMagnet> magnet = std::nullopt;  ///< then the three numbers above are those of the coils alone
};

/// Heater and bimetal behind a regulator: deflection ∝ (Vrms/Vn)²·(heater/(heater + Rs))².
struct Bimetal {
  Angle rest;      ///< no current
  Angle grounded;  ///< lead grounded at the regulator's working voltage
  Ohms heater;
  Volts regulated;  ///< RMS, the working voltage of the regulator
};

/// Iron-vane and unknown linear gauges: monotone PCHIP through bench points in u = Rs/(Rs + scale), 0 grounded … 1
/// open. Short of the first and past the last point the needle is continued along the end's chord; established() tells
/// where.
struct BenchPoints {
  Ohms scale;
  std::vector<std::pair<double, Angle>> points;  ///< by rising u, at least four
};

using Movement = std::variant<CrossedCoil, Bimetal, BenchPoints>;
std::string_view movementName(const Movement& movement);  ///< "crossed coil", …

/// What else acts on the needle. The defaults are a cluster at 20 °C on a good ground behind a working regulator.
///
///  1. Cluster temperature acts on the copper of crossed coils and bench points; a bimetal's heater is resistance wire
///     and its strip compensated.
///  2. Supply acts on a bimetal whose regulator is stuck, missing or has lost its case ground, and on a crossed coil
///     with a return magnet.
///  3. A rise of the gauge's ground acts on a crossed coil tapped at the sender post as if the sender had other ohms,
///     which takes both coils' ohms; where they are not known, and for bench points, it is left out, and unanswered()
///     says so. It lifts a working regulator's case, so that the bimetal sees that much more. With a return magnet the
///     small change of the coils' field strength by the rise is neglected.
struct Conditions {
  Temperature cluster = celsius(20);  ///< copper: coil ohms grow 0.39 %/K
  Volts supply = volts(kStandardVolts);
  bool regulatorWorks = true;  ///< false: the bimetal sees the supply, V² law
  /// Open-circuit rise of a shared gauge ground by other loads, as a part of the feed; 0 ≤ v < 1.
  double groundRise = 0;
  Ohms groundOhms = ohms(0);  ///< resistance of that shared ground
};
inline constexpr double kCopperPerKelvin = 0.0039;  ///< IACS copper near 20 °C (NBS Handbook 100: 0.00393)
/// What of the conditions could not be applied for want of knowledge, as a sentence; empty where all of it was.
std::string_view unanswered(const Movement& movement, const Conditions& conditions);

/// Refuses numbers out of range: a sweep of 0 or beyond 180°, ohms ≤ 0, fewer than four bench points, points not
/// monotone.
Expected<Movement> checked(const Movement& movement);

/// Needle angle before the stops; `sender` in [0, ∞].
Angle deflection(const Movement& movement, Ohms sender, const Conditions& conditions = {});
/// The sender's ohms that put the needle there; none where no resistance does.
std::optional<Ohms> ohmsFor(const Movement& movement, Angle angle, const Conditions& conditions = {});
/// False where bench points had to be continued beyond the first or last of them.
bool established(const Movement& movement, Ohms sender);

/// The gauge with a resistor from its feed post to its sender post: still a crossed coil, with other numbers. Coils
/// tapped at the sender post; refuses where their ohms are not known or the resistor is not above 0. The result's coils
/// can no longer be told apart by an ohmmeter at the posts, so it carries none.
Expected<CrossedCoil> withFeedResistor(const CrossedCoil& coil, Ohms resistor);

}  // namespace ohmkin::gauge
