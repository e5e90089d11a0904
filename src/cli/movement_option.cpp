#include <cli/common_options.h>
#include <cli/movement_option.h>
#include <workflow/movement_document.h>

namespace ohmkin::cli {

OptionSpec movementOption() {
  return {"--movement", "FILE", "its movement as measured: what ohmkin movement --json wrote"};
}

Expected<std::optional<gauge::Movement>> measuredMovement(const Arguments& arguments) {
  if (!arguments.has("--movement")) return std::nullopt;
  const std::string path = arguments.one("--movement");
  const auto text = contentsOf(path);
  if (!text) return refuse("file-missing", "--movement", "'" + path + "'", "a file that can be read");
  auto movement = workflow::readMovementDocument(*text, path);
  if (!movement) return tl::make_unexpected(movement.error());
  return std::move(*movement);
}

}  // namespace ohmkin::cli
