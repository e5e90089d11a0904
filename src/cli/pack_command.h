#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin pack: packages of catalogue rows out and in, conflicts with the shop's own rows side by side.
class PackCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
