#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin layout: how dates are written in castings and stamps; tries a layout on a code, lists them, adds the shop's
/// own.
class LayoutCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
