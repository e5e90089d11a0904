#include <pairing/limits.h>

#include <fmt/format.h>
#include <cmath>

namespace ohmkin::pairing {

Expected<Limits> checked(const Limits& limits) {
  for (const auto& [value, name] : {std::pair{limits.late, "late"}, {limits.low, "low"}, {limits.high, "high"}})
    if (!(inKelvin(value) > 0) || !std::isfinite(inKelvin(value)))
      return refuse("limit-out-of-range", name, fmt::format("{:g} K", inKelvin(value)), "a limit above 0 K");
  if (!(limits.lowWeight >= 1) || !std::isfinite(limits.lowWeight))
    return refuse("limit-out-of-range", "low weight", fmt::format("{:g}", limits.lowWeight),
                  "a weight of 1 or more: reading low is never the lesser evil");
  return limits;
}

Expected<TemperatureSpan> defaultBand(const gauge::Gauge& gauge, Temperature thermostat) {
  const Temperature hot = gauge.hotMark();
  if (!std::isfinite(inKelvin(thermostat)) || thermostat >= hot)
    return refuse("thermostat-past-hot-mark", "thermostat", fmt::format("{:.0f} °C", inCelsius(thermostat)),
                  fmt::format("a thermostat that opens below the hot mark at {:.0f} °C", inCelsius(hot)));
  return TemperatureSpan{thermostat - kelvins(kBelowThermostat), hot};
}

}  // namespace ohmkin::pairing
