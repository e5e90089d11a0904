#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin show: everything about one thing.
class ShowCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
