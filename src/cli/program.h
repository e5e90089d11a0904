#pragma once
#include <cli/command.h>
#include <string>
#include <vector>

namespace ohmkin::cli {

/// The whole terminal program but for main: parses, runs, renders what went wrong. `arguments` without the program's
/// name.
int runProgram(const std::vector<std::string>& arguments, const Commands& commands, Streams streams);

/// One command's arguments by its definitions. Unknown options name the nearest known one.
Expected<Arguments> parseArguments(const CommandSpec& spec, std::vector<std::string> arguments);

/// What --help prints: summary, usage, options, an example.
std::string helpText(const CommandSpec& spec);
std::string helpText(const Commands& commands);

}  // namespace ohmkin::cli
