#include <catalog/bench_key.h>
#include <catalog/bench_records.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

#define IMPORTS \
  "SELECT id, file, hash, bytes, at, who, meter, bath, plan, rows, curves, undone, undone_by FROM bench_import "
#define RUNS \
  "SELECT id, import, part, lot, family, direction, title, note, at, who, meter, bath, rows, curve FROM bench_run "

ImportRecord readImport(Row& row) {
  ImportRecord r;
  r.id = {row.longWhole()};
  r.file = row.text();
  r.hash = row.text();
  r.bytes = row.longWhole();
  r.at = row.text();
  r.who = row.text();
  r.meter = row.text();
  r.bath = row.text();
  r.plan = row.text();
  r.rows = row.longWhole();
  r.curves = row.longWhole();
  r.undone = row.text();
  r.undoneBy = row.text();
  return r;
}

std::optional<RunDirection> readDirection(Row& row) {
  const std::string word = row.text();
  if (word.empty()) return {};
  for (const auto direction : {RunDirection::heating, RunDirection::cooling})
    if (text(direction) == word) return direction;
  row.damaged(word);
}

RunRecord readRun(Row& row) {
  RunRecord r;
  r.id = {row.longWhole()};
  if (const std::int64_t import = row.longWhole(); import > 0) r.ofImport = ImportNumber{import};
  r.said.part = row.text();
  r.said.lot = row.text();
  r.said.family = row.text();
  r.said.direction = readDirection(row);
  r.said.title = row.text();
  r.said.note = row.text();
  r.at = row.text();
  r.who = row.text();
  r.meter = row.text();
  r.bath = row.text();
  r.rows = row.longWhole();
  r.curve = row.maybeKey<CurveKey>();
  return r;
}

RawReading readReading(Row& row) {
  RawReading r;
  r.celsius = row.number();
  r.ohms = row.maybeNumber().value_or(kNotSaid);
  r.seconds = row.maybeNumber().value_or(kNotSaid);
  r.direction = readDirection(row);
  r.u = row.maybeNumber().value_or(kNotSaid);
  r.uLnOhms = row.maybeNumber().value_or(kNotSaid);
  return r;
}

ReadingHabit readHabit(Row& row) {
  ReadingHabit h;
  h.signature = row.text();
  h.plan = row.text();
  h.logger = row.text();
  h.at = row.text();
  h.who = row.text();
  return h;
}

}  // namespace

std::vector<ImportRecord> imports(const Catalogue& catalogue) {
  return ask(catalogue, IMPORTS "ORDER BY id DESC", readImport);
}

std::optional<ImportRecord> importNumbered(const Catalogue& catalogue, ImportNumber id) {
  return first(ask(catalogue, IMPORTS "WHERE id = ?", readImport, id.value));
}

std::optional<ImportRecord> standingImport(const Catalogue& catalogue, std::string_view hash) {
  return first(ask(catalogue, IMPORTS "WHERE hash = ? AND undone IS NULL", readImport, std::string(hash)));
}

std::vector<RunRecord> runsOfImport(const Catalogue& catalogue, ImportNumber id) {
  return ask(catalogue, RUNS "WHERE import = ? ORDER BY id", readRun, id.value);
}

std::vector<RunRecord> runs(const Catalogue& catalogue) { return ask(catalogue, RUNS "ORDER BY id DESC", readRun); }

std::optional<RunRecord> run(const Catalogue& catalogue, RunNumber id) {
  return first(ask(catalogue, RUNS "WHERE id = ?", readRun, id.value));
}

std::optional<RunRecord> runOfCurve(const Catalogue& catalogue, const CurveKey& curve) {
  return first(ask(catalogue, RUNS "WHERE curve = ?", readRun, curve.text));
}

void readingsOf(const Catalogue& catalogue, RunNumber id, const std::function<bool(const RawReading&)>& take) {
  Connection& connection = catalogue.connection();
  try {
    SQLite::Statement& asked = connection.statement(
        "SELECT temperature, ohms, seconds, direction, u, u_ln_ohms FROM bench_reading WHERE id BETWEEN ? AND ? "
        "ORDER BY id");
    const Use use(asked);
    bindAll(asked, 1, readingKey(id, 0), readingKey(id, kMostReadingsOfRun));
    while (asked.executeStep()) {
      Row row(asked, connection);
      if (!take(readReading(row))) return;
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

std::vector<RawReading> readingsOf(const Catalogue& catalogue, RunNumber id) {
  std::vector<RawReading> all;
  readingsOf(catalogue, id, [&](const RawReading& reading) {
    all.push_back(reading);
    return true;
  });
  return all;
}

std::optional<ReadingHabit> readingHabit(const Catalogue& catalogue, std::string_view signature) {
  return first(ask(catalogue, "SELECT signature, plan, logger, at, who FROM reading_habit WHERE signature = ?",
                   readHabit, std::string(signature)));
}

}  // namespace ohmkin::catalog
