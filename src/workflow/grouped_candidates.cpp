#include <workflow/conclusion.h>
#include <workflow/grouped_candidates.h>
#include <algorithm>
#include <map>
#include <tuple>

namespace ohmkin::workflow {
namespace {

std::string nameOf(const catalog::ThreadKey& thread, std::string_view likeness) {
  return (thread.text + '\n').append(likeness);
}

bool isVariable(const catalog::SenderGroup& group) { return group.kind == catalog::SenderKind::variableSender; }

/// As rank() has it.
using Order = std::tuple<pairing::Rank, std::size_t, bool, bool, bool, bool, double, std::string, std::string>;

Order orderOf(const Candidate& c) {
  const bool misreadingLot = !c.findings.empty() && c.findings.front().code == kLotMisreads;
  return {c.rank,
          c.partsNeeded.size(),
          !c.replacedBy.empty(),
          misreadingLot,
          c.shelf.empty(),
          !c.fittedNow,
          worstAsFitted(c.rank, c.errors.get(), c.trim.get()),
          c.part,
          c.lot};
}

Unlisted alone(const Candidate& c) {
  return {1, c.part, c.lot, c.fittedNow, c.family, c.thread, c.terminal, c.screw.state, c.curve, c.verdict};
}

}  // namespace

GroupedCandidates::GroupedCandidates(const BranchQuestion& asked, const std::vector<catalog::ThreadKey>& threads,
                                     SenderJudge& judge, ElectricalJudge& electrical)
    : asked_(asked), threads_(threads), judge_(judge), electrical_(electrical) {}

void GroupedCandidates::rankInto(Branch& branch) {
  findGroups();
  findApart();
  want();
  std::vector<Candidate> all = judge_.judge(apart_);
  settle();
  for (Candidate& candidate : judge_.judge(choose(asked_.options.mostListed))) all.push_back(std::move(candidate));
  markFitted(fitted_, all);
  rank(all);
  branch.considered = outside_;
  for (const Judged& judged : groups_) branch.considered += judged.group.senders;
  list(std::move(all), branch);
}

void GroupedCandidates::findGroups() {
  const auto take = [&](std::vector<catalog::SenderGroup> found) {
    for (catalog::SenderGroup& group : found) {
      byName_.emplace(nameOf(group.thread, group.likeness), groups_.size());
      Judged judged;
      judged.group = std::move(group);
      groups_.push_back(std::move(judged));
    }
  };
  if (!threads_.empty())
    for (const catalog::ThreadKey& thread : threads_) take(catalog::senderGroups(asked_.catalogue, thread));
  else
    for (const catalog::Thread& thread : judge_.threads())
      take(catalog::senderGroups(asked_.catalogue, thread.id, asked_.dash.gauge->family));
  layOnTheShelf();
}

void GroupedCandidates::layOnTheShelf() {
  std::unordered_map<std::string, std::vector<Judged*>> toTerminal;
  for (Judged& judged : groups_)
    toTerminal[nameOf(judged.group.thread, catalog::toTerminal(judged.group))].push_back(&judged);
  for (catalog::GroupedSender& part : catalog::sendersOnTheShelf(asked_.catalogue)) {
    const auto found = toTerminal.find(nameOf(part.thread, part.likeness));
    if (found == toTerminal.end()) continue;
    Judged* judged = found->second.front();
    if (found->second.size() > 1) {
      const auto whole = catalog::groupedSender(asked_.catalogue, part.id);
      judged = whole ? groupOf(*whole) : nullptr;
    }
    if (judged != nullptr) judged->onTheShelf.push_back(std::move(part));
  }
}

void GroupedCandidates::findApart() {
  for (const catalog::GroupedSender& part : catalog::sendersWithBenchCurves(asked_.catalogue))
    if (groupOf(part) != nullptr) setApart(part);
  std::vector<catalog::Sender> outside;
  for (catalog::Sender& sender : sendersOfTheirOwn(asked_)) {
    const auto part = catalog::groupedSender(asked_.catalogue, sender.id);
    if (!part || groupOf(*part) == nullptr) outside.push_back(std::move(sender));
    else if (!asked_.question.fitted.empty()) setApart(*part);
  }
  fitted_ = fittedNew(asked_, threads_);
  if (!fitted_) fitted_ = fittedNewAmong(asked_, outside);
  else if (const auto part = catalog::groupedSender(asked_.catalogue, *fitted_)) setApart(*part);
  outside_ = outside.size();
  for (const catalog::Sender& sender : outside) apartKnown_.insert(sender.id.text);
  std::move(outside.begin(), outside.end(), std::back_inserter(apart_));
}

void GroupedCandidates::setApart(const catalog::GroupedSender& part) {
  if (!apartKnown_.insert(part.id.text).second) return;
  auto sender = catalog::sender(asked_.catalogue, part.id);
  if (!sender) return;
  apart_.push_back(std::move(*sender));
  if (Judged* judged = groupOf(part)) judged->apart.insert(part.id.text);
}

GroupedCandidates::Judged* GroupedCandidates::groupOf(const catalog::GroupedSender& part) {
  const auto found = byName_.find(nameOf(part.thread, part.likeness));
  return found == byName_.end() ? nullptr : &groups_[found->second];
}

/// Joints of every group, each kind of body and terminal looked at once, and its curve on the list of what is judged.
void GroupedCandidates::want() {
  std::map<std::pair<std::string, std::string>, SenderJudge::JointOutcome> screws;
  std::map<std::string, SenderJudge::JointOutcome> plugs;
  for (Judged& judged : groups_) {
    const catalog::SenderGroup& group = judged.group;
    const auto [screw, newScrew] = screws.try_emplace({group.thread.text, group.body});
    if (newScrew)
      if (const auto like = catalog::sender(asked_.catalogue, group.first)) screw->second = judge_.screwOf(*like);
    const auto [plug, newPlug] = plugs.try_emplace(group.terminal.text);
    if (newPlug) {
      catalog::Sender like;
      like.terminal = group.terminal;
      plug->second = judge_.plugOf(like);
    }
    judged.screw = screw->second;
    judged.plug = plug->second;
    if (isVariable(group) && group.family && electrical_.side().gauge)
      electrical_.want(*group.family, nullptr, judged.screw.joins && judged.plug.joins);
  }
}

void GroupedCandidates::settle() {
  for (Judged& judged : groups_) {
    const bool variable = isVariable(judged.group);
    if (variable && judged.group.family && electrical_.side().gauge)
      judged.electrics = electrical_.found(*judged.group.family, nullptr);
    const Electrics* electrics = judged.electrics.get();
    judged.rank = rankOf(variable, judged.screw.joins && judged.plug.joins, electrical_.side().pulsing,
                         electrics != nullptr ? &electrics->verdict : nullptr, judged.plug.state, judged.screw.state);
    judged.partsNeeded = judged.screw.partsNeeded + judged.plug.partsNeeded +
                         (judged.rank == pairing::Rank::trimmedWithinLimits ? 1 : 0);
    judged.worst = worstAsFitted(judged.rank, electrics != nullptr ? &electrics->errors : nullptr,
                                 electrics != nullptr && electrics->trim ? &*electrics->trim : nullptr);
  }
  std::stable_sort(groups_.begin(), groups_.end(), [](const Judged& a, const Judged& b) {
    return std::tuple(a.rank, a.partsNeeded, a.worst) < std::tuple(b.rank, b.partsNeeded, b.worst);
  });
  byName_.clear();
}

/// Ordinary parts of a group at one place, by number.
std::vector<catalog::SenderKey> GroupedCandidates::partsAt(const Judged& judged, const Place& place,
                                                           std::size_t most) const {
  std::vector<catalog::SenderKey> parts;
  if (place.offTheShelf) {
    parts = catalog::sendersOffTheShelf(asked_.catalogue, judged.group, place.superseded, most + judged.apart.size());
  } else {
    for (const catalog::GroupedSender& part : judged.onTheShelf)
      if (part.superseded == place.superseded) parts.push_back(part.id);
  }
  std::erase_if(parts, [&](const catalog::SenderKey& part) { return judged.apart.contains(part.text); });
  if (parts.size() > most) parts.resize(most);
  return parts;
}

/// In the very order of rank(): groups that come to the same rank and parts compete place by place, and at each place
/// by their worst error, then by number.
std::vector<catalog::Sender> GroupedCandidates::choose(std::size_t most) {
  std::vector<catalog::Sender> chosen;
  const auto alike = [&](std::size_t from, auto same) {
    std::size_t end = from;
    while (end < groups_.size() && same(groups_[from], groups_[end])) ++end;
    return end;
  };
  const auto sameClass = [](const Judged& a, const Judged& b) {
    return a.rank == b.rank && a.partsNeeded == b.partsNeeded;
  };
  const auto sameError = [&](const Judged& a, const Judged& b) { return sameClass(a, b) && a.worst == b.worst; };
  for (std::size_t from = 0, end = 0; from < groups_.size() && chosen.size() < most; from = end) {
    end = alike(from, sameClass);
    for (const Place& place : kPlaces) {
      for (std::size_t run = from, next = from; run < end && chosen.size() < most; run = next) {
        next = alike(run, sameError);
        std::vector<std::pair<catalog::SenderKey, Judged*>> parts;
        for (std::size_t g = run; g < next; ++g) {
          if (groups_[g].taken.size() == groups_[g].ordinary()) continue;
          for (catalog::SenderKey& part : partsAt(groups_[g], place, most - chosen.size()))
            parts.emplace_back(std::move(part), &groups_[g]);
        }
        std::sort(parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
        for (auto& [part, judged] : parts) {
          if (chosen.size() == most) break;
          auto sender = catalog::sender(asked_.catalogue, part);
          if (!sender) continue;
          judged->taken.insert(part.text);
          chosen.push_back(std::move(*sender));
        }
      }
    }
  }
  return chosen;
}

std::optional<std::pair<GroupedCandidates::Place, catalog::SenderKey>> GroupedCandidates::firstNotTaken(
    const Judged& judged) const {
  for (const Place& place : kPlaces)
    for (catalog::SenderKey& part : partsAt(judged, place, judged.taken.size() + 1))
      if (!judged.taken.contains(part.text)) return std::pair(place, std::move(part));
  return {};
}

/// Cuts the list at its length; what is in the head stays on it wherever it stands. The rest goes into groups again.
void GroupedCandidates::list(std::vector<Candidate> all, Branch& branch) {
  std::vector<std::pair<Order, Unlisted>> rest;
  std::set<std::string> dropped;
  std::vector<Candidate> inHead;
  const std::size_t most = asked_.options.mostListed;
  std::size_t ordinary = 0;
  for (const Judged& judged : groups_) ordinary += judged.ordinary() - judged.taken.size();
  branch.notListed = ordinary;
  for (Candidate& candidate : all) {
    if (branch.ranked.size() < most) {
      branch.ranked.push_back(std::move(candidate));
      continue;
    }
    if (!candidate.fittedNow) ++branch.notListed;
    if (candidate.lot.empty() && !apartKnown_.contains(candidate.part)) dropped.insert(candidate.part);
    else if (candidate.kind == catalog::text(catalog::SenderKind::variableSender) &&
             candidate.screw.state != JointState::cut)
      rest.emplace_back(orderOf(candidate), alone(candidate));
    if (candidate.fittedNow) inHead.push_back(std::move(candidate));
  }
  branch.inHeadLast = inHead.size();
  std::move(inHead.begin(), inHead.end(), std::back_inserter(branch.ranked));
  for (Judged& judged : groups_) {
    if (!isVariable(judged.group) || judged.screw.state == JointState::cut) continue;
    std::erase_if(judged.taken, [&](const std::string& part) { return dropped.contains(part); });
    if (judged.taken.size() == judged.ordinary()) continue;
    auto best = firstNotTaken(judged);
    if (!best) continue;
    Unlisted group{
        judged.ordinary() - judged.taken.size(),    best->second.text,  {}, false, {}, judged.group.thread.text,
        judge_.terminalName(judged.group.terminal), judged.screw.state, {}, {}};
    if (judged.group.family)
      if (const auto* family = electrical_.family(*judged.group.family)) group.family = family->name;
    if (judged.electrics) {
      group.curve = {judged.electrics, &judged.electrics->curve};
      group.verdict = {judged.electrics, &judged.electrics->verdict};
    }
    rest.emplace_back(Order(judged.rank, judged.partsNeeded, best->first.superseded, false, best->first.offTheShelf,
                            true, judged.worst, best->second.text, std::string()),
                      std::move(group));
  }
  std::stable_sort(rest.begin(), rest.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [order, group] : rest) branch.unlisted.push_back(std::move(group));
}

}  // namespace ohmkin::workflow
