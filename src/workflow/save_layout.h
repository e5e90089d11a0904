#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <dating/layout.h>
#include <finding/refusal.h>
#include <quantity/date.h>
#include <string>
#include <string_view>

/// A shop adds a layout of its own, without code: try it, then keep it.
namespace ohmkin::workflow {

/// Where the shop knows it from. Nothing goes into the catalogue without.
struct StatedSource {
  catalog::SourceKind kind = catalog::SourceKind::commonPractice;  ///< all but demo
  std::string citation;
};
/// "common practice: as seen on three heads"; refuses an unknown kind, demo, or nothing cited.
Expected<StatedSource> readSource(std::string_view text, std::string_view where);

/// Refuses source-kind (demo), source-citation (nothing cited).
Expected<void> checkStatedSource(const StatedSource& source);
/// How far a source of that kind is to be trusted where nobody says more. Judgement from memory, no source.
double usualConfidence(catalog::SourceKind kind);

/// "month letter", "day:00", "separator:-.?": the kind, after a colon its text, a ? at the end where it may be left
/// out.
Expected<dating::Field> readField(std::string_view text, std::string_view where);
std::string fieldText(const dating::Field& field);  ///< the same back

struct LayoutToSave {
  dating::Layout layout;  ///< id: small letters, digits and hyphens
  std::string example;    ///< a code as it is read …
  Date exampleDate;       ///< … and the day it names; the layout must read it so
  StatedSource source;
  bool replace = false;  ///< a layout that has this id is replaced, a pack's too
};

struct SavedLayout {
  dating::Layout layout;  ///< as kept: letters in capitals
  bool replaced = false;
  std::string sentence;  ///< "Layout 'shop-head' added, the shop's own."
};

/// The example is the proof that layout and reality speak of the same thing: the layout must read it, plainly, as that
/// day. Refuses layout-example.
Expected<void> checkLayoutExample(const dating::Layout& layout, const std::string& example, Date day);

/// Every check that saving makes, without saving; the layout as it would be kept. Where: "name", "id", "field",
/// "example", "source".
Expected<dating::Layout> checkLayoutToSave(const LayoutToSave& asked);

/// Refuses, and writes nothing: a layout that is unsound, circular or ambiguous, an example it does not read, a source
/// without citation, an id that is taken. `who` goes into the change log. Throws catalog::CatalogueError.
Expected<SavedLayout> saveLayout(catalog::Catalogue& catalogue, const LayoutToSave& asked, std::string_view who);

/// An id made from a name: "Month letter, day" → "month-letter-day"; empty where nothing of it can stand in an id.
std::string layoutIdFrom(std::string_view name);

}  // namespace ohmkin::workflow
