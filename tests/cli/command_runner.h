#pragma once
#include <cli/program.h>
#include <sstream>
#include <string>
#include <vector>

namespace ohmkin::test {

struct Ran {
  int exit = 0;
  std::string out;
  std::string err;
};

/// The whole terminal program in-process.
inline Ran run(const std::vector<std::string>& arguments) {
  static const cli::Commands commands = cli::allCommands();
  std::ostringstream out, err;
  const int exit = cli::runProgram(arguments, commands, {out, err});
  return {exit, out.str(), err.str()};
}

}  // namespace ohmkin::test
