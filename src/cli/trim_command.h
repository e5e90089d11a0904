#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin trim: the best resistors for a pair that misreads, and what happens when one of them fails.
class TrimCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
