#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin backup: copies of the catalogue, made, looked over, put back; and what reads of a damaged one.
class BackupCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
