#pragma once
#include <workflow/judge_sender.h>
#include <optional>

/// Every sender that could go there, judged and ranked: one by one where they are few, by groups where they are many.
namespace ohmkin::workflow {

/// What is asked about one branch. Everything outlives it.
struct BranchQuestion {
  const catalog::Catalogue& catalogue;
  const Question& question;
  const std::optional<catalog::VehicleLine>& line;
  const DashChoice& dash;
  const PortChoice& port;
  const MatchOptions& options;
};

/// Fills what the branch says of its senders.
void rankSenders(const BranchQuestion& asked, SenderJudge& judge, ElectricalJudge& electrical, Branch& branch);

/// Threads of the senders that go into the port, with a bushing too, and of those that only seem to fit, so that the
/// warning is there when someone holds one; each once, in order. Empty: the port's thread is not known.
std::vector<catalog::ThreadKey> threadsConsidered(const PortChoice& port, const SenderJudge& judge);

/// Fitted new here, or named by the person: they are considered whatever their thread. Each once.
std::vector<catalog::Sender> sendersOfTheirOwn(const BranchQuestion& asked);

/// The part this engine left the works with, where the person did not say what is in the head now: the first by thread
/// and number of those considered for their thread or family. The engine's own years where anything tells them, else
/// the vehicle's.
std::optional<catalog::SenderKey> fittedNew(const BranchQuestion& asked,
                                            const std::vector<catalog::ThreadKey>& threads);
/// The same among others, in their order.
std::optional<catalog::SenderKey> fittedNewAmong(const BranchQuestion& asked,
                                                 const std::vector<catalog::Sender>& senders);
void markFitted(const std::optional<catalog::SenderKey>& fitted, std::vector<Candidate>& candidates);

}  // namespace ohmkin::workflow
