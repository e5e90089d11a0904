#pragma once
#include <catalog/catalogue.h>
#include <finding/refusal.h>
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
  tookTheShops,     ///< the shop's row under that key gave way, with what was a part of it
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

/// Looks rows up by their key, for references into what is already there.
class RowFinder {
 public:
  explicit RowFinder(const Catalogue& catalogue);
  ~RowFinder();
  RowFinder(const RowFinder&) = delete;
  RowFinder& operator=(const RowFinder&) = delete;

  /// True where the table has a row with this key that would still be there if `exceptPack` were taken out. Only tables
  /// with one key column, which is all that anything refers to (std::invalid_argument otherwise).
  bool holds(std::string_view table, std::string_view key, std::string_view exceptPack = {});

 private:
  struct Statements;
  const Catalogue& catalogue_;
  std::unique_ptr<Statements> statements_;
};

/// One transaction that puts a pack in the place of its older self. Rolls back unless kept.
class PackWriter {
 public:
  /// Waits for the write lock, then takes out the rows of an older version. Throws catalogue-read-only, catalogue-busy.
  PackWriter(Catalogue& catalogue, const Pack& pack);
  ~PackWriter();
  PackWriter(const PackWriter&) = delete;
  PackWriter& operator=(const PackWriter&) = delete;

  /// `table` and `columns` must be the catalogue's own (std::invalid_argument otherwise). What a row is a part of comes
  /// before it (a gauge before its marks); other references may be fulfilled later. Refuses, with code row-refused and
  /// the rule as expected, a row that breaks a rule of its table or repeats a key of this pack; nothing of it is
  /// written and more may follow.
  ///
  /// Where the shop has its own row under that key, the shop's stays, unless it is to give way: then it goes with its
  /// parts, and the change log keeps what it was.
  enum class ShopsRow { stays, givesWay };
  Expected<RowFate> write(std::string_view table, std::span<const std::string> columns, std::span<const Cell> row,
                          ShopsRow shops = ShopsRow::stays);

  [[nodiscard]] std::vector<Dangling> dangling(std::size_t most = 200) const;
  /// Writes the change log and commits; throws std::logic_error with anything dangling. Nothing may be written
  /// afterwards.
  void keep(std::string_view who);

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

}  // namespace ohmkin::catalog
