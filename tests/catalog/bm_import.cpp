#include <benchmark/benchmark.h>
#include <catalog/bench_writer.h>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numeric>
#include <random>

/// A million rows run,temperature,ohms into the catalogue, beside the sqlite3 program's own .import of the same file
/// into a table of these three columns without a key, which is the least it can be asked to do. Wall time, the disk
/// included. Runs in the order of the file, and mixed at random.

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

constexpr int kRows = 1'000'000;
constexpr int kRuns = 1000;

struct MeasuredRow {
  int run = 0;
  double celsius = 0;
  double ohms = 0;
};

/// A folder that goes away with the program.
class Folder {
 public:
  Folder()
      : path_(std::filesystem::temp_directory_path() / ("ohmkin-bm-import-" + std::to_string(std::random_device{}()))) {
    std::filesystem::create_directory(path_);
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

const std::filesystem::path& folder() {
  static const Folder one;
  return one.path();
}

std::vector<int> order(bool mixed) {
  std::vector<int> all(kRows);
  std::iota(all.begin(), all.end(), 0);
  if (mixed) std::shuffle(all.begin(), all.end(), std::mt19937(1));
  return all;
}

MeasuredRow rowOf(int i) {
  const int step = i % (kRows / kRuns);
  return {i / (kRows / kRuns), 20 + step * 0.087, 3000 / (1 + step * 0.019)};
}

std::filesystem::path csv(bool mixed) {
  auto path = folder() / (mixed ? "mixed.csv" : "ordered.csv");
  if (std::filesystem::exists(path)) return path;
  std::FILE* out = std::fopen(path.c_str(), "w");
  for (const int i : order(mixed)) {
    const MeasuredRow row = rowOf(i);
    std::fprintf(out, "%d,%.3f,%.3f\n", row.run, row.celsius, row.ohms);
  }
  std::fclose(out);
  return path;
}

void forgetPeak() { std::ofstream("/proc/self/clear_refs") << 5; }
double peakMegabytes() {
  std::ifstream status("/proc/self/status");
  std::string word;
  while (status >> word)
    if (word == "VmHWM:") {
      double kib = 0;
      status >> kib;
      return kib / 1024;
    }
  return 0;
}

/// Calls `take` for each row of a file, in blocks: digits and commas, nothing else.
template <class Take>
void plainRows(const std::filesystem::path& file, Take take) {
  std::ifstream in(file, std::ios::binary);
  std::string block(1 << 16, '\0');
  std::size_t kept = 0;
  while (in.read(block.data() + kept, static_cast<std::streamsize>(block.size() - kept)) || in.gcount() > 0) {
    const char* at = block.data();
    const char* const end = at + kept + in.gcount();
    const char* const last = std::find(std::make_reverse_iterator(end), std::make_reverse_iterator(at), '\n').base();
    while (at != last) {
      MeasuredRow row;
      at = std::from_chars(at, last, row.run).ptr + 1;
      at = std::from_chars(at, last, row.celsius).ptr + 1;
      at = std::from_chars(at, last, row.ohms).ptr + 1;
      take(row);
    }
    kept = static_cast<std::size_t>(end - last);
    std::copy(last, end, block.data());
  }
}

template <class Feed>
void import(benchmark::State& state, Feed feed) {
  double peak = 0;
  for (auto _ : state) {
    state.PauseTiming();
    const auto path = folder() / "import.ohmkin";
    std::filesystem::remove(path);
    { Catalogue::create(path); }
    forgetPeak();
    state.ResumeTiming();
    Catalogue catalogue = Catalogue::open(path, Access::readWrite);
    auto writer = BenchWriter::begin(catalogue, {"a.csv", std::string(64, 'a'), 0, ""}, {"bm", "", ""});
    std::vector<RunNumber> runs;
    runs.reserve(kRuns);
    for (int i = 0; i < kRuns; ++i) runs.push_back(writer->beginRun({}));
    feed([&](const MeasuredRow& row) {
      writer->add(runs[static_cast<std::size_t>(row.run)], {row.celsius, row.ohms});
    });
    if (writer->keep().rows != kRows) state.SkipWithError("rows are missing");
    state.PauseTiming();
    peak = peakMegabytes();
    state.ResumeTiming();
  }
  state.counters["peak_MB"] = peak;
  state.SetItemsProcessed(state.iterations() * kRows);
}

void fromFile(benchmark::State& state) {
  const auto file = csv(state.range(0) != 0);
  import(state, [&](auto take) { plainRows(file, take); });
}

void fromMemory(benchmark::State& state) {
  std::vector<MeasuredRow> rows;
  for (const int i : order(state.range(0) != 0)) rows.push_back(rowOf(i));
  import(state, [&](auto take) {
    for (const MeasuredRow& row : rows) take(row);
  });
}

void sqlite3DotImport(benchmark::State& state) {
  const auto file = csv(state.range(0) != 0);
  const auto path = folder() / "baseline.db";
  const auto sqlite = "sqlite3 '" + path.string() + "' ";
  for (auto _ : state) {
    state.PauseTiming();
    std::filesystem::remove(path);
    const int made = std::system(
        (sqlite + "'CREATE TABLE r (run INTEGER NOT NULL, temperature REAL NOT NULL, ohms REAL) STRICT'").c_str());
    state.ResumeTiming();
    if (made != 0 || std::system((sqlite + "'.mode csv' '.import " + file.string() + " r'").c_str()) != 0)
      state.SkipWithError("no sqlite3 program");
  }
  state.SetItemsProcessed(state.iterations() * kRows);
}

}  // namespace

BENCHMARK(sqlite3DotImport)->ArgName("mixed")->Arg(0)->Arg(1)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(fromFile)->ArgName("mixed")->Arg(0)->Arg(1)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(fromMemory)->ArgName("mixed")->Arg(0)->Arg(1)->UseRealTime()->Unit(benchmark::kMillisecond);
