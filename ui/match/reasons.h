#pragma once
#include <finding/finding.h>
#include <parts/finding_list.h>
#include <workflow/answer.h>

/// Why a sender was judged so: every finding once, under what it is about.
namespace ohmkin::match {

QString topicOfJoint(int joint);
std::vector<parts::FindingWords> findingsOf(const workflow::Answer& answer, const workflow::Branch& branch,
                                            const workflow::Candidate* candidate);

}  // namespace ohmkin::match
