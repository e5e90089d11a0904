#include <dlfcn.h>
#include <exchange/archive_library.h>

namespace ohmkin::exchange {
namespace {

constexpr const char* kName = "libarchive.so.13";

template <class Function>
bool find(void* library, const char* name, Function& into) {
  into = reinterpret_cast<Function>(dlsym(library, name));
  return into != nullptr;
}

/// Nothing where the library is not installed or lacks one of them.
const ArchiveLibrary* load() {
  void* library = dlopen(kName, RTLD_NOW | RTLD_LOCAL);
  if (library == nullptr) return nullptr;
  static ArchiveLibrary a;
  const bool all =
      find(library, "archive_error_string", a.error_string) && find(library, "archive_errno", a.error_number) &&
      find(library, "archive_read_new", a.read_new) && find(library, "archive_read_free", a.read_free) &&
      find(library, "archive_read_support_format_zip", a.read_support_format_zip) &&
      find(library, "archive_read_open_memory", a.read_open_memory) &&
      find(library, "archive_read_next_header", a.read_next_header) &&
      find(library, "archive_read_data", a.read_data) && find(library, "archive_entry_pathname", a.entry_pathname) &&
      find(library, "archive_entry_filetype", a.entry_filetype) &&
      find(library, "archive_entry_hardlink", a.entry_hardlink) &&
      find(library, "archive_entry_symlink", a.entry_symlink) &&
      find(library, "archive_entry_is_encrypted", a.entry_is_encrypted) &&
      find(library, "archive_write_new", a.write_new) && find(library, "archive_write_free", a.write_free) &&
      find(library, "archive_write_set_format_zip", a.write_set_format_zip) &&
      find(library, "archive_write_open_fd", a.write_open_fd) &&
      find(library, "archive_write_header", a.write_header) && find(library, "archive_write_data", a.write_data) &&
      find(library, "archive_write_close", a.write_close) && find(library, "archive_entry_new", a.entry_new) &&
      find(library, "archive_entry_free", a.entry_free) &&
      find(library, "archive_entry_set_pathname", a.entry_set_pathname) &&
      find(library, "archive_entry_set_size", a.entry_set_size) &&
      find(library, "archive_entry_set_filetype", a.entry_set_filetype) &&
      find(library, "archive_entry_set_perm", a.entry_set_perm);
  return all ? &a : nullptr;
}

}  // namespace

Expected<const ArchiveLibrary*> ArchiveLibrary::loaded() {
  static const ArchiveLibrary* const one = load();
  if (one == nullptr)
    return refuse("library-missing", kName, "no such library",
                  "libarchive 3 installed; a folder in place of a zip works without");
  return one;
}

}  // namespace ohmkin::exchange
