// What a match costs at 10,000, 100,000 and 1,000,000 where-used rows. Beside it the queries it makes and nothing else:
// every statement run by the same questions is written down with its values, prepared once, and run again for as many
// rows as the match took, each column looked at.
#include "large_catalogue.h"

#include <benchmark/benchmark.h>
#include <catalog/connection.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <workflow/match.h>
#include <QTemporaryDir>
#include <map>
#include <ranges>

using namespace ohmkin;

namespace {

constexpr std::int64_t kQuestions = 16;

const std::filesystem::path& file(std::int64_t rows) {
  static const QTemporaryDir folder;
  static std::map<std::int64_t, std::filesystem::path> made;
  const auto found = made.find(rows);
  if (found != made.end()) return found->second;
  const std::filesystem::path path = folder.filePath(QString::number(rows) + ".ohmkin").toStdString();
  (void)test::largeCatalogue(path, rows);
  return made.emplace(rows, path).first->second;
}

/// A dash and a head each, all over the catalogue.
std::vector<workflow::Question> questions(std::int64_t rows) {
  const test::LargeSizes sizes(rows);
  std::vector<workflow::Question> all;
  for (std::int64_t i = 0; i < kQuestions; ++i) {
    workflow::Question question;
    const std::int64_t line = i * 577 % sizes.lines;
    question.line = fmt::format("line-{:05}", line);
    question.year = ModelYear{1950 + static_cast<int>(line * 7 % 30) + 5};
    question.cluster = "gauge package";
    question.casting = test::largeCastingNumber(4 * (i * 131 % (sizes.castings / 4)));
    all.push_back(question);
  }
  return all;
}

/// Seconds a question takes.
const benchmark::Counter each(kQuestions, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);

void ask(const catalog::Catalogue& catalogue, const std::vector<workflow::Question>& all) {
  for (const workflow::Question& question : all) {
    auto answer = workflow::match(catalogue, question);
    if (!answer) throw std::runtime_error(answer.error().sentence());
    benchmark::DoNotOptimize(answer);
  }
}

void Match(benchmark::State& state) {
  const auto catalogue = catalog::Catalogue::openToRead(file(state.range(0)));
  const auto all = questions(state.range(0));
  std::size_t considered = 0;
  for (const auto& question : all) considered += workflow::match(catalogue, question)->branches.front().considered;
  for (auto _ : state) ask(catalogue, all);
  state.counters["each"] = each;
  state.counters["considered"] = static_cast<double>(considered) / kQuestions;
}

class Queries {
 public:
  Queries(const catalog::Catalogue& catalogue, const std::vector<workflow::Question>& all)
      : handle_(catalogue.connection().database().getHandle()) {
    sqlite3_trace_v2(handle_, SQLITE_TRACE_STMT | SQLITE_TRACE_ROW, &Queries::seen, this);
    ask(catalogue, all);
    sqlite3_trace_v2(handle_, 0, nullptr, nullptr);
    for (Run& run : runs_) sqlite3_prepare_v2(handle_, run.sql.c_str(), -1, &run.statement, nullptr);
  }
  ~Queries() {
    for (const Run& run : runs_) sqlite3_finalize(run.statement);
  }
  Queries(const Queries&) = delete;
  Queries& operator=(const Queries&) = delete;

  void runAll() const {
    for (const Run& run : runs_) {
      for (std::size_t row = 0; sqlite3_step(run.statement) == SQLITE_ROW;) {
        for (int c = 0; c < sqlite3_column_count(run.statement); ++c)
          benchmark::DoNotOptimize(sqlite3_column_text(run.statement, c));
        if (++row == run.rows && run.endedEarly()) break;
      }
      sqlite3_reset(run.statement);
    }
  }
  [[nodiscard]] std::size_t size() const { return runs_.size(); }

 private:
  struct Run {
    std::string sql;
    sqlite3_stmt* from = nullptr;  ///< the match's own
    std::size_t rows = 0;
    sqlite3_stmt* statement = nullptr;
    /// Groups of senders are stepped through and left where they turn out to be large.
    [[nodiscard]] bool endedEarly() const { return sql.find("char(31)") != std::string::npos; }
  };
  static int seen(unsigned what, void* self, void* statement, void*) {
    auto& runs = static_cast<Queries*>(self)->runs_;
    auto* const from = static_cast<sqlite3_stmt*>(statement);
    if (what == SQLITE_TRACE_STMT) {
      char* expanded = sqlite3_expanded_sql(from);
      runs.push_back({expanded, from});
      sqlite3_free(expanded);
      return 0;
    }
    for (auto& run : std::views::reverse(runs))
      if (run.from == from) {
        ++run.rows;
        break;
      }
    return 0;
  }

  sqlite3* handle_;
  std::vector<Run> runs_;
};

void BareQueries(benchmark::State& state) {
  const auto catalogue = catalog::Catalogue::openToRead(file(state.range(0)));
  const Queries queries(catalogue, questions(state.range(0)));
  for (auto _ : state) queries.runAll();
  state.counters["each"] = each;
  state.counters["queries"] = static_cast<double>(queries.size()) / kQuestions;
}

#define SIZES ->Arg(10'000)->Arg(100'000)->Arg(1'000'000)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()
BENCHMARK(Match) SIZES;
BENCHMARK(BareQueries) SIZES;

}  // namespace
