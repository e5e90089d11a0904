#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin movement: a gauge's movement from decade-box readings.
class MovementCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
