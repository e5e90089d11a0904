#include <catalog/connection.h>
#include <catalog/trust.h>
#include <catalog/trust_memory.h>
#include <embedded/ohmkin_trusted_tables.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <fstream>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kJournalMagicSize = 8;
/// Begins a rollback journal, and ends one that names a super-journal (sqlite.org/fileformat2.html, section 3).
constexpr std::string_view kJournalMagic{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", kJournalMagicSize};

[[noreturn]] void refuseCompanion(const fs::path& file, const fs::path& companion, std::string_view what) {
  throw CatalogueError(
      {"catalogue-companion", file.string(), fmt::format("{} beside it, '{}'", what, companion.filename().string()),
       "only what Ohmkin itself leaves there; move that one away, or ask for the catalogue again where "
       "you have it from"});
}

bool endsWithJournalMagic(const fs::path& journal) {
  std::ifstream in(journal, std::ios::binary | std::ios::ate);
  std::array<char, kJournalMagicSize> last{};
  if (!in || in.tellg() < static_cast<std::streamoff>(2 * kJournalMagicSize)) return false;
  in.seekg(-static_cast<std::streamoff>(kJournalMagicSize), std::ios::end);
  in.read(last.data(), static_cast<std::streamsize>(last.size()));
  return in && std::string_view(last.data(), last.size()) == kJournalMagic;
}

/// A name out of the file, fit to be shown.
std::string shown(std::string_view name) {
  constexpr std::size_t kMost = 60;
  std::string text(name.substr(0, kMost));
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = '?';
  return name.size() > kMost ? text + "…" : text;
}

/// One object of a schema.
struct Object {
  std::string_view type;
  std::string_view name;
  std::string_view table;
  std::string_view sql;
  std::string_view normalised{};  ///< of our own
  [[nodiscard]] bool before(const Object& other) const {
    return type != other.type ? type < other.type : name < other.name;
  }
};

constexpr char kEndOfField = '\x1f';
constexpr char kEndOfObject = '\x1e';
constexpr char kEndOfVersion = '\x1d';

/// The objects of one version, in the order of type and name.
class OwnTables {
 public:
  explicit OwnTables(int version) {
    std::string_view all = trusted_tables::files().front().text;
    for (int skip = 0; skip < version; ++skip) all.remove_prefix(all.find(kEndOfVersion) + 1);
    rest_ = all.substr(0, all.find(kEndOfVersion));
    advance();
  }
  [[nodiscard]] bool atEnd() const { return atEnd_; }
  [[nodiscard]] const Object& object() const { return object_; }
  void advance() {
    atEnd_ = rest_.empty();
    if (atEnd_) return;
    object_ = {field(kEndOfField), field(kEndOfField), field(kEndOfField), field(kEndOfField), field(kEndOfObject)};
  }

 private:
  std::string_view field(char end) {
    const std::size_t size = rest_.find(end);
    const std::string_view text = rest_.substr(0, size);
    rest_.remove_prefix(size + 1);
    return text;
  }
  std::string_view rest_;
  Object object_;
  bool atEnd_ = false;
};

[[noreturn]] void refuseTables(const Connection& connection, std::string found) {
  throw CatalogueError({"catalogue-foreign-tables", connection.file().string(), std::move(found),
                        "the tables as Ohmkin makes them; go back to your last copy, or let 'ohmkin backup salvage' "
                        "copy its rows into a new one"});
}

bool hasLog(fs::path file) {
  file += "-wal";
  std::error_code error;
  const auto size = fs::file_size(file, error);
  return !error && size > 0;
}

std::string_view textOf(const SQLite::Column& column) {
  const char* bytes = column.getText();
  return {bytes, static_cast<std::size_t>(column.getBytes())};
}

}  // namespace

void checkCompanions(const fs::path& file) {
  for (const char* ending : {"-wal", "-shm", "-journal"}) {
    fs::path companion = file;
    companion += ending;
    std::error_code error;
    const auto type = fs::symlink_status(companion, error).type();
    if (type == fs::file_type::not_found) continue;
    if (type == fs::file_type::symlink) refuseCompanion(file, companion, "a link");
    if (type != fs::file_type::regular) refuseCompanion(file, companion, "something that is no file");
    if (companion.native().ends_with("-journal") && endsWithJournalMagic(companion))
      refuseCompanion(file, companion, "a journal that names other files");
  }
}

void setLimits(sqlite3* handle) {
  struct Limit {
    int which;
    int most;
  };
  constexpr std::array<Limit, 10> all{{{SQLITE_LIMIT_LENGTH, 64 << 20},  // of a text, a row
                                       {SQLITE_LIMIT_SQL_LENGTH, 1'000'000},
                                       {SQLITE_LIMIT_COLUMN, 200},
                                       {SQLITE_LIMIT_EXPR_DEPTH, 200},
                                       {SQLITE_LIMIT_COMPOUND_SELECT, 50},
                                       {SQLITE_LIMIT_VDBE_OP, 100'000},
                                       {SQLITE_LIMIT_FUNCTION_ARG, 50},
                                       {SQLITE_LIMIT_ATTACHED, 0},
                                       {SQLITE_LIMIT_TRIGGER_DEPTH, 1},
                                       {SQLITE_LIMIT_WORKER_THREADS, 0}}};
  for (const Limit& limit : all) sqlite3_limit(handle, limit.which, limit.most);
}

TimeBound::TimeBound(sqlite3* handle, std::chrono::milliseconds longest)
    : handle_(handle), end_(std::chrono::steady_clock::now() + longest) {
  constexpr int kStepsBetweenLooks = 2000;
  sqlite3_progress_handler(handle_, kStepsBetweenLooks, &TimeBound::isOver, this);
}

TimeBound::~TimeBound() { sqlite3_progress_handler(handle_, 0, nullptr, nullptr); }

int TimeBound::isOver(void* self) {
  return std::chrono::steady_clock::now() > static_cast<TimeBound*>(self)->end_ ? 1 : 0;
}

void checkTables(Connection& connection, int version) {
  OwnTables expected(version);
  SQLite::Statement asked(connection.database(),
                          "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name");
  while (asked.executeStep()) {
    const std::array columns{asked.getColumn(0), asked.getColumn(1), asked.getColumn(2), asked.getColumn(3)};
    const Object found{textOf(columns[0]), textOf(columns[1]), textOf(columns[2]), textOf(columns[3])};
    if (expected.atEnd() || found.before(expected.object()))
      refuseTables(connection,
                   fmt::format("the {} '{}', which is none of Ohmkin's", shown(found.type), shown(found.name)));
    const Object& own = expected.object();
    if (own.before(found)) break;
    if (found.table != own.table || (found.sql != own.sql && normalisedSql(found.sql) != own.normalised))
      refuseTables(connection, fmt::format("the {} '{}' other than version {} has it", own.type, own.name, version));
    expected.advance();
  }
  if (!expected.atEnd())
    refuseTables(connection, fmt::format("no {} '{}'", expected.object().type, expected.object().name));
}

std::string firstFault(std::string_view said) {
  constexpr std::string_view kOf = "*** in database";
  if (said.starts_with(kOf)) said.remove_prefix(std::min(said.size(), said.find('\n') + 1));
  return std::string(said.substr(0, said.find('\n')));
}

void checkPagesOnce(Connection& connection) {
  std::error_code error;
  if (fs::file_size(connection.file(), error) > kLargestPageLook || isRemembered(connection.file())) return;
  {
    const TimeBound bound(connection.database().getHandle(), kLongestPageLook);
    // A log that was left by another file fits page by page; only the indexes show that it is not of this one.
    SQLite::Statement check(connection.database(),
                            hasLog(connection.file()) ? "PRAGMA integrity_check(1)" : "PRAGMA quick_check(1)");
    const int outcome = check.tryExecuteStep();
    if (outcome == SQLITE_ROW && check.getColumn(0).getString() != "ok")
      throw CatalogueError({"catalogue-damaged", connection.file().string(),
                            fmt::format("a damaged catalogue ({})", shown(firstFault(check.getColumn(0).getString()))),
                            "a whole one; go back to your last copy of it"});
    if (outcome != SQLITE_ROW && outcome != SQLITE_INTERRUPT)
      throw SQLite::Exception(connection.database().getHandle(), outcome);
    check.tryReset();
  }
  remember(connection.file());
}

}  // namespace ohmkin::catalog
