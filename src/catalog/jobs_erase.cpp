#include <catalog/jobs_change.h>

namespace ohmkin::catalog {
namespace {

/// The write-ahead log still holds pages as they were, until they are in the file and it is cut off.
bool emptyLog(Connection& connection) {
  SQLite::Statement checkpoint(connection.database(), "PRAGMA wal_checkpoint(TRUNCATE)");
  return checkpoint.executeStep() && checkpoint.getColumn(0).getInt() == 0;
}

}  // namespace

Expected<Erased> eraseJob(Catalogue& catalogue, JobNumber id, std::string_view who) {
  auto erased = changeOfJob(catalogue, id, [&](const JobRecord&) -> Expected<Erased> {
    Connection& connection = catalogue.connection();
    Erased done;
    done.id = id;
    done.documents = static_cast<int>(documents(catalogue, id).size());
    done.movements = static_cast<int>(movementsOfJob(catalogue, id).size());
    change(connection, "UPDATE stock_movement SET job = NULL, note = '' WHERE job = ?", id.value);
    change(connection, "DELETE FROM job_search WHERE job = ?", id.value);
    change(connection, "DELETE FROM job_step WHERE job = ?", id.value);
    change(connection, "DELETE FROM job_document WHERE job = ?", id.value);
    change(connection, "DELETE FROM job WHERE id = ?", id.value);
    logChange(connection, who, "job erased", fmt::format("job {}", id.value), {}, {});
    return done;
  });
  if (!erased) return erased;
  try {
    erased->logClean = emptyLog(catalogue.connection());
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
  return erased;
}

}  // namespace ohmkin::catalog
