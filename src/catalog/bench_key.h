#pragma once
#include <catalog/bench_records.h>

/// Inside this room only: the one key of a reading holds its run and its place in it, as schema/002_bench.sql says.
namespace ohmkin::catalog {

inline constexpr std::int64_t kMostReadingsOfRun = (std::int64_t{1} << 24) - 1;
constexpr std::int64_t readingKey(RunNumber run, std::int64_t ordinal) {
  return run.value * (kMostReadingsOfRun + 1) + ordinal;
}
constexpr RunNumber runOf(std::int64_t key) { return {key / (kMostReadingsOfRun + 1)}; }

}  // namespace ohmkin::catalog
