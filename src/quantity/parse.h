#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <string_view>
#include <utility>

/// Reading quantities as people type them: "95 °C", "203F", "51", "1.2 kΩ", "1k2", "20 lbf·ft". `where` names the
/// argument or cell in the refusal. Bare numbers take the unit the caller names; nothing is guessed beyond that.
namespace ohmkin {

enum class TemperatureUnit { celsius, fahrenheit };

/// A finite number, decimal point or decimal comma, optional sign and exponent. Refuses NaN, infinities, trailing text.
Expected<double> parseNumber(std::string_view text, std::string_view where = {});

inline constexpr double kHottestCelsius = 1000;  ///< beyond any coolant, oil or exhaust sender

/// Above absolute zero and up to kHottestCelsius. Units: °C C °F F K; a bare number is in `bare`.
Expected<Temperature> parseTemperature(std::string_view text, TemperatureUnit bare, std::string_view where = {});

/// Above 0 Ω and finite. Units: none, Ω, ohm, ohms, R, k, kΩ, M, MΩ; the multiplier may stand for the point: 1k2.
Expected<Ohms> parseOhms(std::string_view text, std::string_view where = {});

/// "LOW:HIGH"; refuses a reversed or empty band.
Expected<TemperatureSpan> parseBand(std::string_view text, TemperatureUnit bare, std::string_view where = {});

/// "T=R": one reading of a sender, temperature and ohms.
Expected<std::pair<Temperature, Ohms>> parseReading(std::string_view text, TemperatureUnit bare,
                                                    std::string_view where = {});

/// N·m, Nm, lbf·ft, lbf-ft, ft-lb, lbf·in; a bare number is refused, since the two units differ by a third.
Expected<Torque> parseTorque(std::string_view text, std::string_view where = {});

}  // namespace ohmkin
