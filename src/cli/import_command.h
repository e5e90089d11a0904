#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin import: files of bench readings into the catalogue, shown first or at once; what came in, and undoing it.
class ImportCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
