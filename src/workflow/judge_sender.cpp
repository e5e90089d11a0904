#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/bench_lots.h>
#include <workflow/conclusion.h>
#include <workflow/joints.h>
#include <workflow/judge_sender.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

void append(std::vector<Finding>& all, const std::vector<Finding>& some) {
  all.insert(all.end(), some.begin(), some.end());
}

Joint electricalJoint(const Electrics& electrics, const DisplayUnits& units) {
  const std::string worst = printDifference(electrics.errors.worst.error, units);
  const std::vector<Finding>& findings = electrics.verdict.findings;
  switch (electrics.verdict.electrical) {
    case pairing::Electrical::sameFamily:
    case pairing::Electrical::withinLimits:
      return {JointState::fits, "fits, worst " + worst, findings};
    case pairing::Electrical::trimmedWithinLimits:
      return {JointState::withPart, "with " + electrics.trim->network.name(), findings};
    case pairing::Electrical::readsHigh:
      return {JointState::cut, "reads high, " + worst, findings};
    case pairing::Electrical::undecided:
      return {JointState::look, "not settled", findings};
    case pairing::Electrical::refused:
      return {JointState::cut, "misreads, " + worst, findings};
  }
  return {};
}

}  // namespace

SenderJudge::SenderJudge(const catalog::Catalogue& catalogue, const DashChoice& dash, const PortChoice& port,
                         const Question& question, ElectricalJudge& electrical, const MatchOptions& options)
    : catalogue_(catalogue),
      portChoice_(port),
      question_(question),
      electrical_(electrical),
      options_(options),
      threads_(catalog::threads(catalogue)),
      terminals_(catalog::terminals(catalogue)) {
  if (port.thread) {
    if (const catalog::Thread* record = thread(*port.thread)) port_.thread = threadOf(*record);
    for (const auto& adapter : catalog::adaptersInto(catalogue, *port.thread)) bushings_.push_back(bushingOf(adapter));
  }
  if (port.port) {
    port_.where = fmt::format("casting {}, {}", port.port->casting.text, port.port->location);
    port_.depth = port.port->depth;
    port_.longestReach = port.port->longestReach;
    port_.source = catalog::cite(port.port->source);
  } else {
    port_.where = port.thread ? "the port as seen" : "the port";
    port_.source = "your observation";
  }

  std::string wire = question.terminal;
  if (wire.empty() && dash.cluster && dash.cluster->terminal) wire = dash.cluster->terminal->text;
  for (const catalog::Terminal& terminal : terminals_) {
    if (!wire.empty() && (folded(terminal.id.text) == folded(wire) || folded(terminal.name) == folded(wire)))
      wireEnd_ = terminalOf(terminal);
  }
  if (wireEnd_) {
    for (const auto& pigtail : catalog::pigtailsFor(catalogue, catalog::TerminalKey(wireEnd_->id)))
      pigtails_.push_back(pigtailOf(pigtail));
  }
}

const catalog::Thread* SenderJudge::thread(const catalog::ThreadKey& key) const {
  const auto found =
      std::find_if(threads_.begin(), threads_.end(), [&](const auto& thread) { return thread.id == key; });
  return found == threads_.end() ? nullptr : &*found;
}

std::vector<Candidate> SenderJudge::judge(const std::vector<catalog::Sender>& senders) {
  std::deque<Case> cases;
  for (const catalog::Sender& sender : senders) {
    cases.push_back(begin(sender, std::nullopt));
    if (sender.kind != catalog::SenderKind::variableSender) continue;
    for (catalog::CurveRecord& lot : catalog::benchCurves(catalogue_, sender.id))
      cases.push_back(begin(sender, std::move(lot)));
  }
  if (electrical_.side().gauge) {
    for (const Case& one : cases) {
      const bool asks = one.sender->kind == catalog::SenderKind::variableSender && (one.sender->family || one.lot);
      if (asks)
        electrical_.want(one.sender->family.value_or(catalog::FamilyKey{}), one.lot ? &*one.lot : nullptr,
                         joins(one.candidate));
    }
    electrical_.judgeWanted();
  }
  for (Case& one : cases) finish(one);
  warnOfLots(cases);
  std::vector<Candidate> candidates;
  candidates.reserve(cases.size());
  for (Case& one : cases) candidates.push_back(std::move(one.candidate));
  return candidates;
}

/// A part number is not a curve: what one lot was measured to do is said with the part itself.
void SenderJudge::warnOfLots(std::deque<Case>& cases) {
  for (std::size_t part = 0; part < cases.size(); ++part) {
    Candidate& candidate = cases[part].candidate;
    if (cases[part].lot || !candidate.recommended()) continue;
    for (std::size_t lot = part + 1; lot < cases.size() && cases[lot].sender == cases[part].sender; ++lot) {
      const Candidate& measured = cases[lot].candidate;
      const bool misreads =
          measured.rank >= pairing::Rank::trimmedWithinLimits && measured.rank != pairing::Rank::undecided;
      if (!misreads) continue;
      Finding finding{
          kLotMisreads, Severity::warning,
          fmt::format("Lot {} was measured and misreads: look at the lot, or measure this one.", measured.lot),
          measured.sentence, "bench curve of that lot"};
      candidate.sentence += " " + finding.sentence;
      candidate.findings.insert(candidate.findings.begin(), std::move(finding));
      break;
    }
  }
}

SenderJudge::Case SenderJudge::begin(const catalog::Sender& sender, std::optional<catalog::CurveRecord> lot) {
  Case one{&sender, std::move(lot), {}};
  Candidate& candidate = one.candidate;
  candidate.part = sender.id.text;
  candidate.name = sender.name;
  candidate.kind = catalog::text(sender.kind);
  candidate.thread = sender.thread.text;
  if (one.lot) candidate.lot = one.lot->lot.empty() ? "not named" : one.lot->lot;
  candidate.fittedNow = candidate.fittedNowSaid =
      !question_.fitted.empty() && folded(question_.fitted) == folded(sender.id.text);
  if (sender.family) {
    if (const auto* family = electrical_.family(*sender.family)) candidate.family = family->name;
  }
  judgeKind(sender, candidate);
  judgeScrew(sender, candidate);
  judgePlug(sender, candidate);
  return one;
}

void SenderJudge::finish(Case& one) {
  const catalog::Sender& sender = *one.sender;
  if (sender.kind == catalog::SenderKind::variableSender)
    judgeNeedle(sender, one.lot ? &*one.lot : nullptr, one.candidate);
  judgeEra(sender, one.candidate);
  lookOnTheShelf(sender, one.candidate);
  if (one.lot && one.candidate.curve) sayWhoseCurve(sender, *one.lot, one.candidate);
  conclude(sender, electrical_.side().pulsing, one.candidate);
}

void SenderJudge::sayWhoseCurve(const catalog::Sender& sender, const catalog::CurveRecord& lot, Candidate& candidate) {
  candidate.measured = benchCurveWords(catalogue_, lot);
  if (!sender.family) return;
  const catalog::Family* claimed = electrical_.family(*sender.family);
  if (claimed == nullptr) return;
  if (auto finding = disagreement(*candidate.curve, *claimed, candidate.measured, options_.units))
    candidate.findings.push_back(*std::move(finding));
}

void SenderJudge::judgeKind(const catalog::Sender& sender, Candidate& candidate) const {
  const std::string sentence = kindSentence(sender.kind);
  if (sentence.empty()) return;
  const Finding finding{"not-a-variable-sender", Severity::refusal, sentence,
                        "part " + sender.id.text + ", " + candidate.kind, catalog::cite(sender.source)};
  candidate.findings.push_back(finding);
  candidate.electrical = {JointState::cut, std::string(catalog::text(sender.kind)), {finding}};
}

void SenderJudge::judgeScrew(const catalog::Sender& sender, Candidate& candidate) const {
  joint::ScrewJudgement screw =
      joint::judgeScrew(port_, bodyOf(sender, thread(sender.thread)), bushings_, options_.units);
  append(candidate.findings, screw.findings);
  candidate.screw.findings = std::move(screw.findings);
  switch (screw.fit) {
    case joint::ScrewFit::fits:
      candidate.screw.state = JointState::fits, candidate.screw.words = "screws in";
      break;
    case joint::ScrewFit::withBushing:
      candidate.screw.state = JointState::withPart;
      candidate.screw.words = "bushing " + screw.bushing;
      candidate.partsNeeded.push_back(screw.bushing);
      break;
    case joint::ScrewFit::looksAlike:
      candidate.screw.state = JointState::cut, candidate.screw.words = "looks alike, is not";
      break;
    case joint::ScrewFit::doesNotFit:
      candidate.screw.state = JointState::cut, candidate.screw.words = "does not fit";
      break;
    case joint::ScrewFit::notSeen:
      candidate.screw.state = JointState::look, candidate.screw.words = "look";
      break;
  }
}

SenderJudge::JointOutcome SenderJudge::screwOf(const catalog::Sender& sender) const {
  Candidate alone;
  judgeScrew(sender, alone);
  return {alone.screw.state, joins(alone), alone.partsNeeded.size()};
}

SenderJudge::JointOutcome SenderJudge::plugOf(const catalog::Sender& sender) const {
  Candidate alone;
  judgePlug(sender, alone);
  return {alone.plug.state, joins(alone), alone.partsNeeded.size()};
}

std::string SenderJudge::terminalName(const catalog::TerminalKey& terminal) const {
  const auto record =
      std::find_if(terminals_.begin(), terminals_.end(), [&](const auto& known) { return known.id == terminal; });
  return record == terminals_.end() ? terminal.text : record->name;
}

void SenderJudge::judgePlug(const catalog::Sender& sender, Candidate& candidate) const {
  const auto record = std::find_if(terminals_.begin(), terminals_.end(),
                                   [&](const auto& terminal) { return terminal.id == sender.terminal; });
  std::optional<joint::Terminal> terminal;
  if (record != terminals_.end()) terminal = terminalOf(*record);
  candidate.terminal = terminalName(sender.terminal);
  joint::PlugJudgement plug = joint::judgePlug(wireEnd_, terminal, pigtails_);
  append(candidate.findings, plug.findings);
  candidate.plug.findings = std::move(plug.findings);
  switch (plug.fit) {
    case joint::TerminalFit::fits:
      candidate.plug.state = JointState::fits, candidate.plug.words = "plugs on";
      break;
    case joint::TerminalFit::needsPigtail:
      candidate.plug.state = JointState::withPart;
      candidate.plug.words = "pigtail " + plug.pigtail;
      candidate.partsNeeded.push_back(plug.pigtail);
      break;
    case joint::TerminalFit::doesNotFit:
      candidate.plug.state = JointState::cut;
      candidate.plug.words = "wire end does not fit";
      break;
    case joint::TerminalFit::notSeen:
      candidate.plug.state = JointState::look, candidate.plug.words = "look";
      break;
  }
}

void SenderJudge::judgeNeedle(const catalog::Sender& sender, const catalog::CurveRecord* lot, Candidate& candidate) {
  const auto unknown = [&](std::string sentence, std::string evidence) {
    const Finding finding{"electrical-unknown", Severity::caution, std::move(sentence), std::move(evidence),
                          catalog::cite(sender.source)};
    candidate.findings.push_back(finding);
    candidate.electrical = {JointState::look, "not known", {finding}};
  };
  if (electrical_.side().pulsing) {
    const Finding finding{"gauge-wants-a-pulse", Severity::refusal,
                          "This gauge is driven by a heated contact that pulses; a resistance sender cannot work it.",
                          candidate.family, electrical_.side().source};
    candidate.findings.push_back(finding);
    candidate.electrical = {JointState::cut, "wants a pulse", {finding}};
    return;
  }
  if (!electrical_.side().gauge)
    return unknown("Whether the needle tells the truth is not known: the gauge is not known.", "no gauge");
  if (!sender.family && lot == nullptr)
    return unknown("The catalogue does not know this part's resistance.", "no family");
  const std::shared_ptr<const Electrics> electrics =
      electrical_.found(sender.family.value_or(catalog::FamilyKey{}), lot);
  if (electrics == nullptr)
    return unknown("Its curve cannot be held against this gauge: " + electrical_.why() + ".", candidate.family);
  candidate.curve = {electrics, &electrics->curve};
  candidate.errors = {electrics, &electrics->errors};
  candidate.verdict = {electrics, &electrics->verdict};
  if (electrics->wide) candidate.wide = {electrics, &*electrics->wide};
  if (electrics->trim) candidate.trim = {electrics, &*electrics->trim};
  append(candidate.findings, electrics->verdict.findings);
  candidate.electrical = electricalJoint(*electrics, options_.units);
}

void SenderJudge::judgeEra(const catalog::Sender& sender, Candidate& candidate) const {
  if (!portChoice_.made.produced) return;
  const auto& [first, last] = *portChoice_.made.produced;
  const bool before = sender.fittedNew.from && last < *sender.fittedNew.from;
  const bool after = sender.fittedNew.until && first >= *sender.fittedNew.until;
  if (!before && !after) return;
  candidate.findings.push_back(
      {"era-differs", Severity::note,
       fmt::format("Fitted new {} this engine's time ({}); thread and gauge decide, not the year.",
                   before ? "only after" : "before",
                   first == last ? fmt::format("{}", first) : fmt::format("{}–{}", first, last)),
       portChoice_.made.words, catalog::cite(sender.source)});
}

void SenderJudge::lookOnTheShelf(const catalog::Sender& sender, Candidate& candidate) const {
  for (const catalog::Stock& stock : catalog::stock(catalogue_, sender.id)) {
    if (stock.quantity > 0) candidate.shelf.push_back({stock.bin, stock.quantity});
  }
  const auto chain = catalog::replacements(catalogue_, sender.id);
  if (chain.empty()) return;
  candidate.replacedBy = chain.back().sender.text;
  candidate.findings.push_back(
      {"superseded", Severity::note,
       fmt::format("No longer supplied: {} stands in for it since {}.", candidate.replacedBy, chain.back().since),
       fmt::format("{} step{}", chain.size(), chain.size() == 1 ? "" : "s"), catalog::cite(chain.back().source)});
}

}  // namespace ohmkin::workflow
