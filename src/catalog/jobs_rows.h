#pragma once
#include <catalog/jobs.h>
#include <catalog/row.h>

/// Inside this room only: rows of jobs as statements give them, and what a job is found by.
namespace ohmkin::catalog {

inline constexpr Words<JobState, 2> kJobStates{{{JobState::open, "open"}, {JobState::done, "done"}}};
inline constexpr Words<DocumentKind, 9> kDocumentKinds{{{DocumentKind::match, "match"},
                                                        {DocumentKind::pair, "pair"},
                                                        {DocumentKind::trim, "trim"},
                                                        {DocumentKind::plan, "plan"},
                                                        {DocumentKind::date, "date"},
                                                        {DocumentKind::fault, "fault"},
                                                        {DocumentKind::benchRun, "bench run"},
                                                        {DocumentKind::attachment, "attachment"},
                                                        {DocumentKind::other, "other"}}};

/// In the order fieldsOf() reads them; job and job_step have them alike.
#define OHMKIN_JOB_FIELDS "state, reference, vehicle, engine, seen, note, part, cause, symptom, deleted"
JobFields fieldsOf(Row& row);
#define OHMKIN_JOB_COLUMNS "id, opened, opened_by, changed, " OHMKIN_JOB_FIELDS
JobRecord jobOf(Row& row);

/// Lower case, Latin letters with accents too.
std::string foldedForSearch(std::string_view text);
/// At most so many words of a search are looked at.
inline constexpr std::size_t kSearchWords = 8;
/// What the job is found by: all that is written in it and the parts of its documents, numbers in both spellings.
std::string searchWords(const JobFields& said, const std::vector<JobDocument>& documents);

}  // namespace ohmkin::catalog
