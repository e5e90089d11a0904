#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <QString>
#include <algorithm>
#include <vector>

namespace ohmkin::said {

inline bool has(const std::vector<Finding>& findings, const char* code) {
  return std::ranges::any_of(findings, [&](const Finding& f) { return f.code == code; });
}

template <class T>
QString codeOf(const Expected<T>& result) {
  return QString::fromStdString(result ? "answered" : result.error().code);
}

}  // namespace ohmkin::said
