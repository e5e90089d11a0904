#include <archive.h>
#include <archive_entry.h>
#include <exchange/archive_library.h>
#include <exchange/draft.h>
#include <exchange/package_writer.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>
#include <cerrno>
#include <memory>

namespace ohmkin::exchange {
namespace {

namespace fs = std::filesystem;

/// A new file, open for writing.
class NewFile {
 public:
  explicit NewFile(const fs::path& file)
      : descriptor_(::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666)) {}
  ~NewFile() {
    if (descriptor_ >= 0) close(descriptor_);
  }
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;
  [[nodiscard]] int descriptor() const { return descriptor_; }
  [[nodiscard]] bool put(std::string_view text) const {
    while (!text.empty()) {
      const ssize_t written = write(descriptor_, text.data(), text.size());
      if (written < 0) return false;
      text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
  }
  [[nodiscard]] bool keep() const { return fsync(descriptor_) == 0; }

 private:
  int descriptor_;
};

}  // namespace

Expected<void> writeFolder(const std::vector<WrittenFile>& files, const fs::path& folder) {
  if (auto free = mayBeMade(folder); !free) return free;
  Draft draft(folder);
  std::error_code error;
  if (!fs::create_directory(draft.path(), error)) return unwritable(folder, error ? error.value() : EEXIST);
  for (const WrittenFile& file : files) {
    const NewFile out(draft.path() / file.name);
    if (out.descriptor() < 0 || !out.put(file.text) || !out.keep()) return unwritable(folder / file.name, errno);
  }
  return draft.name();
}

Expected<void> writeZip(const std::vector<WrittenFile>& files, const fs::path& file) {
  if (auto free = mayBeMade(file); !free) return free;
  const auto library = ArchiveLibrary::loaded();
  if (!library) return tl::make_unexpected(library.error());
  const ArchiveLibrary& a = **library;

  Draft draft(file);
  const NewFile out(draft.path());
  if (out.descriptor() < 0) return unwritable(file, errno);
  const std::unique_ptr<archive, int (*)(archive*)> zip(a.write_new(), a.write_free);
  const auto failed = [&] { return unwritable(file, a.error_number(zip.get())); };
  if (a.write_set_format_zip(zip.get()) != ARCHIVE_OK || a.write_open_fd(zip.get(), out.descriptor()) != ARCHIVE_OK)
    return failed();
  for (const WrittenFile& one : files) {
    const std::unique_ptr<archive_entry, void (*)(archive_entry*)> entry(a.entry_new(), a.entry_free);
    // No time of its own: the same rows give the same bytes.
    a.entry_set_pathname(entry.get(), one.name.c_str());
    a.entry_set_size(entry.get(), static_cast<la_int64_t>(one.text.size()));
    a.entry_set_filetype(entry.get(), AE_IFREG);
    a.entry_set_perm(entry.get(), 0644);
    if (a.write_header(zip.get(), entry.get()) != ARCHIVE_OK) return failed();
    if (a.write_data(zip.get(), one.text.data(), one.text.size()) != static_cast<la_ssize_t>(one.text.size()))
      return failed();
  }
  if (a.write_close(zip.get()) != ARCHIVE_OK) return failed();
  if (!out.keep()) return unwritable(file, errno);
  return draft.name();
}

}  // namespace ohmkin::exchange
