#pragma once
#include <exchange/column_facts.h>
#include <exchange/reading_proposal.h>

namespace ohmkin::exchange {

/// Gives each column its role and unit, with reasons; puts what is open among the questions.
void giveRoles(std::vector<ColumnFacts>& facts, const ProposalHints& hints, Proposal& into);

}  // namespace ohmkin::exchange
