#include <cli/program.h>
#include <iostream>

int main(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  try {
    return ohmkin::cli::runProgram(arguments, ohmkin::cli::allCommands(), {std::cout, std::cerr});
  } catch (const std::exception& error) {
    std::cerr << "ohmkin: " << error.what() << "\n";
    return static_cast<int>(ohmkin::cli::Exit::badInput);
  }
}
