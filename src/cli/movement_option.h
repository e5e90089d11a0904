#pragma once
#include <cli/command.h>
#include <gauge/movement.h>
#include <optional>

/// --movement: a gauge's movement as it was measured, in place of the catalogue's.
namespace ohmkin::cli {

OptionSpec movementOption();
/// None where the option was not given. Refuses a file that does not read or is no such document.
Expected<std::optional<gauge::Movement>> measuredMovement(const Arguments& arguments);

}  // namespace ohmkin::cli
