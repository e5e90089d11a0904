#include <catalog/catalogue.h>
#include <catalog/connection.h>
#include <catalog/migration.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>
#include <cerrno>
#include <cstdio>
#include <fstream>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void cannotMake(const fs::path& file, std::string found) {
  throw CatalogueError(
      {"catalogue-cannot-be-made", file.string(), std::move(found), "a folder you may write, with room on its disk"});
}

[[noreturn]] void alreadyThere(const fs::path& file) {
  throw CatalogueError(
      {"catalogue-exists", file.string(), "something of that name already there", "a name not yet taken"});
}

/// The file while it is being made. Gone, with whatever SQLite put beside it, unless it was given its name.
class Draft {
 public:
  explicit Draft(const fs::path& wanted) : path_(wanted) { path_ += fmt::format(".part-{}", getpid()); }
  ~Draft() {
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
      fs::path leftover = path_;
      leftover += ending;
      fs::remove(leftover, ignored);
    }
  }
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  [[nodiscard]] const fs::path& path() const { return path_; }

  void name(const fs::path& wanted) {
    if (renameat2(AT_FDCWD, path_.c_str(), AT_FDCWD, wanted.c_str(), RENAME_NOREPLACE) == 0) return;
    if (errno == EEXIST) alreadyThere(wanted);
    // A file system that cannot promise it: look, then rename.
    std::error_code error;
    if (fs::exists(wanted, error)) alreadyThere(wanted);
    fs::rename(path_, wanted, error);
    if (error) cannotMake(wanted, error.message());
  }

 private:
  fs::path path_;
};

/// Makes the new name last through a power cut.
void syncFolderOf(const fs::path& file) {
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  fsync(descriptor);
  close(descriptor);
}

void makeTables(const fs::path& file) {
  Connection connection(file, Access::readWrite, false);
  migrate(connection.database(), migrations());
}

}  // namespace

Catalogue Catalogue::create(const fs::path& file, const std::function<void(Catalogue&)>& fill) {
  std::error_code error;
  if (fs::symlink_status(file, error).type() != fs::file_type::not_found) alreadyThere(file);
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  if (!fs::is_directory(folder, error)) cannotMake(file, fmt::format("no folder '{}'", folder.string()));

  Draft draft(file);
  const int descriptor = ::open(draft.path().c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (descriptor < 0) cannotMake(file, std::error_code(errno, std::generic_category()).message());
  close(descriptor);
  try {
    makeTables(draft.path());
    if (fill) {
      Catalogue unnamed = open(draft.path(), Access::readWrite);
      fill(unnamed);
      unnamed.connection().useRollbackJournal();
    }  // closed here: the last connection writes the log back and removes it
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, file);
  } catch (const CatalogueError& failure) {
    Refusal refusal = failure.refusal();
    // The draft's name means nothing to anybody.
    if (refusal.where == draft.path().string()) refusal.where = file.string();
    throw CatalogueError(std::move(refusal));
  }
  draft.name(file);
  syncFolderOf(file);
  return open(file, Access::readWrite);
}

}  // namespace ohmkin::catalog
