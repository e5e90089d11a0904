#pragma once
#include <filesystem>

/// Inside this room only: whether a file lies on another machine. The write-ahead log needs memory shared between all
/// who have the file open, which two machines do not have (sqlite.org/wal.html).
namespace ohmkin::catalog {

/// By the type of statfs(2).
bool isNetworkFileSystem(long type);

/// What statfs(2) says of the file; a test puts its own in place.
using FileSystemType = long (*)(const std::filesystem::path& file);
extern FileSystemType fileSystemType;

inline bool liesOnNetwork(const std::filesystem::path& file) { return isNetworkFileSystem(fileSystemType(file)); }

}  // namespace ohmkin::catalog
