#include <match/reasons.h>
#include <match/wording.h>
#include <parts/remarks.h>

namespace ohmkin::match {

using workflow::Branch;
using workflow::Candidate;

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
  parts::Remarks findings;
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
