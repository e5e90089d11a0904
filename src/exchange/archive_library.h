#pragma once
#include <archive.h>
#include <archive_entry.h>
#include <finding/refusal.h>

namespace ohmkin::exchange {

/// libarchive, loaded when the first zip is opened and not before: with all it brings along it would cost every start
/// of the program a third of its time.
struct ArchiveLibrary {
  /// Refuses library-missing.
  static Expected<const ArchiveLibrary*> loaded();

  decltype(&::archive_error_string) error_string = nullptr;
  decltype(&::archive_errno) error_number = nullptr;
  decltype(&::archive_read_new) read_new = nullptr;
  decltype(&::archive_read_free) read_free = nullptr;
  decltype(&::archive_read_support_format_zip) read_support_format_zip = nullptr;
  decltype(&::archive_read_open_memory) read_open_memory = nullptr;
  decltype(&::archive_read_next_header) read_next_header = nullptr;
  decltype(&::archive_read_data) read_data = nullptr;
  decltype(&::archive_entry_pathname) entry_pathname = nullptr;
  decltype(&::archive_entry_filetype) entry_filetype = nullptr;
  decltype(&::archive_entry_hardlink) entry_hardlink = nullptr;
  decltype(&::archive_entry_symlink) entry_symlink = nullptr;
  decltype(&::archive_entry_is_encrypted) entry_is_encrypted = nullptr;
  decltype(&::archive_write_new) write_new = nullptr;
  decltype(&::archive_write_free) write_free = nullptr;
  decltype(&::archive_write_set_format_zip) write_set_format_zip = nullptr;
  decltype(&::archive_write_open_fd) write_open_fd = nullptr;
  decltype(&::archive_write_header) write_header = nullptr;
  decltype(&::archive_write_data) write_data = nullptr;
  decltype(&::archive_write_close) write_close = nullptr;
  decltype(&::archive_entry_new) entry_new = nullptr;
  decltype(&::archive_entry_free) entry_free = nullptr;
  decltype(&::archive_entry_set_pathname) entry_set_pathname = nullptr;
  decltype(&::archive_entry_set_size) entry_set_size = nullptr;
  decltype(&::archive_entry_set_filetype) entry_set_filetype = nullptr;
  decltype(&::archive_entry_set_perm) entry_set_perm = nullptr;
};

}  // namespace ohmkin::exchange
