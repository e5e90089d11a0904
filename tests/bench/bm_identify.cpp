#include "invented_families.h"

#include <bench/identify.h>
#include <benchmark/benchmark.h>

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

/// Half two-number families, half measured ones: Steinhart–Hart with a full covariance, as a fit leaves it.
std::vector<FamilyCurve> manyFamilies(std::size_t count) {
  std::mt19937 random(1959);
  std::uniform_real_distribution<double> lnR(4.5, 8.5);
  std::uniform_real_distribution<double> b(2600, 4200);
  std::vector<FamilyCurve> families;
  while (families.size() < count) {
    FamilyCurve family = bench::test::family("family " + std::to_string(families.size()), std::exp(lnR(random)), 20,
                                             b(random), 0.01, 0.1);
    if (families.size() % 2 == 1) {
      std::vector<curve::Sample> samples;
      for (int t = 0; t <= 120; t += 10)
        samples.push_back({celsius(t), ohms(std::exp(family.curve.lnOhms(inKelvin(celsius(t))) + 1e-6 * t * t)),
                           curve::Direction::heating, 0.2, 0.005});
      curve::FitOptions options;
      options.form = curve::Form::steinhartHart3;
      family.curve = curve::fit(samples, options)->curve;
    }
    families.push_back(std::move(family));
  }
  return families;
}

std::vector<Reading> readingsOf(const FamilyCurve& family, std::size_t count) {
  std::vector<Reading> readings;
  for (std::size_t i = 0; i < count; ++i)
    readings.push_back(bench::test::readingOf(family,
                                              5 + 90.0 * static_cast<double>(i + 1) / static_cast<double>(count), 0.03,
                                              0.002 * static_cast<double>(i % 3), 0.006));
  return readings;
}

void identify_against_2000_curves(benchmark::State& state) {
  const auto families = manyFamilies(2000);
  const auto readings = readingsOf(families[777], static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(identify(families, readings));
}

void next_reading_among_2000_curves(benchmark::State& state) {
  const auto families = manyFamilies(2000);
  const auto readings = readingsOf(families[777], static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(nextReading(families, readings));
}

void cold_ohms_against_2000_curves(benchmark::State& state) {
  const auto families = manyFamilies(2000);
  const auto readings = readingsOf(families[777], 1);
  for (auto _ : state) benchmark::DoNotOptimize(quickCheck(families, readings.front()));
}

BENCHMARK(identify_against_2000_curves)->Arg(1)->Arg(5)->Arg(12)->Arg(40)->Unit(benchmark::kMillisecond);
BENCHMARK(next_reading_among_2000_curves)->Arg(1)->Arg(5)->Unit(benchmark::kMillisecond);
BENCHMARK(cold_ohms_against_2000_curves)->Unit(benchmark::kMillisecond);

}  // namespace
