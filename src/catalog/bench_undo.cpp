#include <catalog/bench_key.h>
#include <catalog/bench_rows.h>
#include <catalog/change.h>
#include <fmt/format.h>

namespace ohmkin::catalog {
namespace {

void takeOutRun(Connection& connection, const RunRecord& run) {
  if (run.curve) takeOutCurve(connection, run.id, *run.curve);
  change(connection, "DELETE FROM bench_reading WHERE id BETWEEN ? AND ?", readingKey(run.id, 0),
         readingKey(run.id, kMostReadingsOfRun));
  change(connection, "DELETE FROM bench_run WHERE id = ?", run.id.value);
}

}  // namespace

Expected<ImportRecord> undoImport(Catalogue& catalogue, ImportNumber id, std::string_view who) {
  Connection& connection = catalogue.connection();
  const auto where = [&] { return fmt::format("import {}", id.value); };
  try {
    Change whole(connection);
    const auto before = importNumbered(catalogue, id);
    if (!before) return refuse("import-unknown", where(), "no such import", "the number of an import");
    if (!before->stands())
      return refuse("import-undone", where(), fmt::format("an import {} undid on {}", before->undoneBy, before->undone),
                    "one that stands; nothing was changed");
    for (const RunRecord& run : runsOfImport(catalogue, id)) takeOutRun(connection, run);
    change(connection,
           "UPDATE bench_import SET undone = strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), undone_by = ? WHERE id = ?",
           std::string(who), id.value);
    logChange(connection, who, "bench import undone", fmt::format("bench_import {}", id.value),
              fmt::format("{}, {} rows, {} curves", before->file, before->rows, before->curves), {});
    auto after = importNumbered(catalogue, id);
    whole.commit();
    return *std::move(after);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Expected<void> removeRun(Catalogue& catalogue, RunNumber number, std::string_view who) {
  Connection& connection = catalogue.connection();
  const auto where = [&] { return fmt::format("run {}", number.value); };
  try {
    Change whole(connection);
    const auto before = run(catalogue, number);
    if (!before) return refuse("run-unknown", where(), "no such run", "a run of the bench");
    if (before->ofImport)
      return refuse("run-of-import", where(), fmt::format("a run of import {}", before->ofImport->value),
                    "one entered by hand; undo the import to take it out");
    takeOutRun(connection, *before);
    logChange(connection, who, "bench run removed", fmt::format("bench_run {}", number.value),
              fmt::format("{} lot '{}', {} rows", before->said.part, before->said.lot, before->rows), {});
    whole.commit();
    return {};
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

}  // namespace ohmkin::catalog
