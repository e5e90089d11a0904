#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin search: anything of the catalogue by number or name.
class SearchCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
