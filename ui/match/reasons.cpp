#include <match/reasons.h>
#include <match/wording.h>
#include <algorithm>

namespace ohmkin::match {
namespace {

using workflow::Branch;
using workflow::Candidate;

/// Each finding once, however many joints it is listed under.
class Findings {
 public:
  void add(const QString& topic, const std::vector<Finding>& some) {
    bool first = true;
    for (const Finding& finding : some) {
      if (std::find(seen_.begin(), seen_.end(), finding) != seen_.end()) continue;
      seen_.push_back(finding);
      words_.push_back({first ? topic : QString(), plain(finding.sentence), plain(finding.evidence),
                        plain(finding.source), weightOf(finding.severity)});
      first = false;
    }
  }
  [[nodiscard]] std::vector<parts::FindingWords> take() { return std::move(words_); }

 private:
  std::vector<Finding> seen_;
  std::vector<parts::FindingWords> words_;
};

}  // namespace

parts::Weight weightOf(Severity severity) {
  switch (severity) {
    case Severity::note:
      return parts::Weight::note;
    case Severity::caution:
      return parts::Weight::caution;
    case Severity::warning:
      return parts::Weight::warning;
    case Severity::refusal:
      break;
  }
  return parts::Weight::refusal;
}

QString topicOfJoint(int joint) {
  switch (joint) {
    case 0:
      return tr("Gauge and sender");
    case 1:
      return tr("Terminal");
    case 2:
      return tr("Thread and port");
    default:
      return tr("Engine and era");
  }
}

std::vector<parts::FindingWords> findingsOf(const workflow::Answer& answer, const Branch& branch,
                                            const Candidate* candidate) {
  Findings findings;
  if (candidate != nullptr) {
    findings.add(topicOfJoint(0), candidate->electrical.findings);
    findings.add(topicOfJoint(1), candidate->plug.findings);
    findings.add(topicOfJoint(2), candidate->screw.findings);
  }
  findings.add(topicOfJoint(3), branch.era.findings);
  if (candidate != nullptr) findings.add(tr("This sender"), candidate->findings);
  findings.add(tr("This vehicle and engine"), branch.findings);
  findings.add(tr("The question"), answer.findings);
  return findings.take();
}

}  // namespace ohmkin::match
