#pragma once
#include <exchange/complaints.h>
#include <exchange/table_definition.h>
#include <finding/refusal.h>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Frictionless Tabular Data Packages (datapackage.json and CSV, specs.frictionlessdata.io) of catalogue rows. Whatever
/// comes in is hostile until checked: sizes are bounded, every cell is checked against schema/catalogue-tables.json.
namespace ohmkin::exchange {

/// Nothing, whole number, number, text. Dates and booleans are kept as the catalogue keeps them: ISO text, 0 or 1.
using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;
/// What a cell says: a number as short as reads back; empty: nothing.
std::string textOf(const Cell& cell);

struct PackageFile {
  std::string_view name;  ///< without folder
  std::string_view text;
};

/// Where a package lies: a folder, or bytes in memory that outlive the reading.
class PackageSource {
 public:
  static PackageSource folder(std::filesystem::path folder);
  static PackageSource memory(std::vector<PackageFile> files);

  /// The text of a file of that plain name; refuses what is missing, too large, or not a plain file.
  [[nodiscard]] Expected<std::string> read(std::string_view name, std::size_t largest) const;

 private:
  std::variant<std::filesystem::path, std::vector<PackageFile>> where_;
};

struct Limits {
  std::size_t descriptorBytes = 1U << 20U;
  std::size_t fileBytes = 64U << 20U;
  std::size_t rows = 1'000'000;  ///< a table
  std::size_t cellBytes = 4096;
  std::size_t complaints = 200;  ///< listed one by one; the rest are counted
};

/// What datapackage.json says of the package and of its files.
struct Descriptor {
  std::string id;  ///< "name" of the package: a-z 0-9 - _ . ; never "shop"
  std::string title;
  std::string version;
  std::string licence;  ///< names of the licences, comma separated
  struct Resource {
    std::string table;
    std::string path;
  };
  std::vector<Resource> resources;
};

/// One checked table. Cells row by row in the order of `columns`; columns the file leaves out are not there.
struct Table {
  const TableDefinition* definition = nullptr;
  std::string file;
  std::vector<std::string> columns;
  std::vector<Cell> cells;
  std::vector<std::size_t> lines;  ///< line in the file on which each row begins
  [[nodiscard]] std::size_t size() const { return lines.size(); }
  [[nodiscard]] std::span<const Cell> row(std::size_t r) const {
    return {cells.data() + r * columns.size(), columns.size()};
  }
};

struct Package {
  Descriptor descriptor;
  std::vector<Table> tables;  ///< in the order of the definitions, so that what is referred to comes first
};

/// Reads datapackage.json alone: cheap, for asking which version it is.
tl::expected<Descriptor, Complaints> readDescriptor(const PackageSource& source, const Limits& limits = {});

/// True where a row is known from elsewhere (the catalogue the package goes into), so that a reference to it does not
/// dangle.
using KnownElsewhere = std::function<bool(std::string_view table, std::string_view key)>;

/// Reads and checks everything: cells, columns, keys, references. Either all is well or the complaints say what is not.
tl::expected<Package, Complaints> readPackage(const PackageSource& source, const KnownElsewhere& known = {},
                                              const Limits& limits = {});

}  // namespace ohmkin::exchange
