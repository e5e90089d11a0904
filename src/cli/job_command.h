#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin job: what was asked, what was answered then, what was fitted.
class JobCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
