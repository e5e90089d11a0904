#pragma once
#include <parts/candidate_list.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <QStringList>

/// The ranked senders as rows of the list, and the whole answer as text to paste elsewhere.
namespace ohmkin::match {

parts::CandidateRow rowOf(const workflow::Candidate& candidate, int index, const DisplayUnits& units);
/// The senders that are shown at first: everything that is not refused, and what is in the head now.
std::vector<parts::CandidateRow> rowsOf(const workflow::Branch& branch, bool refusedToo, const DisplayUnits& units);
QStringList branchTitles(const workflow::Answer& answer);
QString answerAsText(const workflow::Answer& answer, std::size_t branch, const DisplayUnits& units);

}  // namespace ohmkin::match
