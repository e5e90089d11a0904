/// Starts programs in turn, each as often as the others, and compares the time from start to end of each.
///
///   compare_processes OHMKIN CATALOGUE [runs, 200 if not given] [FILE.json, for bench_table.py]
///
/// The measure is `sqlite3 CATALOGUE 'select 1'`: the least a program can do with the same file. The programs take
/// turns, so that whatever else the machine does falls on all of them alike; the median is reported, the tenth and
/// ninetieth percentile beside it. Ratios are of medians.
#include <fcntl.h>
#include <fmt/core.h>
#include <spawn.h>
#include <sys/wait.h>

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

extern char** environ;  // NOLINT(readability-redundant-declaration): glibc declares it as well

namespace {

struct Contender {
  std::string name;
  std::vector<std::string> command;
  int expectedExit = 0;
  std::vector<double> milliseconds{};
};

[[noreturn]] void give_up(const std::string& why) {
  fmt::print(stderr, "compare_processes: {}\n", why);
  std::exit(2);
}

/// Runs the command once with its output thrown away; the time until it has ended.
double run(const Contender& contender) {
  std::vector<char*> arguments;
  std::vector<std::string> words = contender.command;
  arguments.reserve(words.size());
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);

  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, 1, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&files, 2, "/dev/null", O_WRONLY, 0);
  const auto start = std::chrono::steady_clock::now();
  pid_t child = 0;
  if (posix_spawnp(&child, arguments[0], &files, nullptr, arguments.data(), environ) != 0)
    give_up("cannot start " + words[0]);
  int status = 0;
  waitpid(child, &status, 0);
  const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - start;
  posix_spawn_file_actions_destroy(&files);
  if (!WIFEXITED(status) || WEXITSTATUS(status) != contender.expectedExit)
    give_up(contender.name + " did not do what it should");
  return taken.count();
}

double quantile(const std::vector<double>& sorted, double share) {
  return sorted[static_cast<std::size_t>(std::lround(share * static_cast<double>(sorted.size() - 1)))];
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) give_up("OHMKIN CATALOGUE [runs] [FILE.json]");
  const std::string ohmkin = argv[1];
  const std::string catalogue = argv[2];
  int runs = 200;
  if (argc > 3) {
    const std::string_view given = argv[3];
    const auto read = std::from_chars(given.data(), given.data() + given.size(), runs);
    if (read.ec != std::errc() || runs < 1) give_up("runs: a number above 0");
  }

  std::vector<Contender> contenders{
      {"sqlite3, select 1", {"sqlite3", catalogue, "select 1"}},
      {"ohmkin --version", {ohmkin, "--version"}},
      {"match, by options",
       {ohmkin, "match", "--catalog", catalogue, "--vehicle", "ridgeway utility", "--year", "1968", "--cluster",
        "gauge package", "--casting", "30418"}},
      {"match, typed text",
       {ohmkin, "match", "--catalog", catalogue, "1968", "ridgeway", "utility", "gauge", "package", "casting", "30418",
        "dated", "H221"}},
      {"match, four branches", {ohmkin, "match", "--catalog", catalogue, "1968", "ridgeway", "utility"}},
      {"pair", {ohmkin, "pair", "--catalog", catalogue, "--gauge", "A", "--sender", "B"}},
      {"trim", {ohmkin, "trim", "--catalog", catalogue, "--gauge", "A", "--sender", "B"}},
  };
  for (const Contender& contender : contenders) run(contender);  // once for the disk
  for (int i = 0; i < runs; ++i) {
    for (Contender& contender : contenders) contender.milliseconds.push_back(run(contender));
  }

  double measure = 0;
  std::string json;
  fmt::print("{:<24}{:>10}{:>10}{:>10}{:>9}\n", fmt::format("{} runs each, in turn", runs), "median ms", "10 %", "90 %",
             "ratio");
  for (Contender& contender : contenders) {
    std::sort(contender.milliseconds.begin(), contender.milliseconds.end());
    const double median = quantile(contender.milliseconds, 0.5);
    if (measure == 0) measure = median;
    fmt::print("{:<24}{:>10.2f}{:>10.2f}{:>10.2f}{:>9.2f}\n", contender.name, median,
               quantile(contender.milliseconds, 0.1), quantile(contender.milliseconds, 0.9), median / measure);
    json += fmt::format(R"({}{{"name": "{}", "real_time": {}, "time_unit": "ms"}})", json.empty() ? "" : ",\n",
                        contender.name, median);
  }
  if (argc > 4) std::ofstream(argv[4]) << fmt::format("{{\"benchmarks\": [{}]}}\n", json);
  return 0;
}
