#include <benchmark/benchmark.h>
#include <exchange/content_hash.h>
#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <fmt/format.h>
#include <algorithm>
#include <sstream>

/// A million rows of curve,temperature,ohms as a shop's bench would leave them behind in years, read and checked.
using namespace ohmkin;
using namespace ohmkin::exchange;

namespace {

constexpr int kRows = 1'000'000;

std::string file(char separator, char decimal) {
  std::string text = fmt::format("curve{0}temperature_c{0}ohms\n", separator);
  for (int i = 0; i < kRows; ++i) {
    std::string line = fmt::format("S-{:05}{}{:.1f}{}{:.2f}\n", i / 100, separator, -40 + (i % 100) * 1.7, separator,
                                   47.0 + static_cast<double>(i * 7919LL % 300000) / 100.0);
    if (decimal != '.') std::replace(line.begin(), line.end(), '.', decimal);
    text += line;
  }
  return text;
}

std::string utf16(const std::string& ascii) {
  std::string wide = "\xFF\xFE";
  for (const char c : ascii) (wide += c) += '\0';
  return wide;
}

class Counting : public ReadingSink {
 public:
  bool row(const ReadingRow& row) override {
    sum += inKelvin(row.at) + (row.ohms ? inOhms(*row.ohms) : 0) + static_cast<double>(row.curve.size());
    return true;
  }
  bool rejected(const RejectedCell&) override { return false; }
  double sum = 0;
};

void read(benchmark::State& state, const std::string& text) {
  const auto proposal = propose(text, "million.csv");
  if (!proposal || !proposal->questions.empty()) return state.SkipWithError("not understood");
  std::istringstream in(text);
  for (auto _ : state) {
    in.clear();
    in.seekg(0);
    Counting counting;
    const auto tally = readRows(in, proposal->plan, "million.csv", counting);
    if (!tally || tally->rows != kRows || tally->rejected != 0) return state.SkipWithError("not all rows were read");
    benchmark::DoNotOptimize(counting.sum);
  }
  state.SetItemsProcessed(state.iterations() * kRows);
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}

// Once, since a benchmark is entered several times.
const std::string& points() {
  static const std::string text = file(',', '.');
  return text;
}
const std::string& commas() {
  static const std::string text = file(';', ',');
  return text;
}

void aMillionRows(benchmark::State& state) { read(state, points()); }
BENCHMARK(aMillionRows)->Unit(benchmark::kMillisecond);

void aMillionRowsDecimalComma(benchmark::State& state) { read(state, commas()); }
BENCHMARK(aMillionRowsDecimalComma)->Unit(benchmark::kMillisecond);

void aMillionRowsUtf16(benchmark::State& state) { read(state, utf16(points())); }
BENCHMARK(aMillionRowsUtf16)->Unit(benchmark::kMillisecond);

void aProposal(benchmark::State& state) {
  const std::string& text = commas();
  for (auto _ : state) benchmark::DoNotOptimize(propose(text, "million.csv"));
}
BENCHMARK(aProposal)->Unit(benchmark::kMillisecond);

void aHash(benchmark::State& state) {
  const std::string& text = points();
  for (auto _ : state) {
    ContentHash hash;
    hash.add(text);
    benchmark::DoNotOptimize(hash.hex());
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(aHash)->Unit(benchmark::kMillisecond);

}  // namespace
