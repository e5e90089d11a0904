#include <catalog/backup_files.h>
#include <catalog/catalogue.h>
#include <catalog/connection.h>
#include <catalog/file_header.h>
#include <catalog/migration.h>
#include <catalog/trust.h>
#include <embedded/ohmkin_schema.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>
#include <array>
#include <mutex>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuseFile(const fs::path& file, std::string code, std::string found, std::string expected) {
  throw CatalogueError({std::move(code), file.string(), std::move(found), std::move(expected)});
}

constexpr const char* kAnOhmkinFile = "an Ohmkin catalogue (.ohmkin)";

constexpr const char* kAWholeOne = "a whole catalogue; go back to your last copy of it";

/// Throws unless the file is a catalogue of ours and no newer than this program.
FileHeader checkedHeader(const fs::path& file) {
  const FileHeader header = readFileHeader(file);
  switch (header.nature) {
    case FileNature::missing:
      refuseFile(file, "catalogue-missing", "no such file", kAnOhmkinFile);
    case FileNature::folder:
      refuseFile(file, "catalogue-is-folder", "a folder", kAnOhmkinFile);
    case FileNature::special:
      refuseFile(file, "catalogue-not-sqlite", "a pipe, a device or the like", kAnOhmkinFile);
    case FileNature::unreadable:
      refuseFile(file, "catalogue-unreadable", "a file you may not read", kAnOhmkinFile);
    case FileNature::empty:
      refuseFile(file, "catalogue-empty", "an empty file", kAnOhmkinFile);
    case FileNature::notSqlite:
      refuseFile(file, "catalogue-not-sqlite", "a file of another kind", kAnOhmkinFile);
    case FileNature::sqlite:
      break;
  }
  if (header.applicationId != Catalogue::kApplicationId)
    refuseFile(file, "catalogue-not-ours", "a database of another program", kAnOhmkinFile);
  if (!header.flaw.empty()) refuseFile(file, "catalogue-damaged", std::string(header.flaw), kAWholeOne);
  return header;
}

void checkVersion(const fs::path& file, std::int64_t version, Access access) {
  const int newest = Catalogue::newestVersion();
  if (version > newest)
    refuseFile(file, "catalogue-newer", fmt::format("a catalogue of version {}, made by a newer Ohmkin", version),
               fmt::format("version {} at most; bring Ohmkin up to date", newest));
  if (version < newest && access == Access::readOnly)
    refuseFile(
        file, "catalogue-older", fmt::format("a catalogue of version {} that cannot be written here", version),
        fmt::format("version {}; copy it to a folder you may write and open the copy: that brings the copy up to "
                    "date",
                    newest));
}

bool mayWrite(const fs::path& path) { return faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) == 0; }

fs::path folderOf(const fs::path& file) { return file.has_parent_path() ? file.parent_path() : fs::path("."); }

fs::path beside(const fs::path& file, const char* ending) {
  fs::path other = file;
  other += ending;
  return other;
}

bool hasContent(const fs::path& file) {
  std::error_code error;
  const auto size = fs::file_size(file, error);
  return !error && size > 0;
}

/// Where the folder takes no files, SQLite cannot make the log and the shared index a WAL reader needs. Changes not yet
/// written back would be missed, so with a log beside it the file is not immutable, whoever may write it.
bool mustBeImmutable(const fs::path& file, const FileHeader& header) {
  return header.writeAheadLog && !mayWrite(folderOf(file)) && !hasContent(beside(file, "-wal")) &&
         !hasContent(beside(file, "-journal"));
}

}  // namespace

int Catalogue::newestVersion() { return static_cast<int>(schema::files().size()); }

Catalogue Catalogue::open(const fs::path& file, Access access) {
  const FileHeader header = checkedHeader(file);
  checkVersion(file, header.userVersion, Access::readWrite);  // an older header may have a newer log beside it
  checkCompanions(file);
  if (header.shorter && !hasContent(beside(file, "-wal")) && !hasContent(beside(file, "-journal")))
    refuseFile(file, "catalogue-damaged", "a catalogue that is cut off", kAWholeOne);
  if (access == Access::readWrite && (!mayWrite(file) || !mayWrite(folderOf(file))))
    refuseFile(file, "catalogue-read-only", "a catalogue that cannot be written where it lies",
               "a file and a folder you may write; copy it to a folder of your own");
  // The pages of a window open one older file at once: the first brings it up to date, the others find it so.
  static std::mutex updating;
  std::unique_lock<std::mutex> turn(updating, std::defer_lock);
  if (access == Access::readWrite && static_cast<int>(header.userVersion) < newestVersion()) turn.lock();
  try {
    auto connection =
        std::make_unique<Connection>(file, access, access == Access::readOnly && mustBeImmutable(file, header));
    const int version = userVersion(connection->database());
    checkVersion(file, version, access);
    connection->prove(version);
    if (version < newestVersion()) {
      if (version > 0) (void)backUp(*connection, BackupReason::beforeMigration);
      migrate(connection->database(), migrations());
    }
    return Catalogue(std::move(connection));
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, file);
  }
}

Catalogue Catalogue::openToRead(const fs::path& file) {
  try {
    return open(file, Access::readOnly);
  } catch (const CatalogueError& failure) {
    const std::string& code = failure.refusal().code;
    if (code != "catalogue-older" && code != "catalogue-interrupted") throw;
    if (!mayWrite(file) || !mayWrite(folderOf(file))) throw;
  }
  (void)open(file, Access::readWrite);  // migrates or rolls back, and lets go of the file
  return open(file, Access::readOnly);
}

Catalogue::Catalogue(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Catalogue::Catalogue(Catalogue&&) noexcept = default;
Catalogue& Catalogue::operator=(Catalogue&&) noexcept = default;
Catalogue::~Catalogue() = default;

const fs::path& Catalogue::file() const { return connection_->file(); }
Access Catalogue::access() const { return connection_->access(); }
bool Catalogue::immutable() const { return connection_->immutable(); }

}  // namespace ohmkin::catalog
