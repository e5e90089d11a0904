#pragma once
#include <finding/refusal.h>
#include <parts/candidate_list.h>
#include <parts/chain_view.h>
#include <parts/chip_row.h>
#include <parts/circuit_view.h>
#include <parts/dial_view.h>
#include <parts/error_plot.h>
#include <parts/failure_table.h>
#include <parts/finding_list.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <workflow/question_text.h>

/// From what the match use case answers to what the parts show. Chooses words and shapes; computes nothing of its own.
namespace ohmkin::match {

QString plain(const std::string& text);
/// A refusal for a person at the window: fields by their names, not as arguments of the terminal.
QString refusalWords(const Refusal& refusal);

parts::Chain chainOf(const workflow::Branch& branch, const workflow::Candidate* candidate);
parts::CandidateRow rowOf(const workflow::Candidate& candidate, int index, const DisplayUnits& units);
/// The senders that are shown at first: everything that is not refused, and what is in the head now.
std::vector<parts::CandidateRow> rowsOf(const workflow::Branch& branch, bool refusedToo, const DisplayUnits& units);
std::vector<parts::ChipWords> chipsOf(const QString& text, const workflow::TextReading& reading,
                                      const std::vector<workflow::Chip>& chips);
parts::DialPicture dialOf(const workflow::Branch& branch);
parts::PlotPicture plotOf(const workflow::Branch& branch, const workflow::Candidate& candidate,
                          const DisplayUnits& units);
/// Worst error and where, how late the hot mark comes: the plot in words.
QString errorsInWords(const workflow::Candidate& candidate, const DisplayUnits& units);
std::vector<parts::FindingWords> findingsOf(const workflow::Answer& answer, const workflow::Branch& branch,
                                            const workflow::Candidate* candidate);
QString topicOfJoint(int joint);

parts::Circuit circuitOf(const workflow::Candidate& candidate);
std::vector<parts::FailureWords> failuresOf(const pairing::TrimProposal& trim, const DisplayUnits& units);
QString trimInWords(const pairing::TrimProposal& trim, const DisplayUnits& units);
std::vector<parts::FindingWords> trimFindings(const pairing::TrimProposal& trim);
QString ratingsInWords(const pairing::TrimProposal& trim);

/// The one that is in the head now; null where none is known or likely.
const workflow::Candidate* fittedNow(const workflow::Branch& branch);
/// "BR-2215", or "AM-4107 + 510 Ω" where resistors go with it.
QString nameOf(const workflow::Candidate& candidate);
bool misreads(const workflow::Candidate& candidate);
bool recommendedTrim(const workflow::Candidate& candidate);

QStringList branchTitles(const workflow::Answer& answer);
QString answerAsText(const workflow::Answer& answer, std::size_t branch, const DisplayUnits& units);

}  // namespace ohmkin::match
