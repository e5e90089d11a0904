#include <finding/refusal.h>

namespace ohmkin {

std::string Refusal::sentence() const {
  std::string text = where.empty() ? std::string() : where + ": ";
  if (!found.empty()) text += "found " + found;
  if (!found.empty() && !expected.empty()) text += ", ";
  if (!expected.empty()) text += "expected " + expected;
  return text;
}

}  // namespace ohmkin
