#pragma once
#include <catalog/catalogue.h>
#include <catalog/pack_writer.h>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Rows of a pack, or of the shop, as cells: to be written out, or to be laid beside the rows of a package that comes
/// in.
namespace ohmkin::catalog {

class PackRows {
 public:
  /// The catalogue outlives it. Throws CatalogueError, as do all below.
  explicit PackRows(const Catalogue& catalogue);
  ~PackRows();
  PackRows(const PackRows&) = delete;
  PackRows& operator=(const PackRows&) = delete;

  /// The rows `pack` owns ("shop": the shop's own), by their key. `table` and `columns` must be the catalogue's own
  /// (std::invalid_argument otherwise).
  void each(std::string_view table, std::span<const std::string> columns, std::string_view pack,
            const std::function<void(std::span<const Cell>)>& take) const;

  struct Owned {
    std::string pack;
    std::vector<Cell> cells;
  };
  /// The row of that key, its cells in the order of `columns`. `key` in the order of the table's key.
  [[nodiscard]] std::optional<Owned> under(std::string_view table, std::span<const Cell> key,
                                           std::span<const std::string> columns) const;

  /// What a cell of the column becomes where it is left empty: the column's default, else nothing.
  [[nodiscard]] const Cell& absent(std::string_view table, std::string_view column) const;
  [[nodiscard]] const std::vector<std::string>& key(std::string_view table) const;

  /// Where the table's rows are parts of another's (marks of a gauge): that table, and the column that names it.
  struct PartOf {
    std::string whole;
    std::string column;
  };
  [[nodiscard]] std::optional<PartOf> partOf(std::string_view table) const;

 private:
  struct Shapes;
  std::unique_ptr<Shapes> shapes_;
  const Catalogue& catalogue_;
};

}  // namespace ohmkin::catalog
