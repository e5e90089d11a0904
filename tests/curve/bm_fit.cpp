#include <benchmark/benchmark.h>
#include <curve/bare_fit.h>
#include <curve/fit.h>

#include <array>
#include <cmath>

/// Fits per second on one core, covariance included. scipy_fit_baseline.py times the same fits on the same points.
using namespace ohmkin;
using namespace ohmkin::curve;

namespace {

struct Points {
  explicit Points(std::size_t n = 12) {
    for (std::size_t i = 0; i < n; ++i) {
      const double t = 293.15 + 8 * static_cast<double>(i);
      const double x = 1 / t;
      kelvin.push_back(t);
      ohmsOf.push_back(std::exp(std::log(100) + 3500 * (x - 1 / 323.15) + 2e5 * (x - 1 / 323.15) * (x - 1 / 353.15) +
                                0.003 * std::sin(7.0 * static_cast<double>(i))));
      lnOhms.push_back(std::log(ohmsOf.back()));
      uKelvin.push_back(0.1);
      samples.push_back({ohmkin::kelvin(t), ohms(ohmsOf.back()), Direction::heating, 0.1, 0});
    }
  }
  std::vector<double> kelvin, ohmsOf, lnOhms, uKelvin;
  std::vector<Sample> samples;
};

/// From ohms, so with their logarithms, which SciPy is given ready.
void steinhartHart12Points(benchmark::State& state) {
  const Points points;
  std::array<double, 12> ln{};
  for (auto _ : state) {
    for (std::size_t i = 0; i < ln.size(); ++i) ln[i] = std::log(points.ohmsOf[i]);
    benchmark::DoNotOptimize(fitSteinhartHart({points.kelvin, ln, points.uKelvin}, static_cast<int>(state.range(0))));
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(steinhartHart12Points)->Arg(3)->Arg(4);

void exponential12Points(benchmark::State& state) {
  const Points points;
  std::array<double, 12> ln{};
  for (auto _ : state) {
    for (std::size_t i = 0; i < ln.size(); ++i) ln[i] = std::log(points.ohmsOf[i]);
    benchmark::DoNotOptimize(fitExponential({points.kelvin, ln}));
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(exponential12Points);

void beta12Points(benchmark::State& state) {
  const Points points;
  for (auto _ : state) benchmark::DoNotOptimize(fitBeta({points.kelvin, points.lnOhms}));
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(beta12Points);

/// Everything: checks, outliers, choice among four models, the reason in words, residuals.
void wholeFit(benchmark::State& state) {
  const Points points(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(fit(points.samples));
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(wholeFit)->Arg(12)->Arg(40);

template <class Make>
void lookUp(benchmark::State& state, Make&& make) {
  const auto curve = make();
  double t = 300;
  for (auto _ : state) {
    t = t > 380 ? 300 : t + 0.37;
    benchmark::DoNotOptimize(curve.kelvinAt(curve.lnOhms(t)));
  }
}
void forwardAndBackBeta(benchmark::State& state) {
  lookUp(state, [] { return *Curve::make(Beta{ohms(100), celsius(50), 3500}, {celsius(20), celsius(120)}); });
}
BENCHMARK(forwardAndBackBeta);
void forwardAndBackSteinhartHart(benchmark::State& state) {
  lookUp(state, [] {
    return *Curve::make(SteinhartHart{{8.8e-4, 2.5e-4, 1.9e-7, 0}, 3}, {celsius(20), celsius(120)});
  });
}
BENCHMARK(forwardAndBackSteinhartHart);
void forwardAndBackTable(benchmark::State& state) {
  lookUp(state, [] {
    MonotoneTable table;
    for (int t = 20; t <= 120; t += 10) table.points.emplace_back(celsius(t), ohms(500 * std::exp(-0.03 * (t - 20))));
    return *Curve::make(table, {celsius(20), celsius(120)});
  });
}
BENCHMARK(forwardAndBackTable);

}  // namespace
