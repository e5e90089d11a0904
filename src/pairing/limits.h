#pragma once
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <quantity/quantity.h>

/// How far a needle may lie and still be called fit. All of it is a judgement, settable, and shown with every verdict:
/// no standard says how wrong a dash gauge may be.
namespace ohmkin::pairing {

struct Limits {
  TemperatureDifference late =
      kelvins(3);  ///< at the hot mark: true temperature there, minus the same for the matched pair
  TemperatureDifference low = kelvins(6);   ///< reads low by at most this, from thermostat to hot mark
  TemperatureDifference high = kelvins(8);  ///< reads high by at most this, from thermostat to hot mark
  double lowWeight = 2;  ///< when a trim is sought, a kelvin read low counts as so many read high; ≥ 1
  friend bool operator==(const Limits&, const Limits&) = default;
};

inline constexpr double kBelowThermostat =
    11;  ///< K; the default band begins that far below: people look from there up

/// Refuses limits that are not above 0 and finite, or a weight below 1.
Expected<Limits> checked(const Limits& limits);

/// 11 K below the thermostat to the gauge's hot mark. Refuses a thermostat that opens only at or past the hot mark.
Expected<TemperatureSpan> defaultBand(const gauge::Gauge& gauge, Temperature thermostat);

}  // namespace ohmkin::pairing
