/// In libFuzzer's place where there is none: every file of the folders named goes through the target, and then inputs
/// made of them by chance, always the same, for two seconds.
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void run(const std::string& input) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(input.data()), input.size());
}

std::string changed(std::string input, const std::vector<std::string>& all, std::mt19937& random) {
  for (unsigned times = 1 + random() % 4; times > 0; --times) {
    const std::size_t at = input.empty() ? 0 : random() % input.size();
    switch (random() % 5) {
      case 0:
        if (!input.empty()) input[at] = static_cast<char>(random());
        break;
      case 1:
        input.insert(at, 1, static_cast<char>(random()));
        break;
      case 2:
        if (!input.empty()) input.erase(at, 1 + random() % 8);
        break;
      case 3:
        if (!input.empty()) input[at] = static_cast<char>(input[at] ^ (1 << (random() % 8)));
        break;
      default: {
        const std::string& other = all[random() % all.size()];
        const std::size_t from = other.empty() ? 0 : random() % other.size();
        input.replace(at, std::string::npos, other, from);
      }
    }
  }
  return input;
}

}  // namespace

int main(int count, char** arguments) {
  std::vector<std::string> all;
  for (int i = 1; i < count; ++i)
    for (const auto& entry : std::filesystem::directory_iterator(arguments[i])) {
      std::ifstream in(entry.path(), std::ios::binary);
      std::ostringstream text;
      text << in.rdbuf();
      all.push_back(text.str());
    }
  if (all.empty()) return 1;
  for (const std::string& input : all) run(input);
  std::mt19937 random(1959);
  std::size_t runs = all.size();
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(2);
  for (; std::chrono::steady_clock::now() < end && runs < 20'000; ++runs)
    run(changed(all[random() % all.size()], all, random));
  std::printf("%zu inputs\n", runs);
  return 0;
}
