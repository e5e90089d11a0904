#pragma once
#include <cstdint>
#include <filesystem>
#include <string_view>

/// The first hundred bytes of an SQLite file (sqlite.org/fileformat2.html, "The Database Header"), read before there
/// is a database: a file that is not ours is refused before anything could touch it, and it costs one read.
namespace ohmkin::catalog {

enum class FileNature {
  missing,
  folder,
  special,
  unreadable,
  empty,
  notSqlite,
  sqlite
};  // special: pipe, device, socket

struct FileHeader {
  FileNature nature = FileNature::missing;
  bool writeAheadLog = false;  ///< it has been written to since it was made
  std::uint32_t applicationId = 0;
  std::uint32_t userVersion = 0;  ///< of the main file; a newer one may still stand in its write-ahead log
  std::string_view flaw{};        ///< what in it no catalogue has, as "a header that …"; empty: nothing
  bool shorter = false;           ///< than it says itself: cut off, unless a journal beside it has the rest
};

FileHeader readFileHeader(const std::filesystem::path& file);

}  // namespace ohmkin::catalog
