#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin fit: a curve through measured readings, with how well it is known, what does not belong, and why this model.
class FitCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
