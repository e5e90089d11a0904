#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin demo: writes the demo catalogue, a scenario of our own invention.
class DemoCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
