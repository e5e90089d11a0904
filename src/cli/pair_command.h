#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin pair: one gauge, one sender, what the needle shows against what is true.
class PairCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
