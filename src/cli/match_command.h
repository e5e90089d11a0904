#pragma once
#include <cli/command.h>
#include <quantity/print.h>
#include <workflow/answer.h>

namespace ohmkin::cli {

/// ohmkin match: this vehicle, that engine → the sender, or the offset.
class MatchCommand : public Command {
 public:
  [[nodiscard]] const CommandSpec& spec() const override;
  [[nodiscard]] Expected<Exit> run(const Arguments& arguments, Streams streams) const override;
};

/// The answer for a person, at most 100 columns wide.
std::string matchText(const workflow::Answer& answer, const DisplayUnits& units);
/// The answer for a program; keys documented in DEVELOPERS.md under "ohmkin.match".
std::string matchJson(const workflow::Answer& answer);

}  // namespace ohmkin::cli
