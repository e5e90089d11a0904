#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// `ohmkin log`: who changed what when, and taking a change back.
class LogCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
