#pragma once
#include <filesystem>

/// Inside this room only: which files were looked through in the state they are in. A line a file in
/// $XDG_STATE_HOME/ohmkin/looked-through; where that cannot be read or written, a file is looked through each time.
namespace ohmkin::catalog {

/// True where the file, told by device, inode, size and times, is in the state it had at its last remember().
bool isRemembered(const std::filesystem::path& file);
void remember(const std::filesystem::path& file);

}  // namespace ohmkin::catalog
