#pragma once
#include <catalog/catalogue.h>
#include <exchange/complaints.h>
#include <exchange/package_writer.h>
#include <filesystem>
#include <string>
#include <vector>

/// A pack of the catalogue, or the shop's own rows, as a Tabular Data Package.
namespace ohmkin::workflow {

struct PackToExport {
  std::string pack;  ///< its id; "shop" for the shop's own rows
  /// What the package is called; empty fields: as the pack is. The shop's own rows need an id and a version.
  std::string id;
  std::string title;
  std::string version;
  std::string licence;
};

struct ExportedPack {
  std::string id;
  std::string version;
  std::size_t rows = 0;
  std::size_t tables = 0;
  /// Rows of the package lead to rows of others: it loads only where those are. Their packs, by id.
  std::vector<std::string> needs;
  std::vector<exchange::WrittenFile> files;
  [[nodiscard]] std::string sentence() const;  ///< "'id' 1.2.0: 1234 rows in 24 tables."
};

using Exporting = tl::expected<ExportedPack, exchange::Complaints>;

/// Reads it, from one state of the catalogue; writes nothing.
Exporting exportPack(const catalog::Catalogue& catalogue, const PackToExport& asked);

/// The same into `target`: a zip where it ends in .zip, else a new folder. Never replaces anything.
Exporting exportPackTo(const catalog::Catalogue& catalogue, const PackToExport& asked,
                       const std::filesystem::path& target);

}  // namespace ohmkin::workflow
