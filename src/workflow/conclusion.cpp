#include <fmt/format.h>
#include <workflow/conclusion.h>
#include <algorithm>
#include <cmath>
#include <string_view>
#include <tuple>

namespace ohmkin::workflow {
namespace {

Severity gravest(const std::vector<Finding>& findings) {
  Severity worst = Severity::note;
  for (const Finding& finding : findings) worst = std::max(worst, finding.severity);
  return worst;
}

/// A measured lot is judged by its curve, of whatever family it is.
std::string electricalSentence(const Candidate& candidate) {
  constexpr std::string_view kUnmeasured = "Another family, but close enough: ";
  const std::string& sentence = candidate.verdict->sentence;
  if (candidate.measured.empty() || !sentence.starts_with(kUnmeasured)) return sentence;
  return "Close enough as measured: " + sentence.substr(kUnmeasured.size());
}

}  // namespace

std::string kindSentence(catalog::SenderKind kind) {
  switch (kind) {
    case catalog::SenderKind::warningSwitch:
      return "A warning switch: it opens or closes for a lamp; a gauge on it would stand at one end or the other.";
    case catalog::SenderKind::senderWithLampSwitch:
      return "A sender with a lamp switch in one body: its two terminals are easily taken for one another, so it is "
             "not proposed for a plain gauge.";
    case catalog::SenderKind::pulsingContact:
      return "A heated contact that pulses, not a resistance: an ohmmeter shows about nothing and this gauge cannot "
             "read it.";
    case catalog::SenderKind::controllerSensor:
      return "A sensor for the engine's controller: thousands of ohms, far above any dash gauge.";
    case catalog::SenderKind::fanSwitch:
      return "A fan switch: it closes at one temperature and tells a gauge nothing in between.";
    case catalog::SenderKind::variableSender:
      break;
  }
  return {};
}

bool joins(const Candidate& candidate) {
  return candidate.screw.state != JointState::cut && candidate.plug.state != JointState::cut &&
         gravest(candidate.screw.findings) < Severity::refusal && gravest(candidate.plug.findings) < Severity::refusal;
}

pairing::Rank rankOf(bool variable, bool joined, bool pulsing, const pairing::Verdict* verdict, JointState plug,
                     JointState screw) {
  if (!variable || !joined || pulsing) return pairing::Rank::refused;
  if (verdict == nullptr) return pairing::Rank::undecided;
  return pairing::rankOf(verdict->electrical, plug == JointState::withPart, screw == JointState::withPart);
}

double worstAsFitted(pairing::Rank rank, const pairing::ErrorTable* errors, const pairing::TrimProposal* trim) {
  constexpr double kNotKnown = 1e9;
  const pairing::ErrorTable* fitted = rank == pairing::Rank::trimmedWithinLimits ? &trim->after : errors;
  return fitted != nullptr ? std::abs(inKelvin(fitted->worst.error)) : kNotKnown;
}

void conclude(const catalog::Sender& sender, bool pulsing, Candidate& candidate) {
  const bool variable = sender.kind == catalog::SenderKind::variableSender;
  const bool joined = joins(candidate);
  candidate.rank =
      rankOf(variable, joined, pulsing, candidate.verdict.get(), candidate.plug.state, candidate.screw.state);
  if (candidate.rank == pairing::Rank::trimmedWithinLimits)
    candidate.partsNeeded.push_back(candidate.trim->network.name());

  // One plain sentence: what speaks against it first, else what the needle does and what has to be added.
  const auto firstOf = [](const std::vector<Finding>& findings, Severity least) -> std::string {
    for (const Finding& finding : findings) {
      if (finding.severity >= least) return finding.sentence;
    }
    return {};
  };
  if (!variable) candidate.sentence = kindSentence(sender.kind);
  else if (candidate.screw.state == JointState::cut)
    candidate.sentence = firstOf(candidate.screw.findings, Severity::warning);
  else if (candidate.plug.state == JointState::cut)
    candidate.sentence = firstOf(candidate.plug.findings, Severity::caution);
  else if (candidate.verdict) candidate.sentence = electricalSentence(candidate);
  else candidate.sentence = firstOf(candidate.electrical.findings, Severity::note);
  if (joined && variable && candidate.screw.state == JointState::withPart)
    candidate.sentence += fmt::format(" Thread {}: add {} in this port.", sender.thread.text, candidate.screw.words);
  if (joined && variable && candidate.plug.state == JointState::withPart)
    candidate.sentence += fmt::format(" Add {}.", candidate.plug.words);
  if (joined && candidate.rank == pairing::Rank::sameFamily && candidate.shelf.empty())
    candidate.sentence += " None on the shelf.";
  if (!candidate.measured.empty()) candidate.sentence += fmt::format(" Judged by its own {}.", candidate.measured);

  candidate.link = {
      "Sender", candidate.lot.empty() ? candidate.part : fmt::format("{}, lot {}", candidate.part, candidate.lot),
      fmt::format("{} · {}", candidate.family.empty() ? candidate.kind : candidate.family, sender.thread.text),
      candidate.fittedNow     ? "in the head now"
      : candidate.lot.empty() ? "selected"
                              : "by its own bench curve",
      Basis::known};
}

void rank(std::vector<Candidate>& candidates) {
  const auto key = [](const Candidate& c) {
    const double worst = worstAsFitted(c.rank, c.errors.get(), c.trim.get());
    const bool doubtful = !c.findings.empty() && c.findings.front().code == kLotMisreads;
    return std::tuple(c.rank, c.partsNeeded.size(), !c.replacedBy.empty(), doubtful, c.shelf.empty(), !c.fittedNow,
                      worst, std::string_view(c.part), std::string_view(c.lot));
  };
  std::stable_sort(candidates.begin(), candidates.end(),
                   [&](const Candidate& a, const Candidate& b) { return key(a) < key(b); });
}

}  // namespace ohmkin::workflow
