#include <exchange/draft.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>
#include <cerrno>
#include <cstdio>
#include <system_error>

namespace ohmkin::exchange {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Refusal> taken(const fs::path& file) {
  return refuse("file-exists", file.string(), "something of that name already there", "a name not yet taken");
}

}  // namespace

tl::unexpected<Refusal> unwritable(const fs::path& file, int error) {
  return refuse("file-unwritable", file.string(), std::error_code(error, std::generic_category()).message(),
                "a folder you may write, with room on its disk");
}

Expected<void> mayBeMade(const fs::path& wanted) {
  std::error_code error;
  if (fs::symlink_status(wanted, error).type() != fs::file_type::not_found) return taken(wanted);
  const fs::path folder = wanted.has_parent_path() ? wanted.parent_path() : fs::path(".");
  if (!fs::is_directory(folder, error)) return unwritable(wanted, ENOENT);
  return {};
}

Draft::Draft(fs::path wanted) : wanted_(std::move(wanted)), path_(wanted_) {
  path_ += fmt::format(".part-{}", getpid());
}

Draft::~Draft() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

Expected<void> Draft::name() {
  if (renameat2(AT_FDCWD, path_.c_str(), AT_FDCWD, wanted_.c_str(), RENAME_NOREPLACE) == 0) return {};
  if (errno == EEXIST) return taken(wanted_);
  if (errno != EINVAL && errno != ENOSYS) return unwritable(wanted_, errno);
  // A file system that cannot promise it: look, then rename.
  if (auto free = mayBeMade(wanted_); !free) return free;
  std::error_code error;
  fs::rename(path_, wanted_, error);
  if (error) return unwritable(wanted_, error.value());
  return {};
}

}  // namespace ohmkin::exchange
