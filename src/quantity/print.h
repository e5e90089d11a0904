#pragma once
#include <quantity/parse.h>
#include <quantity/quantity.h>
#include <string>

/// Printing quantities for a person: rounded to what the number can carry, proper signs and spaces, unit always there.
namespace ohmkin {

enum class TorqueUnit { newtonMetre, poundFoot };

/// What the person chose to see. Kept by the window and given at the terminal by --units.
struct DisplayUnits {
  TemperatureUnit temperature = TemperatureUnit::celsius;
  TorqueUnit torque = TorqueUnit::newtonMetre;
  friend bool operator==(const DisplayUnits&, const DisplayUnits&) = default;
};

std::string print(Temperature t, const DisplayUnits& units, int decimals = 0);  ///< "95 °C", "203 °F"
/// A difference, with its sign: "+1 K", "−7 K", "−13 F°" (Fahrenheit degrees of difference); 0 carries no sign.
std::string printDifference(TemperatureDifference d, const DisplayUnits& units, int decimals = 0);
/// An amount without sign: "11 K", "20 F°".
std::string printAmount(TemperatureDifference d, const DisplayUnits& units, int decimals = 0);
std::string print(Ohms r);         ///< three significant digits: "51.0 Ω", "1.37 kΩ"
std::string printNominal(Ohms r);  ///< a resistor's marked value, no trailing zeros: "510 Ω", "1.2 kΩ"
std::string print(Torque t, const DisplayUnits& units);  ///< "15 N·m", "11 lbf·ft"
std::string print(Length l);                             ///< "2.4 m" from one metre up, else "11 mm"
double inUnit(Temperature t, TemperatureUnit unit);      ///< the bare number, for an axis
double inUnit(TemperatureDifference d, TemperatureUnit unit);

/// "C", "°F", "lbf·ft,F" … as given to --units; comma separated.
Expected<DisplayUnits> parseDisplayUnits(std::string_view text, std::string_view where = {});

}  // namespace ohmkin
