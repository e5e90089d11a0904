#include <fmt/format.h>
#include <joint/terminal.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::joint {
namespace {

/// Millimetres. Neighbouring tab sizes of IEC 61210 lie 1.5 mm and more apart, stud sizes 0.5 mm.
constexpr double kSameSize = 0.15;

enum class Match { yes, no, unknown };

Match matchOf(const Terminal& wire, const Terminal& sender) {
  if (wire.id == sender.id) return Match::yes;
  if (wire.kind != sender.kind || wire.contacts != sender.contacts) return Match::no;
  if (!wire.size || !sender.size) return Match::unknown;
  return std::abs(inMillimetres(*wire.size) - inMillimetres(*sender.size)) <= kSameSize ? Match::yes : Match::no;
}

Finding finding(std::string code, Severity severity, std::string sentence, const Terminal& wire,
                const Terminal& sender) {
  return {std::move(code), severity, std::move(sentence), fmt::format("wire end {}, sender {}", wire.name, sender.name),
          sender.source};
}

PlugJudgement unlike(const Terminal& wire, const Terminal& sender, std::span<const Pigtail> pigtails) {
  const auto pigtail =
      std::ranges::find_if(pigtails, [&](const Pigtail& p) { return p.harness == wire.id && p.sender == sender.id; });
  PlugJudgement judgement;
  if (pigtail != pigtails.end()) {
    judgement.fit = TerminalFit::needsPigtail;
    judgement.pigtail = pigtail->id;
    judgement.findings.push_back(finding(
        "terminal-needs-pigtail", Severity::caution,
        fmt::format("Wire end: {}; sender: {}. Add pigtail {}.", wire.name, sender.name, pigtail->id), wire, sender));
    judgement.findings.back().source = pigtail->source;
    return judgement;
  }
  judgement.fit = TerminalFit::doesNotFit;
  judgement.findings.push_back(
      finding("terminal-does-not-fit", Severity::refusal,
              fmt::format("Wire end: {}; sender: {}. No pigtail is known that joins them.", wire.name, sender.name),
              wire, sender));
  return judgement;
}

}  // namespace

PlugJudgement judgePlug(const std::optional<Terminal>& wire, const std::optional<Terminal>& sender,
                        std::span<const Pigtail> pigtails) {
  PlugJudgement judgement;
  if (!sender) {
    judgement.findings.push_back({"terminal-of-sender-not-known", Severity::note,
                                  "The catalogue does not say what terminal this sender has.", "", ""});
    return judgement;
  }
  if (!wire) {
    judgement.findings.push_back({"terminal-not-seen", Severity::note,
                                  fmt::format("Look at the wire end; this sender is made for: {}.", sender->name),
                                  sender->look, sender->source});
  } else {
    const Match match = matchOf(*wire, *sender);
    if (match == Match::no) {
      judgement = unlike(*wire, *sender, pigtails);
    } else if (match == Match::unknown) {
      judgement.findings.push_back(
          finding("terminal-size-not-known", Severity::note,
                  fmt::format("Both are of one kind ({}), but a size is not known: try it by hand.", sender->name),
                  *wire, *sender));
    } else {
      judgement.fit = TerminalFit::fits;
      judgement.findings.push_back(finding("terminal-fits", Severity::note,
                                           fmt::format("The wire end fits: {}.", sender->name), *wire, *sender));
    }
  }
  if (wire && sender->contacts > wire->contacts)
    judgement.findings.push_back(
        finding("terminal-second-contact", Severity::caution,
                "The sender has more contacts than the harness has wires: one of them needs a ground or a "
                "lamp wire of its own.",
                *wire, *sender));
  return judgement;
}

}  // namespace ohmkin::joint
