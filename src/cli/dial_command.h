#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin dial: the offset card of a pair, and the dial that would tell the truth, at true size.
class DialCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
