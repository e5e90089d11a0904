#include <benchmark/benchmark.h>

#include "invented_circuits.h"

using namespace ohmkin;
using namespace ohmkin::circuit;

namespace {

/// What the page asks for after every answer: the next test, over all singles and pairs.
void nextTest(benchmark::State& state, const CircuitFacts& facts) {
  const Predictions predictions = test::predictionsOf(facts);
  std::size_t settled = 0;
  for (auto _ : state) settled += conclude(predictions, Symptom::low, {})->settled ? 1 : 0;
  benchmark::DoNotOptimize(settled);
  state.counters["cases"] = static_cast<double>(predictions.cases().size());
}

/// Once for a circuit: every test solved under every case.
void predictions(benchmark::State& state, const CircuitFacts& facts) {
  for (auto _ : state) benchmark::DoNotOptimize(test::predictionsOf(facts).cases().size());
}

/// The baselines. What no answer can do without: the likelihoods alone.
void weighed(benchmark::State& state, const CircuitFacts& facts) {
  const Predictions predictions = test::predictionsOf(facts);
  for (auto _ : state) benchmark::DoNotOptimize(weigh(predictions, Symptom::low, {})->twoFaults);
}

/// And the same table with every test of every case solved by itself.
void predictionsOneByOne(benchmark::State& state, const CircuitFacts& facts) {
  const auto circuit = *GaugeCircuit::make(facts);
  const Predictions known = test::predictionsOf(facts);
  for (auto _ : state) {
    for (const Case& c : known.cases()) {
      Condition condition = circuit.healthy();
      for (std::size_t i = 0; i < c.faults.size(); ++i)
        condition = with(condition, known.faults().faults[c.faults[i]], c.severities[i]);
      for (const TradeTest& t : known.tests().tests) benchmark::DoNotOptimize(predict(circuit, t, condition)->front());
    }
  }
}

}  // namespace

BENCHMARK_CAPTURE(nextTest, crossed_coil, test::shuntedFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(nextTest, bimetal, test::bimetalFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(weighed, crossed_coil, test::shuntedFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(weighed, bimetal, test::bimetalFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(predictions, crossed_coil, test::shuntedFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(predictions, bimetal, test::bimetalFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(predictionsOneByOne, crossed_coil, test::shuntedFacts())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(predictionsOneByOne, bimetal, test::bimetalFacts())->Unit(benchmark::kMillisecond);
