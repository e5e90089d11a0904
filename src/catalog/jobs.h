#pragma once
#include <catalog/stock.h>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Jobs of the shop and the documents kept with them. Everything written here is one transaction with its line in the
/// change log, which names the job's number and what was done, never what stands in it: that it can be erased. Writers
/// throw catalogue-read-only, catalogue-busy.
namespace ohmkin::catalog {

enum class JobState { open, done };
std::string_view text(JobState state);

/// What is written in a job.
struct JobFields {
  JobState state = JobState::open;
  std::string reference;  ///< the customer's own word for it; no more personal data than that
  std::string vehicle;
  std::string engine;
  std::string seen;  ///< what was seen
  std::string note;
  std::string part;     ///< fitted in the end
  std::string cause;    ///< found in the end: code of a fault
  std::string symptom;  ///< what was complained of, where a cause was found
  std::string deleted;  ///< put away, UTC; empty: it stands
};

struct JobRecord {
  JobNumber id;        ///< never given twice
  std::string opened;  ///< UTC, ISO 8601
  std::string openedBy;
  std::string changed;
  JobFields said;
};

enum class DocumentKind { match, pair, trim, plan, date, fault, benchRun, attachment, other };
std::string_view text(DocumentKind kind);  ///< "bench run"

struct JobDocument {
  int ordinal = 0;  ///< within the job, from 1; never given twice
  DocumentKind kind = DocumentKind::other;
  std::string made;  ///< UTC, ISO 8601
  std::string madeBy;
  std::string title;     ///< in one line
  std::string part;      ///< recommended in it; empty: none
  std::string question;  ///< JSON it can be asked again from; empty: it cannot
  std::string document;  ///< JSON
  std::string hash;      ///< SHA-256 of the document, as it was when it was kept
  bool removed = false;
  std::int64_t logLine = 0;  ///< last line of the change log when it was kept
};

/// One change of a job that undo or redo would take.
struct JobStep {
  std::string at;
  std::string who;
  std::string what;  ///< "note changed"
};
struct JobSteps {
  std::optional<JobStep> undo;
  std::optional<JobStep> redo;
};

struct JobFilter {
  std::string text;               ///< all of its words in the job, as parts of words, folded; empty: every job
  std::optional<JobState> state;  ///< none: open and done
  bool deleted = false;           ///< those put away, instead of those that stand
};
std::vector<JobRecord> jobs(const Catalogue& catalogue, const JobFilter& filter, int most);  ///< newest first
std::int64_t jobCount(const Catalogue& catalogue);                                           ///< that stand
std::optional<JobRecord> job(const Catalogue& catalogue, JobNumber id);
std::vector<JobDocument> documents(const Catalogue& catalogue, JobNumber id);  ///< in order, removed ones too
JobSteps steps(const Catalogue& catalogue, JobNumber id);

/// How often each cause was found; jobs put away do not count.
struct CauseCount {
  std::string cause;
  std::string symptom;
  std::int64_t jobs = 0;
};
std::vector<CauseCount> causesFound(const Catalogue& catalogue);

/// Refuses (job-reference) none at all.
Expected<JobRecord> openJob(Catalogue& catalogue, const JobFields& said, std::string_view who);
/// `what`: in the words of the log: "closed", "note changed". Refuses (job-unknown), (job-reference), (job-changed)
/// where it was changed by someone else after `seen`, its time of change as the caller knew it; empty: not asked.
Expected<JobRecord> changeJob(Catalogue& catalogue, JobNumber id, const JobFields& said, std::string_view what,
                              std::string_view who, std::string_view seen = {});
/// Ordinal, made, madeBy, removed and the log's line are set here. Refuses (job-unknown).
Expected<JobDocument> keepDocument(Catalogue& catalogue, JobNumber id, const JobDocument& document,
                                   std::string_view who);
/// Out of the job's sight; undo brings it back. Refuses (job-unknown), (document-unknown).
Expected<void> removeDocument(Catalogue& catalogue, JobNumber id, int ordinal, std::string_view who);
/// A new open job that says the same, without documents, part, cause and symptom. Refuses (job-unknown).
Expected<JobRecord> duplicateJob(Catalogue& catalogue, JobNumber id, std::string_view who);
/// Refuses (job-unknown), (nothing-to-undo).
Expected<JobStep> undoJob(Catalogue& catalogue, JobNumber id, std::string_view who);
Expected<JobStep> redoJob(Catalogue& catalogue, JobNumber id, std::string_view who);

struct Erased {
  JobNumber id;
  int documents = 0;
  int movements = 0;     ///< that stay, without the job and its note
  bool logClean = true;  ///< false: another program reads the file, so that its log holds the old pages until that ends
};
/// For good: the job, its documents and steps, with their bytes overwritten. Refuses (job-unknown).
Expected<Erased> eraseJob(Catalogue& catalogue, JobNumber id, std::string_view who);

}  // namespace ohmkin::catalog
