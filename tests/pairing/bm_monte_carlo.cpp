#include <benchmark/benchmark.h>
#include <pairing/monte_carlo.h>
#include "invented_pairs.h"

/// 100,000 draws of 30 temperatures, on one thread and on two.
namespace {

using namespace ohmkin;
using namespace ohmkin::pairing;

void draws(benchmark::State& state, const TrimNetwork& trim, bool coil) {
  const auto family = test::betaThrough(900, 70);
  const auto gauge = coil ? test::coilGaugeFor(family) : test::gaugeFor(family);
  const auto sender = test::betaThrough(1500, 62).withBow(0.02);
  PairOptions options;
  options.rows = 30;
  const auto table = errorTable(gauge, sender, trim, test::band(80, 115), options).value();
  Draws how;
  how.threads = static_cast<unsigned>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(monteCarlo(gauge, sender, table, how));
}

BENCHMARK_CAPTURE(draws, bare, TrimNetwork(), false)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK_CAPTURE(draws, trimmed, TrimNetwork::parallelThenSeries(ohms(470), ohms(8.2)), false)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(draws, crossedCoil, TrimNetwork(), true)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace
