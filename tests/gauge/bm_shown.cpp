#include "invented_gauges.h"

#include <benchmark/benchmark.h>

using namespace ohmkin;

namespace {

gauge::Gauge made(const std::optional<gauge::Movement>& movement) {
  const curve::Curve family = test::inventedFamily();
  const auto marks = test::trueMarks(movement.value_or(test::inventedCoil()), family);
  return *gauge::Gauge::make(marks, {-80}, {80}, movement, family);
}

/// The inner loop of a trim search: 60 senders' ohms, one reading each.
void shownAtOhms(benchmark::State& state, const gauge::Gauge& gauge) {
  double sum = 0;
  for (auto _ : state)
    for (int i = 0; i < 60; ++i) sum += gauge.shownAtOhms(25.0 + 7 * i);
  benchmark::DoNotOptimize(sum);
  state.SetItemsProcessed(state.iterations() * 60);
}

}  // namespace

BENCHMARK_CAPTURE(shownAtOhms, crossed_coil, made(test::inventedCoil()));
BENCHMARK_CAPTURE(shownAtOhms, bimetal, made(test::inventedBimetal()));
BENCHMARK_CAPTURE(shownAtOhms, bench_points, made(test::inventedBench()));
BENCHMARK_CAPTURE(shownAtOhms, unknown_movement, made(std::nullopt));
