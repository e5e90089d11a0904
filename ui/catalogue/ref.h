#pragma once
#include <QString>
#include <string>
#include <vector>

namespace ohmkin::shelves {

/// One thing of the catalogue: its kind, as editing names it, and its key.
struct Ref {
  std::string kind;
  std::vector<std::string> key;
  [[nodiscard]] bool empty() const { return kind.empty(); }
  friend bool operator==(const Ref&, const Ref&) = default;
};

/// The trade's words for a kind: "sender", "vehicle line".
QString kindWords(const std::string& kind);
/// "sender BR-2215"
QString nameOf(const Ref& ref);
/// The change log's subject of it.
std::string subjectOf(const Ref& ref);
/// A kind as finding and showing name it, as editing does: "vehicle line" → "vehicle_line"; empty: it is not edited.
std::string editKindOf(std::string_view word);

}  // namespace ohmkin::shelves
