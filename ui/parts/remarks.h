#pragma once
#include <finding/finding.h>
#include <parts/finding_list.h>
#include <vector>

/// Findings as a list shows them.
namespace ohmkin::parts {

Weight weightOf(Severity severity);

/// Each finding once, however often it is said; the first of a topic stands under its name.
class Remarks {
 public:
  void add(const QString& topic, const std::vector<Finding>& some);
  [[nodiscard]] std::vector<FindingWords> take() { return std::move(words_); }

 private:
  std::vector<Finding> seen_;
  std::vector<FindingWords> words_;
};

}  // namespace ohmkin::parts
