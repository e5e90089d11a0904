#pragma once
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <quantity/quantity.h>

/// How far a needle may lie and still be called fit. All of it is a judgement, settable, and shown with every verdict:
/// no standard says how wrong a dash gauge may be.
namespace ohmkin::pairing {

struct Limits {
  /// At the hot mark: true temperature there, minus the same for the matched pair.
  TemperatureDifference late = kelvins(3);
  TemperatureDifference low = kelvins(6);   ///< reads low by at most this, from thermostat to hot mark
  TemperatureDifference high = kelvins(8);  ///< reads high by at most this, from thermostat to hot mark
  double lowWeight = 2;  ///< when a trim is sought, a kelvin read low counts as so many read high; ≥ 1
  friend bool operator==(const Limits&, const Limits&) = default;
};

/// Kelvins; the default band begins that far below the thermostat: people look from there up.
inline constexpr double kBelowThermostat = 11;

/// Refuses limits that are not above 0 and finite, or a weight below 1.
Expected<Limits> checked(const Limits& limits);

/// 11 K below the thermostat to the gauge's hot mark. Refuses a thermostat that opens only at or past the hot mark.
Expected<TemperatureSpan> defaultBand(const gauge::Gauge& gauge, Temperature thermostat);

}  // namespace ohmkin::pairing
