#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin bench: readings with a meter and a bath: whose curve, is it good, what to read next; kept where asked.
class BenchCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
