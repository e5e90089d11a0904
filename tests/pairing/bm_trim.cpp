#include <benchmark/benchmark.h>
#include <pairing/trim_proposal.h>
#include "exhaustive_trim.h"
#include "invented_pairs.h"

/// The bounded search beside the plain exhaustive one, on the same pair in the same run.
namespace {

using namespace ohmkin;
using namespace ohmkin::pairing;

constexpr std::size_t kTemperatures = 60;

void bounded(benchmark::State& state, Series series) {
  const auto gauge = test::gaugeFor(test::betaThrough(900, 70));
  const auto sender = test::betaThrough(1500, 62);
  TrimOptions options;
  options.series = series;
  options.pair.rows = kTemperatures;
  std::size_t excluded = 0;
  for (auto _ : state) excluded = searchTrim(gauge, sender, test::band(80, 115), options)->excluded;
  state.counters["excluded"] = static_cast<double>(excluded);
}

void exhaustive(benchmark::State& state, Series series) {
  const auto gauge = test::gaugeFor(test::betaThrough(900, 70));
  const auto sender = test::betaThrough(1500, 62);
  for (auto _ : state)
    benchmark::DoNotOptimize(test::tryEveryNetwork(gauge, sender, test::band(80, 115), series, kTemperatures, 2));
}

void proposed(benchmark::State& state) {
  const auto gauge = test::gaugeFor(test::betaThrough(900, 70));
  const auto sender = test::betaThrough(800, 50);
  for (auto _ : state) benchmark::DoNotOptimize(proposeTrim(gauge, sender, test::band(80, 115)));
}

void table(benchmark::State& state) {
  const auto gauge = test::gaugeFor(test::betaThrough(900, 70));
  const auto sender = test::betaThrough(800, 50);
  for (auto _ : state) benchmark::DoNotOptimize(errorTable(gauge, sender, {}, test::band(80, 115)));
}

BENCHMARK_CAPTURE(bounded, E24, Series::e24)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(exhaustive, E24, Series::e24)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(bounded, E96, Series::e96)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(exhaustive, E96, Series::e96)->Unit(benchmark::kMicrosecond);
BENCHMARK(proposed)->Unit(benchmark::kMicrosecond);
BENCHMARK(table)->Unit(benchmark::kMicrosecond);

}  // namespace
