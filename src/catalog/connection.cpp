#include <catalog/backup_files.h>
#include <catalog/connection.h>
#include <catalog/file_system.h>
#include <catalog/trust.h>
#include <catalog/trust_memory.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <algorithm>
#include <array>
#include <utility>

namespace ohmkin::catalog {
namespace {

constexpr int kBusyMilliseconds = 5000;

/// A path as an SQLite URI; everything but plain path characters is escaped (sqlite.org/uri.html).
std::string immutableUri(const std::filesystem::path& file) {
  std::string uri = "file:";
  for (const char c : std::filesystem::absolute(file).string()) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '/' ||
                       c == '.' || c == '-' || c == '_';
    if (plain) uri += c;
    else uri += fmt::format("%{:02X}", static_cast<unsigned char>(c));
  }
  return uri + "?immutable=1";
}

/// A plain path that SQLite cannot take for a URI or for its in-memory name.
std::string plainName(const std::filesystem::path& file) { return std::filesystem::absolute(file).string(); }

int flags(Access access, bool immutable) {
  keepNoStatistics();
  int all = access == Access::readWrite ? SQLite::OPEN_READWRITE : SQLite::OPEN_READONLY;
  if (immutable) all |= SQLite::OPEN_URI;
  return all | SQLITE_OPEN_NOMUTEX;  // one thread a connection: see Catalogue
}

void configure(sqlite3* handle, int option, int value) { sqlite3_db_config(handle, option, value, nullptr); }

bool isOfWriting(int extendedCode) {
  constexpr std::array all{SQLITE_IOERR_WRITE,     SQLITE_IOERR_FSYNC,  SQLITE_IOERR_DIR_FSYNC, SQLITE_IOERR_TRUNCATE,
                           SQLITE_IOERR_DELETE,    SQLITE_IOERR_SHMMAP, SQLITE_IOERR_SHMSIZE,   SQLITE_IOERR_SHMOPEN,
                           SQLITE_IOERR_DIR_CLOSE, SQLITE_IOERR_CLOSE,  SQLITE_IOERR_LOCK,      SQLITE_IOERR_UNLOCK};
  return std::find(all.begin(), all.end(), extendedCode) != all.end();
}

}  // namespace

void keepNoStatistics() { static const int done [[maybe_unused]] = sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0); }

Connection::Connection(const std::filesystem::path& file, Access access, bool immutable)
    : file_(file),
      access_(access),
      immutable_(immutable),
      database_(immutable ? immutableUri(file) : plainName(file), flags(access, immutable), kBusyMilliseconds) {
  // A catalogue may come by mail: nothing in its schema may run functions, triggers or views of its own.
  sqlite3* handle = database_.getHandle();
  configure(handle, SQLITE_DBCONFIG_DEFENSIVE, 1);
  configure(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0);
  configure(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0);
  configure(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0);
  configure(handle, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1);  // until it is proven
  setLimits(handle);
  enforceForeignKeys(true);
  sqlite3_int64 noMapping = 0;  // a damaged disk under a memory map ends the program instead of failing the read
  sqlite3_file_control(handle, "main", SQLITE_FCNTL_MMAP_SIZE, &noMapping);
  const TimeBound bound(handle, kLongestLook);  // this is where the tables' texts are read
  database_.exec(access == Access::readWrite ? "PRAGMA cell_size_check = ON; PRAGMA synchronous = EXTRA"
                                             : "PRAGMA cell_size_check = ON");
}

Connection::~Connection() {
  if (proven_ && sqlite3_total_changes64(database_.getHandle()) > 0) seal_.file = file_;
}

Connection::Seal::~Seal() {
  if (!file.empty()) remember(file);
}

void Connection::prove(int version) {
  sqlite3* handle = database_.getHandle();
  {
    const TimeBound bound(handle, kLongestLook);
    checkTables(*this, version);
  }
  checkPagesOnce(*this);
  configure(handle, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0);
  proven_ = true;
}

SQLite::Statement& Connection::statement(const char* sql) {
  const auto found = statements_.find(sql);
  if (found != statements_.end()) return found->second;
  return statements_.emplace(sql, SQLite::Statement(database_, sql)).first->second;
}

void Connection::useWriteAheadLog() {
  int moved = 0;  // what is written into a file that has lost its name is lost as well
  if (sqlite3_file_control(database_.getHandle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK && moved != 0)
    throw CatalogueError({"catalogue-moved", file_.string(),
                          "a catalogue that was moved, deleted or replaced while it was open",
                          "it where it was; open it again"});
  if (proven_ && !std::exchange(backedUp_, true)) backUpOfTheDay(*this);
  database_.tryExec(liesOnNetwork(file_) ? "PRAGMA journal_mode = DELETE" : "PRAGMA journal_mode = WAL");
}
void Connection::useRollbackJournal() { database_.exec("PRAGMA journal_mode = DELETE"); }

void Connection::enforceForeignKeys(bool enforce) {
  configure(database_.getHandle(), SQLITE_DBCONFIG_ENABLE_FKEY, enforce ? 1 : 0);
}

void rethrow(const SQLite::Exception& failure, const std::filesystem::path& file) {
  const auto error = [&](std::string code, std::string found, std::string expected) {
    return CatalogueError({std::move(code), file.string(), std::move(found), std::move(expected)});
  };
  if (failure.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK ||
      failure.getExtendedErrorCode() == SQLITE_READONLY_RECOVERY)
    throw error("catalogue-interrupted", "a catalogue whose last change was cut short",
                "a folder you may write: opening it there takes that change back");
  switch (failure.getErrorCode() & 0xFF) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      throw error("catalogue-busy", "a catalogue another program is writing to",
                  "it to be free; try again in a moment");
    case SQLITE_READONLY:
      throw error("catalogue-read-only", "a catalogue that cannot be written",
                  "one that can; copy it to a folder of your own");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      throw error("catalogue-damaged", fmt::format("a damaged catalogue ({})", failure.what()),
                  "a whole one; go back to your last copy of it");
    case SQLITE_FULL:
      throw error("catalogue-full", "no room left on the disk", "room for the change; nothing was changed");
    case SQLITE_INTERRUPT:
      throw error("catalogue-endless", "a catalogue that takes too long to look over",
                  "one as Ohmkin makes them; go back to your last copy of it");
    case SQLITE_TOOBIG:
      throw error("catalogue-damaged", fmt::format("a damaged catalogue ({})", failure.what()),
                  "a whole one; go back to your last copy of it");
    case SQLITE_NOMEM:
      throw error("catalogue-no-memory", "too little memory left to read it", "some to be free; close other programs");
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
    case SQLITE_IOERR:
      if (isOfWriting(failure.getExtendedErrorCode()))
        throw error("catalogue-not-written", fmt::format("a change that could not be written ({})", failure.what()),
                    "a disk that works and has room; nothing was changed");
      throw error("catalogue-unreadable", fmt::format("a catalogue that could not be read ({})", failure.what()),
                  "a file you may read, on a disk that works");
    case SQLITE_ERROR:  // a statement that does not fit the tables: they are not those of this version
    case SQLITE_SCHEMA:
      throw error("catalogue-damaged",
                  fmt::format("a catalogue whose tables are not as they should be ({})", failure.what()),
                  "a whole one; go back to your last copy of it");
    default:
      throw error("catalogue-failed", fmt::format("the database's complaint '{}'", failure.what()), "it to work");
  }
}

}  // namespace ohmkin::catalog
