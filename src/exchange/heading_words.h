#pragma once
#include <exchange/reading_plan.h>
#include <optional>

namespace ohmkin::exchange {

/// What a heading says about its column: "Bath temp. (°C)", "R/kΩ", "kOhm", "t [s]", "Sender".
struct HeadingMeaning {
  std::optional<Role> role;
  std::optional<ColumnUnit> unit;
  bool surroundings = false;  ///< a thermometer of the room or the instrument, or a set point
  bool bath = false;          ///< the thermometer in the bath
  bool another = false;       ///< another quantity: volts, humidity, a deviation
};
HeadingMeaning headingMeaning(std::string_view heading);

}  // namespace ohmkin::exchange
