#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin fault: what may be wrong with a needle that misreads, and the next best test.
class FaultCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
