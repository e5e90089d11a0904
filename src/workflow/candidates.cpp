#include <catalog/sender_groups.h>
#include <joint/thread.h>
#include <workflow/candidates.h>
#include <workflow/conclusion.h>
#include <workflow/grouped_candidates.h>
#include <workflow/joints.h>
#include <algorithm>
#include <set>

namespace ohmkin::workflow {
namespace {

/// First and last model year in which the engine can have been fitted new. A model year begins in the year before it.
std::optional<std::pair<ModelYear, ModelYear>> yearsMade(const BranchQuestion& asked) {
  if (const auto& produced = asked.port.made.produced)
    return std::pair(ModelYear{produced->first}, ModelYear{produced->second + 1});
  if (asked.question.year) return std::pair(*asked.question.year, *asked.question.year);
  return {};
}

/// Counted no further than is needed to know that they are too many to be judged one by one.
bool few(const BranchQuestion& asked, const std::vector<catalog::ThreadKey>& threads) {
  const std::size_t most = asked.options.mostListed;
  if (threads.empty())
    return !asked.dash.gauge || catalog::sendersUpTo(asked.catalogue, asked.dash.gauge->family, most + 1) <= most;
  std::size_t found = 0;
  for (const catalog::ThreadKey& thread : threads) {
    found += catalog::sendersUpTo(asked.catalogue, thread, most + 1 - found);
    if (found > most) return false;
  }
  return true;
}

std::vector<catalog::Sender> sendersThatCouldGoThere(const BranchQuestion& asked,
                                                     const std::vector<catalog::ThreadKey>& threads) {
  if (!threads.empty()) return catalog::sendersWithThreads(asked.catalogue, threads);
  if (asked.dash.gauge) return catalog::sendersOfFamily(asked.catalogue, asked.dash.gauge->family);
  return {};
}

void rankOneByOne(const BranchQuestion& asked, const std::vector<catalog::ThreadKey>& threads, SenderJudge& judge,
                  Branch& branch) {
  std::vector<catalog::Sender> senders = sendersThatCouldGoThere(asked, threads);
  std::set<std::string_view> seen;
  for (const catalog::Sender& sender : senders) seen.insert(sender.id.text);
  std::vector<catalog::Sender> own = sendersOfTheirOwn(asked);
  std::erase_if(own, [&](const catalog::Sender& sender) { return seen.contains(sender.id.text); });
  auto fitted = fittedNew(asked, threads);
  if (!fitted) fitted = fittedNewAmong(asked, own);
  std::move(own.begin(), own.end(), std::back_inserter(senders));
  branch.considered = senders.size();
  branch.ranked = judge.judge(senders);
  markFitted(fitted, branch.ranked);
  rank(branch.ranked);
}

}  // namespace

std::vector<catalog::ThreadKey> threadsConsidered(const PortChoice& port, const SenderJudge& judge) {
  const catalog::Thread* thread = port.thread ? judge.thread(*port.thread) : nullptr;
  if (thread == nullptr) return {};
  std::set<catalog::ThreadKey> threads{thread->id};
  for (const auto& bushing : judge.bushings()) threads.emplace(bushing.sender);
  for (const auto& other : judge.threads()) {
    if (joint::compare(threadOf(*thread), threadOf(other)).fit == joint::ThreadFit::looksAlikeButDoesNot)
      threads.insert(other.id);
  }
  return {threads.begin(), threads.end()};
}

std::vector<catalog::Sender> sendersOfTheirOwn(const BranchQuestion& asked) {
  std::vector<catalog::Sender> own;
  const auto take = [&](catalog::Sender sender) {
    if (std::none_of(own.begin(), own.end(), [&](const auto& known) { return known.id == sender.id; }))
      own.push_back(std::move(sender));
  };
  if (asked.line && asked.port.engine && asked.question.year) {
    for (const auto& original :
         catalog::originalSenders(asked.catalogue, asked.line->id, asked.port.engine->id, *asked.question.year))
      if (auto sender = catalog::sender(asked.catalogue, original.sender)) take(std::move(*sender));
  }
  if (!asked.question.fitted.empty())
    for (auto& sender : catalog::sendersNumbered(asked.catalogue, asked.question.fitted)) take(std::move(sender));
  return own;
}

std::optional<catalog::SenderKey> fittedNew(const BranchQuestion& asked,
                                            const std::vector<catalog::ThreadKey>& threads) {
  const auto years = yearsMade(asked);
  if (!asked.question.fitted.empty() || !asked.port.engine || !years) return {};
  for (const catalog::ThreadKey& thread : threads)
    if (auto found =
            catalog::firstOriginal(asked.catalogue, asked.port.engine->id, thread, years->first, years->second))
      return found;
  if (!threads.empty() || !asked.dash.gauge) return {};
  return catalog::firstOriginal(asked.catalogue, asked.port.engine->id, asked.dash.gauge->family, years->first,
                                years->second);
}

std::optional<catalog::SenderKey> fittedNewAmong(const BranchQuestion& asked,
                                                 const std::vector<catalog::Sender>& senders) {
  const auto years = yearsMade(asked);
  if (!asked.question.fitted.empty() || !asked.port.engine || !years) return {};
  for (const catalog::Sender& sender : senders) {
    if (sender.kind != catalog::SenderKind::variableSender) continue;
    for (const auto& use : catalog::originalUses(asked.catalogue, sender.id))
      if (use.engine == asked.port.engine->id && use.years.from.value <= years->second.value &&
          years->first.value < use.years.until.value)
        return sender.id;
  }
  return {};
}

void markFitted(const std::optional<catalog::SenderKey>& fitted, std::vector<Candidate>& candidates) {
  if (!fitted) return;
  for (Candidate& candidate : candidates) {
    if (!candidate.lot.empty() || candidate.part != fitted->text) continue;
    candidate.fittedNow = true;
    if (candidate.link.basisText == "selected") candidate.link.basisText = "likely in the head now";
  }
}

void rankSenders(const BranchQuestion& asked, SenderJudge& judge, ElectricalJudge& electrical, Branch& branch) {
  const std::vector<catalog::ThreadKey> threads = threadsConsidered(asked.port, judge);
  if (few(asked, threads)) rankOneByOne(asked, threads, judge, branch);
  else GroupedCandidates(asked, threads, judge, electrical).rankInto(branch);
}

}  // namespace ohmkin::workflow
