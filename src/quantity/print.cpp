#include <fmt/format.h>
#include <quantity/decimal_mark.h>
#include <quantity/print.h>
#include <algorithm>
#include <cmath>

namespace ohmkin {
namespace {

/// True minus sign, and no "−0".
std::string number(double value, int decimals, bool plus) {
  std::string text = fixedDecimals(std::abs(value), decimals);
  const bool zero = text.find_first_not_of("0.,") == std::string::npos;
  if (zero) return text;
  return (value < 0 ? "−" : plus ? "+" : "") + text;
}

std::string withoutTrailingZeros(std::string text) {
  if (text.find_first_of(".,") == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.' || text.back() == ',') text.pop_back();
  return text;
}

std::string scaled(double r, const auto& format) {
  if (r >= 1e6) return format(r / 1e6) + " MΩ";
  if (r >= 1e3) return format(r / 1e3) + " kΩ";
  return format(r) + " Ω";
}

std::string_view symbol(TemperatureUnit unit) { return unit == TemperatureUnit::celsius ? "°C" : "°F"; }
std::string_view differenceSymbol(TemperatureUnit unit) { return unit == TemperatureUnit::celsius ? "K" : "F°"; }

}  // namespace

double inUnit(Temperature t, TemperatureUnit unit) {
  return unit == TemperatureUnit::celsius ? inCelsius(t) : inFahrenheit(t);
}

double inUnit(TemperatureDifference d, TemperatureUnit unit) {
  return unit == TemperatureUnit::celsius ? inKelvin(d) : inKelvin(d) * 1.8;
}

std::string print(Temperature t, const DisplayUnits& units, int decimals) {
  return fmt::format("{} {}", number(inUnit(t, units.temperature), decimals, false), symbol(units.temperature));
}

std::string printDifference(TemperatureDifference d, const DisplayUnits& units, int decimals) {
  return fmt::format("{} {}", number(inUnit(d, units.temperature), decimals, true),
                     differenceSymbol(units.temperature));
}

std::string printAmount(TemperatureDifference d, const DisplayUnits& units, int decimals) {
  return fmt::format("{} {}", number(std::abs(inUnit(d, units.temperature)), decimals, false),
                     differenceSymbol(units.temperature));
}

std::string print(Ohms r) {
  return scaled(inOhms(r), [](double x) {
    const int decimals = x >= 99.95 ? 0 : x >= 9.995 ? 1 : 2;
    return fixedDecimals(x, decimals);
  });
}

std::string printNominal(Ohms r) {
  return scaled(inOhms(r), [](double x) { return withoutTrailingZeros(fixedDecimals(x, 3)); });
}

std::string print(Torque t, const DisplayUnits& units) {
  if (units.torque == TorqueUnit::newtonMetre) return fmt::format("{:.0f} N·m", inNewtonMetres(t));
  return fmt::format("{:.0f} lbf·ft", inNewtonMetres(t) / kNewtonMetresPerPoundFoot);
}

std::string print(Length l) {
  if (l.value() >= 1.0) return fixedDecimals(l.value(), 1) + " m";
  return withoutTrailingZeros(fixedDecimals(inMillimetres(l), 1)) + " mm";
}

Expected<DisplayUnits> parseDisplayUnits(std::string_view text, std::string_view where) {
  DisplayUnits units;
  while (!text.empty()) {
    const auto comma = text.find(',');
    const std::string_view word = text.substr(0, comma);
    text = comma == std::string_view::npos ? std::string_view{} : text.substr(comma + 1);
    if (word == "C" || word == "°C") units.temperature = TemperatureUnit::celsius;
    else if (word == "F" || word == "°F") units.temperature = TemperatureUnit::fahrenheit;
    else if (word == "Nm" || word == "N·m") units.torque = TorqueUnit::newtonMetre;
    else if (word == "lbf-ft" || word == "lbf·ft") units.torque = TorqueUnit::poundFoot;
    else
      return refuse("units-unknown", std::string(where), fmt::format("'{}'", word),
                    "C or F, Nm or lbf-ft, for example --units F,lbf-ft");
  }
  return units;
}

}  // namespace ohmkin
