#include "demo_catalogue.h"

#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <workflow/bench_work.h>
#include <workflow/import_readings.h>
#include <array>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <random>

/// Bringing in a file from drop to fitted curve, a million rows of it beside the sqlite3 program's own .import of the
/// same file, and whose curve it is among 2,000.

using namespace ohmkin;

namespace {

constexpr int kMillion = 1'000'000;

const test::DemoCatalogue& demo() {
  static const test::DemoCatalogue one;
  return one;
}

double ohmsAt(double celsius_, double factor) {
  return factor * 108 * std::exp(3420 * (1 / (celsius_ + 273.15) - 1 / 347.0));
}

workflow::ReadingsFile fortyPoints() {
  std::mt19937 random(1959);
  std::normal_distribution<double> noise(0, 0.004);
  std::string text = "Bench;probe 3\r\n\r\nTemp. [°C];R [Ω]\r\n";
  for (int i = 0; i < 40; ++i) {
    const double t = 40 + 2 * i;
    text += fmt::format("{};{:.2f}\r\n", t, ohmsAt(t, 1 + noise(random)));
  }
  return {"forty.csv", {}, text};
}

/// From the bytes of a dropped file to fit, outliers and whose curve it is.
void fortyPointsFromDropToFittedCurve(benchmark::State& state) {
  const auto catalogue = demo().open();
  const auto file = fortyPoints();
  workflow::ImportAsked asked;
  asked.part = "BR-2215";
  asked.meter = "0.8 %";
  asked.bath = "0.5 K";
  for (auto _ : state) {
    const auto families = workflow::benchFamilies(catalogue);
    const auto preview = workflow::previewImport(catalogue, families, file, asked);
    if (!preview || !preview->runs.front().fit) state.SkipWithError("no fit");
    benchmark::DoNotOptimize(preview);
  }
}
BENCHMARK(fortyPointsFromDropToFittedCurve)->Unit(benchmark::kMillisecond);

workflow::BenchFamilies twoThousand() {
  std::mt19937 random(1959);
  std::uniform_real_distribution<double> lnR(3, 8);
  std::uniform_real_distribution<double> b(2600, 4200);
  workflow::BenchFamilies families;
  for (int i = 0; i < 2000; ++i) {
    const curve::Beta model{ohms(std::exp(lnR(random))), celsius(60), b(random)};
    families.curves.push_back(
        {fmt::format("family {}", i), *curve::Curve::make(model, {celsius(0), celsius(130)}, {}, 0.01), 0.1});
    families.ids.emplace_back(families.curves.back().name);
    families.temperaturesStated.push_back(true);
  }
  return families;
}

workflow::BenchQuestion readings(const workflow::BenchFamilies& families, int count) {
  workflow::BenchQuestion question;
  question.meter = "0.8 %";
  for (int i = 0; i < count; ++i) {
    workflow::HandReading hand;
    hand.bath.shown = celsius(20 + 80.0 * i / count);
    hand.bath.thermometer = "0.5 K";
    hand.shown = *families.curves[777].curve.resistance(*hand.bath.shown);
    question.readings.push_back(hand);
  }
  return question;
}

/// All that is said after a reading: doubt, fit, whose curve among 2,000, the next temperature.
void benchAnswerAmong2000Curves(benchmark::State& state) {
  const auto catalogue = demo().open();
  const auto families = twoThousand();
  const auto question = readings(families, static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(workflow::benchWork(catalogue, families, question));
}
BENCHMARK(benchAnswerAmong2000Curves)->Arg(1)->Arg(6)->Arg(40)->Unit(benchmark::kMillisecond);

enum Kind : std::int64_t { oneRun, manyRuns, log };

const std::filesystem::path& million(Kind kind) {
  static std::array<std::filesystem::path, 3> made;
  auto& path = made[static_cast<std::size_t>(kind)];
  if (!path.empty()) return path;
  path = demo().beside(fmt::format("million-{}.csv", static_cast<int>(kind)).c_str());
  std::ofstream out(path, std::ios::binary);
  out << (kind == oneRun     ? "temperature_c,ohms\n"
          : kind == manyRuns ? "curve,temperature_c,ohms\n"
                             : "seconds,temperature_c,ohms\n");
  std::string lines;
  for (int i = 0; i < kMillion; ++i) {
    const int bath = i / 62500;
    const double t = kind == log ? 40.0 + 5 * bath : 40 + static_cast<double>(i * 7919LL % kMillion) * 8e-5;
    if (kind == manyRuns) fmt::format_to(std::back_inserter(lines), "run {},", (i * 31) % 500);
    if (kind == log) fmt::format_to(std::back_inserter(lines), "{},", i);
    fmt::format_to(std::back_inserter(lines), "{:.3f},{:.3f}\n", t, ohmsAt(t, 1));
    if (lines.size() > 1U << 20U) {
      out << lines;
      lines.clear();
    }
  }
  out << lines;
  return path;
}

void aMillionRowsImported(benchmark::State& state) {
  const auto& file = million(static_cast<Kind>(state.range(0)));
  const auto target = demo().beside("million.ohmkin");
  for (auto _ : state) {
    state.PauseTiming();
    std::filesystem::copy_file(demo().file(), target, std::filesystem::copy_options::overwrite_existing);
    auto catalogue = catalog::Catalogue::open(target, catalog::Access::readWrite);
    const auto families = workflow::benchFamilies(catalogue);
    state.ResumeTiming();
    const auto imported = workflow::importFile(catalogue, families, workflow::readingsFile(file), {}, "bench");
    if (!imported) state.SkipWithError(imported.error().sentence().c_str());
  }
}
BENCHMARK(aMillionRowsImported)
    ->ArgName("kind")
    ->Arg(oneRun)
    ->Arg(manyRuns)
    ->Arg(log)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

void sqlite3DotImportOfTheSame(benchmark::State& state) {
  const auto kind = static_cast<Kind>(state.range(0));
  const auto& file = million(kind);
  const auto target = demo().beside("million.sqlite");
  const std::string sqlite = "sqlite3 '" + target.string() + "' ";
  const std::string columns = kind == oneRun     ? "temperature REAL NOT NULL, ohms REAL"
                              : kind == manyRuns ? "curve TEXT NOT NULL, temperature REAL NOT NULL, ohms REAL"
                                                 : "seconds REAL, temperature REAL NOT NULL, ohms REAL";
  for (auto _ : state) {
    state.PauseTiming();
    std::filesystem::remove(target);
    state.ResumeTiming();
    if (std::system(fmt::format("{}'CREATE TABLE r ({}) STRICT'", sqlite, columns).c_str()) != 0 ||
        std::system(fmt::format("{}'.mode csv' '.import --skip 1 {} r'", sqlite, file.string()).c_str()) != 0)
      state.SkipWithError("no sqlite3 program");
  }
}
BENCHMARK(sqlite3DotImportOfTheSame)
    ->ArgName("kind")
    ->Arg(oneRun)
    ->Arg(manyRuns)
    ->Arg(log)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace
