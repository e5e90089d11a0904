// What every key typed into the box costs, from the first character on, at 10,000, 100,000 and 1,000,000 where-used
// rows; beside it an FTS5 table of the same texts asked with its own rank, which is what a program gets without an
// index of its own. Opening, and reading the index, apart.
#include "small_catalogue.h"
#include "typed_queries.h"

#include <benchmark/benchmark.h>
#include <catalog/search.h>
#include <catalog/search_documents.h>
#include <catalog/search_index.h>
#include <sqlite3.h>
#include <algorithm>
#include <chrono>
#include <ctime>
#include <map>

using namespace ohmkin;
using namespace ohmkin::catalog;

namespace {

constexpr int kQueries = 1000;
constexpr int kBareQueries = 12;  // of a second and more each

const std::filesystem::path& file(std::int64_t rows) {
  static const test::Folder folder;
  static std::map<std::int64_t, std::filesystem::path> made;
  const auto found = made.find(rows);
  if (found != made.end()) return found->second;
  const auto path = folder.path(std::to_string(rows) + ".ohmkin");
  (void)test::largeCatalogue(path, rows);
  return made.emplace(rows, path).first->second;
}

/// What stands in the box after each key.
std::vector<std::string> keys(std::int64_t rows, int queries) {
  test::TypedQueries typed(test::LargeSizes(rows), 11);
  std::vector<std::string> all;
  for (int q = 0; q < queries; ++q) {
    const std::string text = typed.next();
    for (std::size_t n = 1; n <= text.size(); ++n) all.push_back(text.substr(0, n));
  }
  return all;
}

class Times {
 public:
  template <class Work>
  void measure(const Work& work) {
    const double own = ownMilliseconds();
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() - start;
    all_.push_back(taken.count());
    own_.push_back(ownMilliseconds() - own);
  }
  /// By the clock, and what of that this thread had: they differ where other programs want the processors too.
  void report(benchmark::State& state, const std::string& what) {
    const auto counters = [&](std::vector<double>& of, const std::string& name) {
      std::sort(of.begin(), of.end());
      const auto at = [&](double share) {
        return of[static_cast<std::size_t>(share * static_cast<double>(of.size() - 1))];
      };
      state.counters[name + "_p50_ms"] = at(0.5);
      state.counters[name + "_p99_ms"] = at(0.99);
      state.counters[name + "_max_ms"] = of.back();
    };
    state.counters[what + "_keys"] = static_cast<double>(all_.size());
    counters(all_, what);
    counters(own_, what + "_own");
  }

 private:
  static double ownMilliseconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
  }
  std::vector<double> own_;
  std::vector<double> all_;
};

void EveryKey(benchmark::State& state) {
  const Catalogue catalogue = Catalogue::open(file(state.range(0)), Access::readOnly);
  const auto typed = keys(state.range(0), kQueries);
  Search search(catalogue);
  Times any, first, second;
  for (auto _ : state)
    for (const std::string& text : typed) {
      const auto ask = [&] { benchmark::DoNotOptimize(search.find({text, {}, 20, {}})); };
      if (text.size() == 1) first.measure(ask);
      else if (text.size() == 2) second.measure(ask);
      else any.measure(ask);
    }
  first.report(state, "one");
  second.report(state, "two");
  any.report(state, "more");
}
BENCHMARK(EveryKey)->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Iterations(1)->Unit(benchmark::kMillisecond);

void OpenAlone(benchmark::State& state) {
  (void)file(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(Catalogue::open(file(state.range(0)), Access::readOnly));
}
BENCHMARK(OpenAlone)->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Unit(benchmark::kMillisecond);

void OpenAndTheFirstKey(benchmark::State& state) {
  (void)file(state.range(0));
  for (auto _ : state) {
    const Catalogue catalogue = Catalogue::open(file(state.range(0)), Access::readOnly);
    Search search(catalogue);
    benchmark::DoNotOptimize(search.find({"t", {}, 20, {}}));
  }
}
BENCHMARK(OpenAndTheFirstKey)->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Unit(benchmark::kMillisecond);

void TheWholeIndexAnew(benchmark::State& state) {
  const Catalogue catalogue = Catalogue::open(file(state.range(0)), Access::readWrite);
  for (auto _ : state) rebuildIndex(catalogue.connection());
  const SQLite::Column bytes = catalogue.connection().database().execAndGet("SELECT length(data) FROM search_index");
  state.counters["index_MB"] = bytes.getDouble() / 1e6;
  state.counters["file_MB"] = static_cast<double>(std::filesystem::file_size(file(state.range(0)))) / 1e6;
}
BENCHMARK(TheWholeIndexAnew)->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Unit(benchmark::kMillisecond);

/// An FTS5 table of what the things are found by, with prefix indexes, in memory.
class BareFts {
 public:
  explicit BareFts(const Catalogue& catalogue) {
    sqlite3_open(":memory:", &handle_);
    run("CREATE VIRTUAL TABLE things USING fts5 (body, prefix = '1 2 3'); BEGIN");
    sqlite3_stmt* put = nullptr;
    sqlite3_prepare_v2(handle_, "INSERT INTO things VALUES (?)", -1, &put, nullptr);
    for (std::size_t kind = 0; kind < kThingKinds; ++kind)
      eachDocument(catalogue.connection(), static_cast<ThingKind>(kind), [&](SearchDocument&& document) {
        std::string body;
        for (const auto& field : document.fields) body += field.text + ' ';
        sqlite3_bind_text(put, 1, body.c_str(), -1, SQLITE_TRANSIENT);
        sqlite3_step(put);
        sqlite3_reset(put);
      });
    sqlite3_finalize(put);
    run("COMMIT");
    sqlite3_prepare_v2(handle_, "SELECT rowid FROM things WHERE things MATCH ? ORDER BY rank LIMIT 20", -1, &ask_,
                       nullptr);
  }
  ~BareFts() {
    sqlite3_finalize(ask_);
    sqlite3_close(handle_);
  }
  BareFts(const BareFts&) = delete;
  BareFts& operator=(const BareFts&) = delete;

  std::int64_t ask(const std::string& text) {
    std::string match;
    for (const std::string& word : typed(text).words) match += '"' + word + "\"* ";
    sqlite3_bind_text(ask_, 1, match.c_str(), -1, SQLITE_TRANSIENT);
    std::int64_t sum = 0;
    while (sqlite3_step(ask_) == SQLITE_ROW) sum += sqlite3_column_int64(ask_, 0);
    sqlite3_reset(ask_);
    return sum;
  }

 private:
  void run(const char* sql) { sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr); }
  sqlite3* handle_ = nullptr;
  sqlite3_stmt* ask_ = nullptr;
};

void BareFtsWithRank(benchmark::State& state) {
  const Catalogue catalogue = Catalogue::open(file(state.range(0)), Access::readOnly);
  BareFts bare(catalogue);
  Times shortOnes, longer;
  for (auto _ : state)
    for (const std::string& text : keys(state.range(0), kBareQueries)) {
      const auto ask = [&] { benchmark::DoNotOptimize(bare.ask(text)); };
      if (text.size() <= 2) shortOnes.measure(ask);
      else longer.measure(ask);
    }
  shortOnes.report(state, "one_two");
  longer.report(state, "more");
}
BENCHMARK(BareFtsWithRank)->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Iterations(1)->Unit(benchmark::kMillisecond);

}  // namespace
