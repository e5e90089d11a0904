#include <cli/match_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kShown = 6;  // beyond that --json or the window

/// A shape for each joint, said in words as well: solid, ring, cut, dots.
std::string_view shape(workflow::JointState state) {
  switch (state) {
    case workflow::JointState::fits:
      return "──●──";
    case workflow::JointState::withPart:
      return "──○──";
    case workflow::JointState::cut:
      return "─╱ ╱─";
    case workflow::JointState::look:
      return "·····";
  }
  return "";
}

std::string linkLine(const workflow::Link& link) {
  std::string line = fmt::format("  {:<11} {}", link.title, link.headline);
  if (!link.detail.empty()) line += " · " + link.detail;
  if (!link.basisText.empty()) line += fmt::format("  ({})", link.basisText);
  return line + "\n";
}

std::string jointLine(const workflow::Joint& joint) {
  return fmt::format("    {}  {}\n", shape(joint.state), joint.words);
}

std::string mark(const workflow::Candidate& candidate) {
  if (candidate.rank == pairing::Rank::refused) return "//";
  if (candidate.rank == pairing::Rank::undecided) return "..";
  return candidate.partsNeeded.empty() ? "● " : "○ ";
}

std::string candidateText(const workflow::Candidate& candidate, const DisplayUnits& units, std::size_t place) {
  std::string head = fmt::format("{:>2}. {} {}", place, mark(candidate), candidate.part);
  if (!candidate.lot.empty()) head += ", lot " + candidate.lot;
  if (!candidate.family.empty()) head += " · " + candidate.family;
  head += " · " + candidate.thread + " · " + candidate.terminal;
  if (candidate.errors) head += " · worst " + printDifference(candidate.errors->worst.error, units, 1);
  for (const auto& shelf : candidate.shelf) head += fmt::format(" · bin {}: {}", shelf.bin, shelf.quantity);
  if (candidate.fittedNow) head += candidate.fittedNowSaid ? " · in the head now" : " · likely in the head now";
  return wrapped(head, 7, 0) + wrapped(candidate.sentence, 7, 7);
}

std::string findingText(const Finding& finding) {
  const std::string_view mark = finding.severity >= Severity::warning ? "! " : "- ";
  std::string why = finding.evidence;
  if (!finding.source.empty()) why += (why.empty() ? "" : "; ") + finding.source;
  return wrapped(fmt::format("{}{}{}", mark, finding.sentence, why.empty() ? "" : fmt::format(" [{}]", why)), 4, 2);
}

std::string branchText(const workflow::Branch& branch, const DisplayUnits& units, std::size_t place, std::size_t of) {
  std::string text;
  if (of > 1) text += fmt::format("\n{} of {}  If {}\n", place, of, branch.title);
  text += "\n" + linkLine(branch.gaugeLink);
  const workflow::Candidate* best = branch.ranked.empty() ? nullptr : &branch.ranked.front();
  if (best != nullptr) text += jointLine(best->electrical);
  text += linkLine(branch.leadLink);
  if (best != nullptr) text += jointLine(best->plug) + linkLine(best->link) + jointLine(best->screw);
  text += linkLine(branch.portLink) + jointLine(branch.era) + linkLine(branch.engineLink);
  for (const Finding& finding : branch.findings) text += findingText(finding);
  if (best == nullptr) return text;

  text += fmt::format("\nSenders, best first ({} considered)\n", branch.considered);
  std::size_t shown = 0;
  for (const auto& candidate : branch.ranked) {
    if (shown == kShown) break;
    text += candidateText(candidate, units, ++shown);
  }
  if (branch.notListed > 0)
    text += fmt::format("    and {} more, further down the order (--json lists the first {})\n",
                        branch.ranked.size() + branch.notListed - shown, branch.ranked.size());
  else if (branch.ranked.size() > shown)
    text += fmt::format("    and {} more, further down the order (--json lists them)\n", branch.ranked.size() - shown);
  if (best->errors) {
    text += fmt::format("\nWhat the needle shows with {}: {}\n", best->part, hotWarningText(best->errors->hot, units));
    text += errorTableText(*best->errors, units, 7);
  }
  return text;
}

}  // namespace

std::string matchText(const workflow::Answer& answer, const DisplayUnits& units) {
  std::string text;
  std::vector<std::string> chips;
  chips.reserve(answer.chips.size());
  for (const workflow::Chip& chip : answer.chips) chips.push_back(chip.text);
  if (!chips.empty()) text += wrapped(fmt::format("{}", fmt::join(chips, " · ")), 0, 0);
  for (std::size_t i = 0; i < answer.branches.size(); ++i)
    text += branchText(answer.branches[i], units, i + 1, answer.branches.size());
  if (!answer.findings.empty()) text += "\n";
  for (const Finding& finding : answer.findings) text += findingText(finding);
  if (answer.look)
    text +=
        "\n" + wrapped(fmt::format("One look would settle it: {} {}", answer.look->what, answer.look->because), 2, 0);
  text += "\n";
  for (const std::string& caution : answer.cautions) text += wrapped(caution, 0, 0);
  return text;
}

}  // namespace ohmkin::cli
