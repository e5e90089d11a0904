#pragma once
#include <catalogue/clerk.h>
#include <catalogue/ref.h>
#include <QStringList>
#include <optional>
#include <vector>

/// From what the catalogue says of a thing to what the page shows. Chooses words; knows nothing of its own.
namespace ohmkin::shelves {

struct FactShown {
  QString label;
  QString value;
  Ref link;  ///< what the value leads to; empty: nowhere
};

struct SectionShown {
  QString title;  ///< empty: the thing's own facts
  std::vector<FactShown> facts;
  /// Of a part: its headings and rows.
  QStringList headings;
  std::vector<QStringList> rows;
};

struct ThingShown {
  Ref ref;
  QString kind;
  QString number;
  QString title;
  QString whose;    ///< "the shop's own", "of the pack demo"
  QString caution;  ///< "superseded by …"; empty: nothing of the kind
  std::vector<SectionShown> sections;
  [[nodiscard]] QString asText() const;
};

/// None where the catalogue has no such thing (any more).
std::optional<ThingShown> shownThing(const OpenFile& open, const Ref& ref, const DisplayUnits& units);

}  // namespace ohmkin::shelves
