#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// `ohmkin edit`: shows, changes, adds, renames and deletes a thing of the catalogue.
class EditCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
