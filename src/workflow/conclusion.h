#pragma once
#include <catalog/senders.h>
#include <workflow/answer.h>
#include <string>

/// What the judgements of one sender come to.
namespace ohmkin::workflow {

/// Code of the finding, first in the list, that a measured lot of this part misreads.
inline constexpr const char* kLotMisreads = "lot-misreads";

/// Why a part that screws in and looks right is still no sender for a gauge; empty for a variable sender.
std::string kindSentence(catalog::SenderKind kind);

/// Screws in and plugs on, as far as is known.
bool joins(const Candidate& candidate);

/// From the joints and the verdict; the verdict is none where the needle was not judged.
pairing::Rank rankOf(bool variable, bool joined, bool pulsing, const pairing::Verdict* verdict, JointState plug,
                     JointState screw);
/// Kelvin, as it would be fitted: a trimmed one by its error with the network in place; very large where not known.
double worstAsFitted(pairing::Rank rank, const pairing::ErrorTable* errors, const pairing::TrimProposal* trim);

/// Rank, the one plain sentence and the chain's card, from the joints and the verdict. `pulsing`: the gauge wants a
/// pulse.
void conclude(const catalog::Sender& sender, bool pulsing, Candidate& candidate);

/// Best first: rank, fewest parts to buy, superseded last, with a misreading lot later, on the shelf first, as fitted
/// new first, smallest worst error, part number.
void rank(std::vector<Candidate>& candidates);

}  // namespace ohmkin::workflow
