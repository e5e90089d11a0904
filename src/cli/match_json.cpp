#include <cli/match_command.h>
#include <workflow/match_document.h>

namespace ohmkin::cli {

std::string matchJson(const workflow::Answer& answer) { return workflow::matchDocument(answer); }

}  // namespace ohmkin::cli
