#include "demo_catalogue.h"

#include <benchmark/benchmark.h>
#include <catalog/engines.h>
#include <catalog/vehicles.h>
#include <workflow/match.h>
#include <workflow/plan.h>

using namespace ohmkin;

namespace {

const test::DemoCatalogue& demo() {
  static const test::DemoCatalogue one;
  return one;
}

workflow::Question settled() {
  workflow::Question question;
  question.line = "ridgeway utility";
  question.year = ModelYear{1968};
  question.cluster = "gauge package";
  question.casting = "30418";
  return question;
}

void match(benchmark::State& state) {
  const auto catalogue = demo().open();
  for (auto _ : state) benchmark::DoNotOptimize(workflow::match(catalogue, settled()));
}
BENCHMARK(match)->Unit(benchmark::kMillisecond);

void planOfFiveDashesAndTwentyEngines(benchmark::State& state) {
  const auto catalogue = demo().open();
  workflow::PlanQuestion question;
  for (const int year : {1966, 1968, 1970, 1972, 1975}) {
    workflow::Question dash = settled();
    dash.casting.clear();
    dash.year = ModelYear{year};
    question.dashes.push_back(dash);
  }
  for (const std::string& number : catalog::castingNumbers(catalogue)) {
    if (question.engines.size() == 20) break;
    workflow::Question engine;
    engine.casting = number;
    question.engines.push_back(engine);
  }
  for (auto _ : state) {
    const auto plan = workflow::plan(catalogue, question);
    if (!plan) state.SkipWithError(plan.error().sentence().c_str());
    benchmark::DoNotOptimize(plan);
  }
}
BENCHMARK(planOfFiveDashesAndTwentyEngines)->Unit(benchmark::kMillisecond);

}  // namespace
