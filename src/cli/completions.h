#pragma once
#include <cli/command.h>
#include <string>

namespace ohmkin::cli {

/// A completion script from the commands' own data: commands, options, words, files, and names of the catalogue by
/// asking `ohmkin --names`. Refuses a shell other than bash, zsh and fish.
Expected<std::string> completionScript(const Commands& commands, const std::string& shell);

/// "gauges", as --names takes it; empty for none.
std::string_view namesCode(Names names);
/// Names of the catalogue that begin so, whatever the case, one each: what `ohmkin --names KIND BEGINNING [--catalog
/// FILE]` prints. Refuses an unknown kind, and where no catalogue is named.
Expected<std::vector<std::string>> namesBeginning(const std::vector<std::string>& arguments);

}  // namespace ohmkin::cli
