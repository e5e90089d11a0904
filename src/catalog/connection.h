#pragma once
#include <SQLiteCpp/SQLiteCpp.h>
#include <catalog/catalogue.h>
#include <string>
#include <unordered_map>

/// Inside this room only: the SQLite connection behind a Catalogue.
namespace ohmkin::catalog {

class Connection {
 public:
  Connection(const std::filesystem::path& file, Access access, bool immutable);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  /// Looks the file over as one that may come from anybody (trust.h). Until then nothing of a log beside it is written
  /// into it.
  void prove(int version);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  [[nodiscard]] Access access() const { return access_; }
  [[nodiscard]] bool immutable() const { return immutable_; }
  [[nodiscard]] SQLite::Database& database() { return database_; }

  /// The statement for this text, prepared at its first use and kept. `sql` must be a string literal: it is known by
  /// its address.
  SQLite::Statement& statement(const char* sql);
  /// From the first write on, readers and writers keep out of each other's way. A file nobody has written to yet stays
  /// without its log, so that reading it makes no files beside it. Where readers stand in the way it is left for the
  /// next time; a file on another machine stays without (file_system.h). The first time, the day's backup is made
  /// before (backup.h).
  void useWriteAheadLog();
  void useRollbackJournal();  ///< the opposite, for a finished draft
  /// Foreign keys are checked row by row, or not at all while a whole pack is exchanged and checked at its end.
  void enforceForeignKeys(bool enforce);

 private:
  /// What was looked through and then changed by nobody but us need not be looked through again.
  struct Seal {
    std::filesystem::path file;  ///< empty: nothing to remember
    ~Seal();
  };

  std::filesystem::path file_;
  Access access_;
  bool immutable_;
  bool proven_ = false;
  bool backedUp_ = false;
  Seal seal_;                  // before the database, whose end may still write
  SQLite::Database database_;  // before the statements, which must go first
  std::unordered_map<const char*, SQLite::Statement> statements_;
};

/// Memory statistics cost a lock at every allocation, a sixth of the time of reading the schema. Before SQLite is first
/// used.
void keepNoStatistics();

/// SQLite's failure in the catalogue's words.
[[noreturn]] void rethrow(const SQLite::Exception& failure, const std::filesystem::path& file);

/// Resets a kept statement when a question is done, so that no read lock outlives it.
class Use {
 public:
  explicit Use(SQLite::Statement& statement) : statement_(statement) {}
  ~Use() { statement_.tryReset(); }
  Use(const Use&) = delete;
  Use& operator=(const Use&) = delete;

 private:
  SQLite::Statement& statement_;
};

}  // namespace ohmkin::catalog
