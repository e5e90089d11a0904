#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin date: reads casting and stamp codes and says when the engine was made, and whether it is the vehicle's first.
class DateCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
