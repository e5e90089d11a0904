#pragma once
#include <catalog/catalogue.h>
#include <exchange/complaints.h>
#include <exchange/package.h>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// A package of rows into a catalogue. All of it goes in, or nothing does and the complaints say why.
namespace ohmkin::workflow {

struct TableCount {
  std::string table;
  std::size_t written = 0;
  std::size_t keptForShop = 0;  ///< rows left out because the shop has its own
};

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

/// `who` goes into the change log. Throws catalog::CatalogueError where the catalogue fails, not where the package
/// does.
Loading loadPack(catalog::Catalogue& catalogue, const exchange::PackageSource& source, std::string_view who);

/// Makes a new catalogue holding this one package, under its name only when whole; never replaces a file (throws
/// catalog::CatalogueError, code catalogue-exists).
Loading createWithPack(const std::filesystem::path& file, const exchange::PackageSource& source, std::string_view who);

}  // namespace ohmkin::workflow
