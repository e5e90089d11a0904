#include <benchmark/benchmark.h>
#include <dating/evidence.h>

#include "usual_layouts.h"

using namespace ohmkin;
using namespace ohmkin::dating;

namespace {

const DateSpan kFiftyYears{date(1950, 1, 1), date(2000, 1, 1)};

void decode_one_code(benchmark::State& state) {
  const Layout layout = test::usualLayout("letter-day-digit");
  DecodeOptions options;
  options.window = kFiftyYears;
  for (auto _ : state) benchmark::DoNotOptimize(decode(layout, "C145", options));
}

void decode_mostly_unreadable(benchmark::State& state) {
  const Layout layout = test::usualLayout("six-digits");
  DecodeOptions options;
  options.window = kFiftyYears;
  for (auto _ : state) benchmark::DoNotOptimize(decode(layout, "?????5", options));
}

/// Two heads and the block by their codes with spans, the stamp, the vehicle: everything there is.
void decode_and_posterior_with_all_evidence(benchmark::State& state) {
  const Layout casting = test::usualLayout("letter-day-digit");
  const Layout stamp = test::usualLayout("six-digits");
  DecodeOptions options;
  options.window = kFiftyYears;
  const DateSpan span{date(1972, 8, 1), date(1979, 1, 1)};
  for (auto _ : state) {
    Evidence e;
    e.window = kFiftyYears;
    e.castings = {{"left head", CastingRole::head, span, decode(casting, "C145", options)->readings},
                  {"right head", CastingRole::head, span, decode(casting, "C1?5", options)->readings},
                  {"block", CastingRole::block, {}, decode(casting, "C35", options)->readings}};
    e.stamp = AssemblyStamp{decode(stamp, "040275", options)->readings, false};
    e.vehicle.year = ModelYear{1975};
    benchmark::DoNotOptimize(posterior(e));
  }
}

/// The widest sums: a casting of which only a long span is known.
void posterior_of_a_span_alone(benchmark::State& state) {
  Evidence e;
  e.window = kFiftyYears;
  e.castings = {{"left head", CastingRole::head, {date(1968, 1, 1), date(1979, 1, 1)}, {}}};
  e.vehicle.year = ModelYear{1975};
  for (auto _ : state) benchmark::DoNotOptimize(posterior(e));
}

BENCHMARK(decode_one_code)->Unit(benchmark::kMicrosecond);
BENCHMARK(decode_mostly_unreadable)->Unit(benchmark::kMicrosecond);
BENCHMARK(decode_and_posterior_with_all_evidence)->Unit(benchmark::kMicrosecond);
BENCHMARK(posterior_of_a_span_alone)->Unit(benchmark::kMicrosecond);

}  // namespace
