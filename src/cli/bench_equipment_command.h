#pragma once
#include <cli/command.h>

namespace ohmkin::cli {

/// ohmkin equipment: meters, thermometers and baths of the shop, for bench and import to name.
class EquipmentCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

}  // namespace ohmkin::cli
