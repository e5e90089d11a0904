#pragma once
#include <catalog/catalogue.h>
#include <catalog/row_editor_state.h>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Rows of one table for looking through: a page after a place, and keys for completion.
namespace ohmkin::catalog {

/// The last row seen, so that the next page begins behind it however many came before.
struct PagePlace {
  Cell sorted;  ///< its value in the column sorted by
  std::vector<Cell> key;
};

struct PageOfRows {
  std::string table;
  std::vector<std::string> columns;
  std::string sortBy;  ///< a column; empty: the key
  bool descending = false;
  struct Holds {
    std::vector<std::string> columns;  ///< any of them
    std::string text;                  ///< letters' case does not matter (ASCII)
  };
  std::vector<Holds> holds;  ///< all of them
  std::string pack;          ///< whose; empty: all
  std::optional<PagePlace> after;
  std::size_t most = 100;
};
struct RowSeen {
  std::vector<Cell> cells;  ///< in the order of `columns`
  std::string pack;
  PagePlace place;
};
/// By key, and by a column with an index, it costs the page. By another column it looks at every row.
std::vector<RowSeen> pageOfRows(const Catalogue& catalogue, const PageOfRows& asked);
std::int64_t rowCount(const Catalogue& catalogue, std::string_view table);

struct KeyAndName {
  std::string key;
  std::string name;
};
/// Of a table with one key column: keys that begin with the text first, then those that hold it, or whose `nameColumn`
/// (empty: none) does.
std::vector<KeyAndName> keysLike(const Catalogue& catalogue, std::string_view table, std::string_view nameColumn,
                                 std::string_view typed, std::size_t most);

}  // namespace ohmkin::catalog
