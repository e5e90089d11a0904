#pragma once
#include <catalog/catalogue.h>
#include <exchange/complaints.h>
#include <exchange/package.h>
#include <compare>
#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// A package of rows into a catalogue. All of it goes in, or nothing does and the complaints say why.
namespace ohmkin::workflow {

struct TableCount {
  std::string table;
  std::size_t written = 0;
  std::size_t keptForShop = 0;   ///< rows left out because the shop has its own
  std::size_t tookTheShops = 0;  ///< rows in place of the shop's own, as it was chosen
};

/// A row by its table and key.
struct RowName {
  std::string table;
  std::vector<std::string> key;  ///< in the order of the table's key
  friend auto operator<=>(const RowName&, const RowName&) = default;
};

/// The shop's row and the package's of the same key, side by side, where they are not the same.
struct RowConflict {
  struct Cell {
    std::string column;
    std::string shops;  ///< empty: no value
    std::string packs;
    [[nodiscard]] bool differs() const { return shops != packs; }
  };
  /// What belongs to the row and goes or stays with it: marks of a gauge, samples of a curve.
  struct Parts {
    std::string table;
    std::size_t shops = 0;
    std::size_t packs = 0;
    bool differ = false;
  };
  RowName row;
  std::vector<Cell> cells;  ///< all columns of the package's table, in its order
  std::vector<Parts> parts;
  [[nodiscard]] std::string sentence() const;  ///< "sender SN-1: name is 'ours' in the shop, 'one' in the package."
};

/// Rows in which the shop's own is to give way to the package's; in all others the shop's stays.
using TakePacks = std::set<RowName>;

struct LoadedPack {
  std::string id;
  std::string title;
  std::string version;
  std::string replaced;       ///< the version that was there before; empty: none
  bool alreadyThere = false;  ///< this very version was there: nothing was changed
  std::vector<TableCount> tables;
  [[nodiscard]] std::size_t rows() const;
  [[nodiscard]] std::string sentence() const;  ///< "Loaded 'Title' 1.2.0: 1234 rows in 24 tables."
};

using Loading = tl::expected<LoadedPack, exchange::Complaints>;

/// What loading it would leave out because the shop has its own. Changes nothing; the package is checked as loading
/// does. Throws catalog::CatalogueError where the catalogue fails, not where the package does.
tl::expected<std::vector<RowConflict>, exchange::Complaints> conflictsWith(const catalog::Catalogue& catalogue,
                                                                           const exchange::PackageSource& source);

/// `who` goes into the change log. With rows to take, a version that is there already is loaded again. Names in `take`
/// that are no conflict change nothing. Throws as conflictsWith().
Loading loadPack(catalog::Catalogue& catalogue, const exchange::PackageSource& source, std::string_view who,
                 const TakePacks& take = {});

/// Makes a new catalogue holding this one package, under its name only when whole; never replaces a file (throws
/// catalog::CatalogueError, code catalogue-exists).
Loading createWithPack(const std::filesystem::path& file, const exchange::PackageSource& source, std::string_view who);

}  // namespace ohmkin::workflow
