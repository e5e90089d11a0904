#pragma once
#include <cli/command.h>
#include <string>

namespace ohmkin::cli {

/// The manual page ohmkin(1) as roff for groff's man macros, UTF-8, from the commands' own data.
std::string manualPage(const Commands& commands);

}  // namespace ohmkin::cli
