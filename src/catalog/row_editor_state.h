#pragma once
#include <catalog/pack_writer.h>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// A row with everything that is saved with it, as it stands in the catalogue or in the change log.
namespace ohmkin::catalog {

/// Column → value, all of them but the owner.
using RowCells = std::map<std::string, Cell, std::less<>>;

struct ThingState {
  std::string table;
  std::string pack;         ///< whose it is
  std::string packVersion;  ///< of that pack then; empty for the shop
  RowCells row;
  /// Part's table → its rows in order, without the column that names the whole.
  std::map<std::string, std::vector<RowCells>, std::less<>> parts;
  std::optional<RowCells> newSource;  ///< a row of source that came with it
};

/// Same thing, same values; whose it is and the source that came with it aside.
bool sameValues(const ThingState& a, const ThingState& b);

/// JSON, one line; reads back to the same numbers.
std::string asJson(const ThingState& state);
/// None where the text is no such JSON.
std::optional<ThingState> stateFromJson(std::string_view text);

/// Tables whose rows are edited as parts of a row of `table`, and the column that names it.
struct EditedPart {
  std::string table;
  std::string column;
};
std::vector<EditedPart> editedParts(std::string_view table);
bool isEditedPart(std::string_view table);

}  // namespace ohmkin::catalog
