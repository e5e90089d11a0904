#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin stock: what is on the shelf, and every piece that comes or goes.
class StockCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
