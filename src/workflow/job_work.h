#pragma once
#include <catalog/jobs.h>
#include <circuit/faults.h>
#include <sheet/paper.h>
#include <workflow/answer.h>
#include <workflow/match.h>
#include <workflow/plan.h>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// A job as the counter keeps it: what was asked, what was answered then, what was fitted, what was the matter.
namespace ohmkin::workflow {

/// Shown wherever a reference is typed.
inline constexpr const char* kReferenceHelp =
    "the customer's own word for the job, a plate or a first name; no more about a person than that";

/// The most a document may be that comes in from outside.
inline constexpr std::size_t kLargestJobDocument = 8U << 20U;  ///< bytes
inline constexpr int kDeepestJobDocument = 64;                 ///< objects and lists within one another

enum class AttachmentState { asKept, missing, changed, unreadable };
struct KeptDocument {
  catalog::JobDocument kept;
  bool asWritten = true;                      ///< false: its text no longer has the hash it was kept with
  std::optional<AttachmentState> attachment;  ///< of a file kept by reference
  std::string attachmentWords;                ///< "dial.png is no longer where it was: /…"
};
struct JobView {
  catalog::JobRecord job;
  std::vector<KeptDocument> documents;  ///< in order, without removed ones
  std::vector<catalog::StockMovement> movements;
  catalog::JobSteps steps;
  std::string causeWords;  ///< sentence of the cause's fault; empty where none was found
};

/// "12", "#12"; refuses anything else.
Expected<catalog::JobNumber> readJobNumber(std::string_view text, std::string_view where);
/// Newest first. All words of `filter.text`, in reference, vehicle, engine, parts or note.
std::vector<catalog::JobRecord> findJobs(const catalog::Catalogue& catalogue, const catalog::JobFilter& filter,
                                         int most = 100);
/// Refuses (job-unknown). `lookAtFiles`: says of attachments whether they are there and unchanged; reads them whole.
Expected<JobView> jobView(const catalog::Catalogue& catalogue, catalog::JobNumber id, bool lookAtFiles = false);

/// Texts are trimmed. Refuse (job-reference), (text-too-long), (cause-unknown), (symptom-unknown), near misses named.
Expected<catalog::JobRecord> openJob(catalog::Catalogue& catalogue, const catalog::JobFields& said,
                                     std::string_view who);
/// `seen`: JobRecord::changed as it was shown to the person; refuses (job-changed) where someone else was faster.
Expected<catalog::JobRecord> changeJob(catalog::Catalogue& catalogue, catalog::JobNumber id,
                                       const catalog::JobFields& said, std::string_view who,
                                       std::string_view seen = {});
/// A line more under the note.
Expected<catalog::JobRecord> addNote(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view note,
                                     std::string_view who);
struct JobClosing {
  std::string part;     ///< fitted; empty: as it stands
  std::string cause;    ///< code of a fault; empty: none was found
  std::string symptom;  ///< "low", "pegged", "high", "erratic", "lamps"; empty: any
};
Expected<catalog::JobRecord> closeJob(catalog::Catalogue& catalogue, catalog::JobNumber id, const JobClosing& closing,
                                      std::string_view who);
Expected<catalog::JobRecord> reopenJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who);
/// Put away, and found no more; undoJob() or restoreJob() brings it back. catalog::eraseJob() is for good.
Expected<catalog::JobRecord> deleteJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who);
Expected<catalog::JobRecord> restoreJob(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who);

// What is kept with it. The answer stays as it was, whatever the catalogue says later.
Expected<catalog::JobDocument> keepMatch(catalog::Catalogue& catalogue, catalog::JobNumber id, const Answer& answer,
                                         std::string_view who);
Expected<catalog::JobDocument> keepPlan(catalog::Catalogue& catalogue, catalog::JobNumber id, const Plan& plan,
                                        std::string_view who);
/// Any document with "schema": "ohmkin.…" as --json prints it, or a fault session. Refuses (document-unreadable),
/// (document-too-large), (document-too-deep).
Expected<catalog::JobDocument> keepJson(catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view json,
                                        std::string_view title, std::string_view who);
/// Refuses (run-unknown).
Expected<catalog::JobDocument> keepBenchRun(catalog::Catalogue& catalogue, catalog::JobNumber id,
                                            catalog::RunNumber run, std::string_view who);
/// By reference: path, SHA-256 and size; the file stays where it is. Refuses one that cannot be read.
Expected<catalog::JobDocument> attachFile(catalog::Catalogue& catalogue, catalog::JobNumber id,
                                          const std::filesystem::path& file, std::string_view title,
                                          std::string_view who);

/// A kept match asked once more of the catalogue as it is.
struct Difference {
  std::string what;  ///< "sender", "verdict", "hot mark", "findings"
  std::string then;
  std::string now;
  std::string sentence;
};
struct AnsweredAgain {
  bool differs = false;
  std::string sentence;  ///< "Today's answer is the same." or what is most different
  std::vector<Difference> differences;
  std::vector<std::string> because;  ///< changes since then that bear on it: "Pack demo loaded on 2026-11-25 by Ann."
  std::optional<Answer> now;         ///< none: today it is refused
  std::string nowDocument;           ///< as ohmkin.match; empty where refused
};
/// Refuses (document-unknown), (document-not-asked-again) one that has no question.
Expected<AnsweredAgain> answerAgain(const catalog::Catalogue& catalogue, catalog::JobNumber id, int ordinal,
                                    const MatchOptions& options = {});

/// The shop's own jobs where a cause was found. FaultFinder::make() takes them in itself: they never go into
/// FaultQuestion::jobs, where they would count twice. Causes this version does not know are left out.
std::vector<circuit::JobCount> shopJobs(const catalog::Catalogue& catalogue);

}  // namespace ohmkin::workflow
