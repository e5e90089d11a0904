#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <finding/refusal.h>
#include <quantity/print.h>
#include <workflow/edit_kinds.h>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Things of the catalogue read into fields, checked and saved. All of them throw catalog::CatalogueError where the
/// file fails; nothing else is thrown.
namespace ohmkin::workflow {

/// Field → what stands in it, as a person types it; empty or left out: no value.
using FieldTexts = std::map<std::string, std::string, std::less<>>;

/// One thing with its parts: what a form shows and hands back.
struct Thing {
  std::string kind;
  FieldTexts fields;
  std::map<std::string, std::vector<FieldTexts>, std::less<>> parts;  ///< part's name → rows, in order
  std::string pack;    ///< whose it is: "shop" or a pack's id; empty: new
  std::string asRead;  ///< what it was when it was read: handed back untouched. Empty: new
  [[nodiscard]] bool isNew() const { return asRead.empty(); }
};

/// A source stated in the same change as the fact. `id` empty: one is made of the thing's.
struct NewSource {
  std::string id;
  catalog::SourceKind kind = catalog::SourceKind::commonPractice;
  std::string citation;
  std::optional<double> confidence;  ///< none: what is usual for its kind
};

/// One row of the parts, or the thing itself.
struct FieldPlace {
  std::string part;     ///< empty: the thing's own
  std::size_t row = 0;  ///< of the part, from 0
  std::string field;
};
/// Refusal::where of an edit: "torque_low", "dial_mark[3].angle" (rows counted from 1), "" for the whole thing.
FieldPlace fieldPlace(std::string_view where);

/// An empty thing of the kind (std::invalid_argument for an unknown one).
Thing newThing(std::string_view kind);
/// `key` in the order of EditKind::key(). Refuses thing-unknown, with what may have been meant.
Expected<Thing> readThing(const catalog::Catalogue& catalogue, std::string_view kind,
                          const std::vector<std::string>& key, const DisplayUnits& units = {});
std::vector<std::string> keyOf(const Thing& thing);  ///< as it stands in its fields
std::string nameOf(const Thing& thing);              ///< "sender SN-1", "port front of the head of 30418"

/// One field as typed. The text as it would be shown again ("185 °F" → "85 °C"), or why not, at `where`. Where the
/// catalogue is given, a reference must lead to something. Cheap: for every key.
Expected<std::string> checkField(const EditField& field, std::string_view text, const DisplayUnits& units = {},
                                 const catalog::Catalogue* catalogue = nullptr, std::string_view where = {});

/// Everything that saving would refuse, at the fields; nothing is changed. With a catalogue opened readOnly, what only
/// the tables themselves know is left out.
std::vector<Refusal> checkThing(catalog::Catalogue& catalogue, const Thing& thing,
                                const std::optional<NewSource>& source = {}, const DisplayUnits& units = {});

/// Keys of the kind that begin with, or else hold, what is typed; with a name to know each by.
struct KnownKey {
  std::string key;
  std::string name;  ///< empty: the kind has none
};
std::vector<KnownKey> completions(const catalog::Catalogue& catalogue, std::string_view kind, std::string_view typed,
                                  std::size_t most = 20);

/// Who would be left without it, counted: "12 senders (SN-1, SN-2, SN-3 …)".
struct UsedBy {
  std::string kind;  ///< table
  std::string field;
  std::int64_t count = 0;
  std::vector<std::string> first;
  [[nodiscard]] std::string words() const;
};
std::vector<UsedBy> usedBy(const catalog::Catalogue& catalogue, std::string_view kind,
                           const std::vector<std::string>& key);

/// Rows of one kind, a page after a place.
struct PageRequest {
  std::string kind;
  /// A field; empty: the key. The key's first field and indexed ones are at once, others look at all rows.
  std::string sortBy;
  bool descending = false;
  /// Field → what it must hold (letters' case does not matter). "" → any of the fields shown.
  FieldTexts filter;
  std::string onlyOf;  ///< a pack's id or "shop"; empty: all
  std::string after;   ///< RowOfPage::place of the last row seen; empty: from the beginning
  std::size_t most = 100;
};
struct RowOfPage {
  std::vector<std::string> texts;  ///< in the order of EditKind::fields
  std::vector<std::string> key;
  std::string pack;
  std::string place;  ///< for PageRequest::after
};
struct Page {
  std::vector<RowOfPage> rows;
  bool more = false;
};
/// Rows after a place: costs the page, not what went before it. Refuses field-unknown, kind-unknown.
Expected<Page> page(const catalog::Catalogue& catalogue, const PageRequest& asked, const DisplayUnits& units = {});
std::int64_t countRows(const catalog::Catalogue& catalogue, std::string_view kind);

}  // namespace ohmkin::workflow
