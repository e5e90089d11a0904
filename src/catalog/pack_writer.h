#pragma once
#include <catalog/catalogue.h>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Packs of rows going into the catalogue, whole or not at all.
namespace ohmkin::catalog {

/// A value of the exchange format: nothing, whole number, number, text.
using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;

struct Pack {
  std::string id;  ///< never "shop": that is the shop's own
  std::string title;
  std::string version;
  std::string licence;
};

/// What happened to a row that was handed over.
enum class RowFate {
  written,
  keptForShop,      ///< the shop has its own row under that key, or owns what this row is a part of: the shop's stays
  ownedByOtherPack  ///< another pack has that key
};

/// A row whose reference leads nowhere once the pack is in.
struct Dangling {
  std::string table;
  std::string column;
  std::string value;
  std::string refersTo;
  std::string pack;  ///< whose row it is
};

std::optional<Pack> pack(const Catalogue& catalogue, std::string_view id);
std::vector<Pack> packs(const Catalogue& catalogue);  ///< all but the shop, by id

/// True where a row with this key is in the table and would still be there if `exceptPack` were taken out. Only for
/// tables with one key column, which is all that anything refers to.
bool holds(const Catalogue& catalogue, std::string_view table, std::string_view key, std::string_view exceptPack = {});

/// One transaction that puts a pack in the place of its older self. Rolls back unless kept.
class PackWriter {
 public:
  /// Waits for the write lock, then takes out the rows of an older version. Throws catalogue-read-only, catalogue-busy.
  PackWriter(Catalogue& catalogue, const Pack& pack);
  ~PackWriter();
  PackWriter(const PackWriter&) = delete;
  PackWriter& operator=(const PackWriter&) = delete;

  /// `table` and `columns` must be the catalogue's own (std::invalid_argument otherwise); tables in the order in which
  /// they refer to each other need not be kept. Throws CatalogueError with code row-refused where a rule of the table
  /// is broken.
  RowFate write(std::string_view table, std::span<const std::string> columns, std::span<const Cell> row);

  [[nodiscard]] std::vector<Dangling> dangling(std::size_t most = 200) const;
  /// Writes the change log and commits. With anything dangling the commit throws and nothing is changed.
  void keep(std::string_view who);

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

}  // namespace ohmkin::catalog
