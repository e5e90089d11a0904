#pragma once
#include <catalog/catalogue.h>
#include <catalog/row_editor_state.h>
#include <finding/refusal.h>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// One row with its parts: read, written, taken out. What it must be is for those who call; here only what the tables
/// themselves hold. Tables and columns must be the catalogue's own (std::invalid_argument otherwise).
namespace ohmkin::catalog {

/// Columns that name a row of the table, in order.
std::vector<std::string> keyColumns(const Catalogue& catalogue, std::string_view table);
/// All its columns but the owner and a number that names nothing outside the file.
std::vector<std::string> dataColumns(const Catalogue& catalogue, std::string_view table);
/// What a cell left empty becomes.
Cell absentCell(const Catalogue& catalogue, std::string_view table, std::string_view column);

std::optional<ThingState> thingState(const Catalogue& catalogue, std::string_view table, std::span<const Cell> key);

/// Rows that refer to a row, by table and column. Parts of the row itself do not count.
struct Referring {
  std::string table;
  std::string column;
  std::int64_t count = 0;
  std::int64_t ofPacks = 0;        ///< of them owned by packs
  std::vector<std::string> first;  ///< keys of a few, a key of several columns joined by ", "
};
std::vector<Referring> referringTo(const Catalogue& catalogue, std::string_view table, const std::string& key,
                                   std::size_t few = 3);

/// Whether a part that is said to stand in for `replaces` is itself, in the end, replaced by it. The chain from
/// `sender` to it, both included; empty: no.
std::vector<std::string> circleOfReplacements(const Catalogue& catalogue, const std::string& sender,
                                              const std::string& replaces);

/// One transaction with the write lock from its beginning. Rolls back unless kept. Throws catalogue-read-only,
/// catalogue-busy.
class RowEditor {
 public:
  explicit RowEditor(Catalogue& catalogue);
  ~RowEditor();
  RowEditor(const RowEditor&) = delete;
  RowEditor& operator=(const RowEditor&) = delete;

  /// Puts `now` in the place of `before` (none: adds it); the key may differ, then what refers to the old one follows.
  /// Both as thingState() gives them. Refuses row-refused with the rule that is broken, key-taken.
  Expected<void> put(const std::optional<ThingState>& before, const ThingState& now);
  void remove(const ThingState& state);

  /// A row of source, the shop's own, where there is none of that id. True where it was added.
  Expected<bool> addSource(const RowCells& source);
  /// Takes it out where nothing refers to it and it is still as it was.
  void removeSourceIfUnused(const RowCells& source);

  /// A line of the change log; its number.
  std::int64_t log(std::string_view who, const std::string& what, const std::string& subject, const std::string& before,
                   const std::string& after);
  /// Commits. Refuses reference-dangling where some reference leads nowhere; then nothing is kept.
  Expected<void> keep();

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

/// Table and key, as the change log names a row.
std::string subjectOf(std::string_view table, std::span<const Cell> key);

}  // namespace ohmkin::catalog
