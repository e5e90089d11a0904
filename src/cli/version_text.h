#pragma once
#include <string>
#include <string_view>

namespace ohmkin::cli {

std::string_view version();  ///< "0.1.0", as the build has it
/// What --version prints: the program, then the libraries it was built with, one a line.
std::string versionText();

}  // namespace ohmkin::cli
