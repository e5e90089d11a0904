#pragma once
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

/// What still reads of a damaged catalogue, copied into a new one.
namespace ohmkin::catalog {

struct SalvagedTable {
  std::string table;
  std::int64_t rows = 0;    ///< copied
  std::int64_t broken = 0;  ///< read, but against a rule of the table, or without what they refer to
  bool whole = false;       ///< every row that was there was read
  std::string fault;        ///< SQLite's words for where reading ended; empty: it did not
};

struct Salvage {
  std::vector<SalvagedTable> tables;  ///< those of the newest version, by name
  [[nodiscard]] std::int64_t rows() const;
  [[nodiscard]] bool whole() const;
};

/// The damaged file is only read, never changed. Of every table the rows that read are copied, from both ends where the
/// middle is damaged; what refers to a lost row goes too, so that the new catalogue is a sound one. `into` must not
/// exist (CatalogueError catalogue-exists). Throws where not even the list of tables reads (salvage-nothing).
Salvage salvage(const std::filesystem::path& damaged, const std::filesystem::path& into);

}  // namespace ohmkin::catalog
