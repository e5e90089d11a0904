#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin plan: dashes against engines, side by side.
class PlanCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
