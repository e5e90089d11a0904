#pragma once
#include <parts/circuit_view.h>
#include <parts/failure_table.h>
#include <parts/finding_list.h>
#include <quantity/print.h>
#include <workflow/answer.h>

/// The proposed resistors: what they do, what to buy, and what fails how.
namespace ohmkin::match {

parts::Circuit circuitOf(const workflow::Candidate& candidate);
std::vector<parts::FailureWords> failuresOf(const pairing::TrimProposal& trim, const DisplayUnits& units);
QString trimInWords(const pairing::TrimProposal& trim, const DisplayUnits& units);
std::vector<parts::FindingWords> trimFindings(const pairing::TrimProposal& trim);
QString ratingsInWords(const pairing::TrimProposal& trim);

}  // namespace ohmkin::match
