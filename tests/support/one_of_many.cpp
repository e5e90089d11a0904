#include "one_of_many.h"
#include <cstdio>
#include <filesystem>
#include <map>
#include <string>

namespace ohmkin::test {

namespace {

using Run = int (*)(int, char**);

std::map<std::string, Run>& tests() {
  static std::map<std::string, Run> byName;
  return byName;
}

}  // namespace

OneOfMany::OneOfMany(const char* file, Run run) { tests()[std::filesystem::path(file).stem().string()] = run; }

}  // namespace ohmkin::test

/// The program is reached by one link a test, named as the test is.
int main(int argc, char** argv) {
  const auto& tests = ohmkin::test::tests();
  const auto test = tests.find(std::filesystem::path(argc > 0 ? argv[0] : "").filename().string());
  if (test != tests.end()) return test->second(argc, argv);
  std::fputs("Several tests in one; call it by one of their names:\n", stderr);
  for (const auto& [name, run] : tests) std::fprintf(stderr, "  %s\n", name.c_str());
  return 2;
}
