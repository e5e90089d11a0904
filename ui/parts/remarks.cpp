#include <desk/catalogue_thread.h>
#include <parts/remarks.h>
#include <algorithm>

namespace ohmkin::parts {

Weight weightOf(Severity severity) {
  switch (severity) {
    case Severity::note:
      return Weight::note;
    case Severity::caution:
      return Weight::caution;
    case Severity::warning:
      return Weight::warning;
    case Severity::refusal:
      break;
  }
  return Weight::refusal;
}

void Remarks::add(const QString& topic, const std::vector<Finding>& some) {
  bool first = true;
  for (const Finding& finding : some) {
    const auto same = [&](const Finding& other) {
      return other.code == finding.code && other.sentence == finding.sentence;
    };
    if (std::any_of(seen_.begin(), seen_.end(), same)) continue;
    seen_.push_back(finding);
    words_.push_back({first ? topic : QString(), desk::shown(finding.sentence), desk::shown(finding.evidence),
                      desk::shown(finding.source), weightOf(finding.severity)});
    first = false;
  }
}

}  // namespace ohmkin::parts
