#include <bench/steady.h>
#include <benchmark/benchmark.h>

#include <cmath>

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

/// A bath that climbs in steps, ten rows a second: the longest log a shop brings.
std::vector<LogRow> longLog(std::size_t rows) {
  std::vector<LogRow> log(rows);
  for (std::size_t i = 0; i < rows; ++i) {
    const double seconds = 0.1 * static_cast<double>(i);
    const double step = std::floor(seconds / 600);
    const double t = 20 + std::fmod(step, 16) * 5 - 5 * std::exp(-(seconds - 600 * step) / 40);
    log[i] = {seconds, celsius(t), ohms(100 * std::exp(3500 * (1 / (t + 273.15) - 1 / 333.15)))};
  }
  return log;
}

void steady_points_of_a_log(benchmark::State& state) {
  const auto log = longLog(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(steadyPoints(log));
}
BENCHMARK(steady_points_of_a_log)->Arg(10'000)->Arg(1'000'000)->Unit(benchmark::kMillisecond);

}  // namespace
