#pragma once
#include <catalog/change.h>
#include <catalog/jobs.h>
#include <fmt/format.h>

/// Inside this room only: how jobs are written to.
namespace ohmkin::catalog {

/// What is overwritten or deleted is overwritten with zeros in the file as well, so that an erased job is gone from it
/// (sqlite.org/pragma.html#pragma_secure_delete). Only while jobs are written to: it costs packs and readings a lot.
class BytesOverwritten {
 public:
  explicit BytesOverwritten(SQLite::Database& database)
      : database_(database), before_(database.execAndGet("PRAGMA secure_delete").getInt()) {
    database_.execAndGet("PRAGMA secure_delete = 1");
  }
  ~BytesOverwritten() { database_.tryExec(fmt::format("PRAGMA secure_delete = {}", before_)); }
  BytesOverwritten(const BytesOverwritten&) = delete;
  BytesOverwritten& operator=(const BytesOverwritten&) = delete;

 private:
  SQLite::Database& database_;
  int before_;
};

/// One transaction; kept where `work` does not refuse.
auto changeOfJobs(Catalogue& catalogue, auto work) -> decltype(work()) {
  Connection& connection = catalogue.connection();
  try {
    const BytesOverwritten overwritten(connection.database());
    Change whole(connection);
    auto done = work();
    if (done) whole.commit();
    return done;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Refusal unknownJob(JobNumber id);

/// The same for a job that is there; `work` gets it as it stands.
auto changeOfJob(Catalogue& catalogue, JobNumber id, auto work) -> decltype(work(std::declval<const JobRecord&>())) {
  using Result = decltype(work(std::declval<const JobRecord&>()));
  return changeOfJobs(catalogue, [&]() -> Result {
    const auto before = job(catalogue, id);
    if (!before) return tl::make_unexpected(unknownJob(id));
    return work(*before);
  });
}

}  // namespace ohmkin::catalog
