#include <catalog/change.h>
#include <catalog/jobs_change.h>
#include <catalog/jobs_rows.h>
#include <fmt/format.h>

namespace ohmkin::catalog {
namespace {

std::string subjectOf(JobNumber id) { return fmt::format("job {}", id.value); }

bool blank(const std::string& text) { return text.find_first_not_of(" \t\r\n") == std::string::npos; }

Expected<void> checkReference(const JobFields& said) {
  if (!blank(said.reference)) return {};
  return refuse("job-reference", "reference", "nothing", "the customer's own word for the job");
}

/// Without `changed`, which writes itself.
void writeFields(Connection& connection, JobNumber id, const JobFields& said) {
  const auto deleted = said.deleted.empty() ? std::optional<std::string>() : std::optional(said.deleted);
  change(connection,
         "UPDATE job SET changed = strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), state = ?, reference = ?, vehicle = ?, "
         "engine = ?, seen = ?, note = ?, part = ?, cause = ?, symptom = ?, deleted = ? WHERE id = ?",
         std::string(text(said.state)), said.reference, said.vehicle, said.engine, said.seen, said.note, said.part,
         said.cause, said.symptom, Maybe{deleted}, id.value);
}

void refreshSearch(Catalogue& catalogue, JobNumber id) {
  const auto now = job(catalogue, id);
  change(catalogue.connection(), "INSERT OR REPLACE INTO job_search (job, words) VALUES (?, ?)", id.value,
         searchWords(now->said, documents(catalogue, id)));
}

/// The job as it stands goes into a step to come back to; steps that were undone are past bringing back.
void addStep(Connection& connection, JobNumber id, std::string_view what, std::string_view who,
             std::optional<int> document = {}) {
  change(connection, "DELETE FROM job_step WHERE job = ? AND undone = 1", id.value);
  change(connection,
         "INSERT INTO job_step (job, at, who, what, document, " OHMKIN_JOB_FIELDS
         ") SELECT id, strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, ?, ?, " OHMKIN_JOB_FIELDS " FROM job WHERE id = ?",
         std::string(who), std::string(what), Maybe{document}, id.value);
}

void setRemoved(Connection& connection, JobNumber id, int ordinal) {
  change(connection, "UPDATE job_document SET removed = 1 - removed WHERE job = ? AND ordinal = ?", id.value, ordinal);
}

JobNumber insertJob(Connection& connection, const JobFields& said, std::string_view who) {
  change(connection,
         "INSERT INTO job (opened, opened_by, changed, reference) "
         "VALUES (strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, '', ?)",
         std::string(who), said.reference);
  const JobNumber id{connection.database().getLastInsertRowid()};
  writeFields(connection, id, said);
  return id;
}

/// A step there or back: job and step change places.
Expected<JobStep> exchange(Catalogue& catalogue, JobNumber id, std::string_view who, bool undo) {
  struct Step {
    std::int64_t id = 0;
    std::optional<int> document;
    JobStep said;
    JobFields fields;
  };
  const auto read = [](Row& row) {
    Step step;
    step.id = row.longWhole();
    step.document = row.maybeWhole();
    step.said.at = row.text();
    step.said.who = row.text();
    step.said.what = row.text();
    step.fields = fieldsOf(row);
    return step;
  };
  return changeOfJob(catalogue, id, [&](const JobRecord& before) -> Expected<JobStep> {
    const auto step = undo ? first(ask(catalogue,
                                       "SELECT id, document, at, who, what, " OHMKIN_JOB_FIELDS
                                       " FROM job_step WHERE job = ? AND undone = 0 ORDER BY id DESC LIMIT 1",
                                       read, id.value))
                           : first(ask(catalogue,
                                       "SELECT id, document, at, who, what, " OHMKIN_JOB_FIELDS
                                       " FROM job_step WHERE job = ? AND undone = 1 ORDER BY id LIMIT 1",
                                       read, id.value));
    if (!step)
      return refuse("nothing-to-undo", subjectOf(id), undo ? "nothing to undo" : "nothing to do again",
                    "a job that was changed");
    Connection& connection = catalogue.connection();
    const auto deleted =
        before.said.deleted.empty() ? std::optional<std::string>() : std::optional(before.said.deleted);
    change(connection,
           "UPDATE job_step SET undone = ?, state = ?, reference = ?, vehicle = ?, engine = ?, seen = ?, note = ?, "
           "part = ?, cause = ?, symptom = ?, deleted = ? WHERE id = ?",
           undo ? 1 : 0, std::string(text(before.said.state)), before.said.reference, before.said.vehicle,
           before.said.engine, before.said.seen, before.said.note, before.said.part, before.said.cause,
           before.said.symptom, Maybe{deleted}, step->id);
    if (step->document) setRemoved(connection, id, *step->document);
    writeFields(connection, id, step->fields);
    refreshSearch(catalogue, id);
    logChange(connection, who, fmt::format("job {}: {}", undo ? "undone" : "done again", step->said.what),
              subjectOf(id), {}, {});
    return step->said;
  });
}

}  // namespace

Refusal unknownJob(JobNumber id) { return {"job-unknown", subjectOf(id), "no such job", "the number of a job"}; }

Expected<JobRecord> openJob(Catalogue& catalogue, const JobFields& said, std::string_view who) {
  if (const auto fine = checkReference(said); !fine) return tl::make_unexpected(fine.error());
  return changeOfJobs(catalogue, [&]() -> Expected<JobRecord> {
    const JobNumber id = insertJob(catalogue.connection(), said, who);
    refreshSearch(catalogue, id);
    logChange(catalogue.connection(), who, "job opened", subjectOf(id), {}, {});
    return *job(catalogue, id);
  });
}

Expected<JobRecord> changeJob(Catalogue& catalogue, JobNumber id, const JobFields& said, std::string_view what,
                              std::string_view who, std::string_view seen) {
  if (const auto fine = checkReference(said); !fine) return tl::make_unexpected(fine.error());
  return changeOfJob(catalogue, id, [&](const JobRecord& before) -> Expected<JobRecord> {
    if (!seen.empty() && before.changed != seen)
      return refuse("job-changed", subjectOf(id), fmt::format("one that was changed on {}", before.changed),
                    "the job as it was shown; look at it again");
    addStep(catalogue.connection(), id, what, who);
    writeFields(catalogue.connection(), id, said);
    refreshSearch(catalogue, id);
    logChange(catalogue.connection(), who, fmt::format("job {}", what), subjectOf(id), {}, {});
    return *job(catalogue, id);
  });
}

Expected<JobDocument> keepDocument(Catalogue& catalogue, JobNumber id, const JobDocument& document,
                                   std::string_view who) {
  return changeOfJob(catalogue, id, [&](const JobRecord& before) -> Expected<JobDocument> {
    Connection& connection = catalogue.connection();
    const auto others = documents(catalogue, id);
    const int ordinal = others.empty() ? 1 : others.back().ordinal + 1;
    logChange(connection, who, fmt::format("job document kept: {}", text(document.kind)), subjectOf(id), {}, {});
    const std::int64_t line = connection.database().getLastInsertRowid();
    addStep(connection, id, fmt::format("{} kept", text(document.kind)), who, ordinal);
    change(connection,
           "INSERT INTO job_document (job, ordinal, kind, made, made_by, title, part, question, document, hash, "
           "log_line) VALUES (?, ?, ?, strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, ?, ?, ?, ?, ?, ?)",
           id.value, ordinal, std::string(text(document.kind)), std::string(who), document.title, document.part,
           document.question, document.document, document.hash, line);
    writeFields(connection, id, before.said);
    refreshSearch(catalogue, id);
    return documents(catalogue, id).back();
  });
}

Expected<void> removeDocument(Catalogue& catalogue, JobNumber id, int ordinal, std::string_view who) {
  return changeOfJob(catalogue, id, [&](const JobRecord& before) -> Expected<void> {
    for (const JobDocument& document : documents(catalogue, id)) {
      if (document.ordinal != ordinal || document.removed) continue;
      Connection& connection = catalogue.connection();
      addStep(connection, id, fmt::format("{} removed", text(document.kind)), who, ordinal);
      setRemoved(connection, id, ordinal);
      writeFields(connection, id, before.said);
      refreshSearch(catalogue, id);
      logChange(connection, who, fmt::format("job document removed: {}", text(document.kind)), subjectOf(id), {}, {});
      return {};
    }
    return refuse("document-unknown", subjectOf(id), fmt::format("no document {}", ordinal), "one that it lists");
  });
}

Expected<JobRecord> duplicateJob(Catalogue& catalogue, JobNumber id, std::string_view who) {
  return changeOfJob(catalogue, id, [&](const JobRecord& before) -> Expected<JobRecord> {
    JobFields said = before.said;
    said.state = JobState::open;
    for (std::string* field : {&said.part, &said.cause, &said.symptom, &said.deleted}) field->clear();
    const JobNumber made = insertJob(catalogue.connection(), said, who);
    refreshSearch(catalogue, made);
    logChange(catalogue.connection(), who, "job opened", subjectOf(made), {}, fmt::format("like job {}", id.value));
    return *job(catalogue, made);
  });
}

Expected<JobStep> undoJob(Catalogue& catalogue, JobNumber id, std::string_view who) {
  return exchange(catalogue, id, who, true);
}
Expected<JobStep> redoJob(Catalogue& catalogue, JobNumber id, std::string_view who) {
  return exchange(catalogue, id, who, false);
}

}  // namespace ohmkin::catalog
