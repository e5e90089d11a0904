#include <cli/program.h>
#include <iostream>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace {

/// Likelihoods over all days considered are some hundred kilobytes each, made and dropped several times a question. As
/// mappings of their own every one would be paged in anew, a fifteenth of a match with a dated casting; the heap hands
/// the same pages out again.
void keepLargeArraysInTheHeap() {
#ifdef __GLIBC__
  constexpr int kLargest = 32 << 20;  // bytes; the most glibc takes
  mallopt(M_MMAP_THRESHOLD, kLargest);
  mallopt(M_TRIM_THRESHOLD, 2 * kLargest);
#endif
}

}  // namespace

int main(int argc, char** argv) {
  keepLargeArraysInTheHeap();
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  try {
    return ohmkin::cli::runProgram(arguments, ohmkin::cli::allCommands(), {std::cout, std::cerr});
  } catch (const std::exception& error) {
    std::cerr << "ohmkin: " << error.what() << "\n";
    return static_cast<int>(ohmkin::cli::Exit::badInput);
  }
}
