// What opening a catalogue and asking it a match's worth of questions costs, beside the bare library doing nothing
// much.
#include "small_catalogue.h"

#include <benchmark/benchmark.h>
#include <catalog/engines.h>
#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/joints.h>
#include <catalog/senders.h>
#include <catalog/snapshot.h>
#include <catalog/vehicles.h>
#include <sqlite3.h>

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

/// The small catalogue with 60 more senders, about what a demo holds.
const std::filesystem::path& file() {
  static const test::Folder folder;
  static const std::filesystem::path made = [] {
    const auto path = folder.path("a.ohmkin");
    const Catalogue catalogue = test::smallCatalogue(path);
    catalogue.connection().database().exec(
        "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 60) INSERT INTO sender SELECT 'BR-' "
        "|| (2000 + i), 'sender ' || i, "
        "'variable sender', 'fa', '1/4-18 NPT', 'blade', 11, 17, 9, 13, 'case', 1960, 1970, 'd', 'p' FROM n");
    return path;
  }();
  return made;
}

void ask(const Catalogue& catalogue) {
  const Snapshot snapshot(catalogue);
  benchmark::DoNotOptimize(linesNamed(catalogue, "tarn ridge"));
  benchmark::DoNotOptimize(clusters(catalogue, LineKey{"l1"}, ModelYear{1967}));
  benchmark::DoNotOptimize(gauge(catalogue, GaugeKey{"g1"}));
  benchmark::DoNotOptimize(family(catalogue, FamilyKey{"fa"}));
  benchmark::DoNotOptimize(originalEngines(catalogue, LineKey{"l1"}, ModelYear{1965}));
  benchmark::DoNotOptimize(castingsNumbered(catalogue, "30418a"));
  benchmark::DoNotOptimize(ports(catalogue, CastingKey{"30-418 A"}));
  benchmark::DoNotOptimize(threads(catalogue));
  benchmark::DoNotOptimize(adaptersInto(catalogue, ThreadKey{"1/4-18 NPT"}));
  benchmark::DoNotOptimize(pigtailsFor(catalogue, TerminalKey{"blade"}));
  const std::vector<ThreadKey> fitting{ThreadKey{"1/4-18 NPT"}, ThreadKey{"M12x1.5"}};
  benchmark::DoNotOptimize(sendersWithThreads(catalogue, fitting));
  benchmark::DoNotOptimize(originalSenders(catalogue, LineKey{"l1"}, EngineKey{"e1"}, ModelYear{1965}));
  benchmark::DoNotOptimize(replacements(catalogue, SenderKey{"SN-10.1"}));
  benchmark::DoNotOptimize(benchCurves(catalogue, SenderKey{"SN-102"}));
}

void BareSelectOne(benchmark::State& state) {
  const std::string name = file().string();
  for (auto _ : state) {
    sqlite3* handle = nullptr;
    sqlite3_stmt* statement = nullptr;
    sqlite3_open_v2(name.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr);
    sqlite3_prepare_v2(handle, "select 1", -1, &statement, nullptr);
    sqlite3_step(statement);
    sqlite3_finalize(statement);
    sqlite3_close(handle);
  }
}
BENCHMARK(BareSelectOne)->Unit(benchmark::kMicrosecond);

void BareCountOfOneTable(benchmark::State& state) {  // the least that reads the schema
  const std::string name = file().string();
  for (auto _ : state) {
    sqlite3* handle = nullptr;
    sqlite3_stmt* statement = nullptr;
    sqlite3_open_v2(name.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr);
    sqlite3_prepare_v2(handle, "select count(*) from thread", -1, &statement, nullptr);
    sqlite3_step(statement);
    sqlite3_finalize(statement);
    sqlite3_close(handle);
  }
}
BENCHMARK(BareCountOfOneTable)->Unit(benchmark::kMicrosecond);

void OpenAlone(benchmark::State& state) {
  (void)file();
  for (auto _ : state) benchmark::DoNotOptimize(Catalogue::open(file(), Access::readOnly));
}
BENCHMARK(OpenAlone)->Unit(benchmark::kMicrosecond);

void OpenAndAMatchsQuestions(benchmark::State& state) {
  (void)file();
  for (auto _ : state) ask(Catalogue::open(file(), Access::readOnly));
}
BENCHMARK(OpenAndAMatchsQuestions)->Unit(benchmark::kMicrosecond);

void AMatchsQuestionsOnceOpen(benchmark::State& state) {
  const Catalogue catalogue = Catalogue::open(file(), Access::readOnly);
  for (auto _ : state) ask(catalogue);
}
BENCHMARK(AMatchsQuestionsOnceOpen)->Unit(benchmark::kMicrosecond);

void OnePointQuestion(benchmark::State& state) {
  const Catalogue catalogue = Catalogue::open(file(), Access::readOnly);
  const Snapshot snapshot(catalogue);
  for (auto _ : state) benchmark::DoNotOptimize(sender(catalogue, SenderKey{"BR-2030"}));
}
BENCHMARK(OnePointQuestion)->Unit(benchmark::kMicrosecond);

}  // namespace
