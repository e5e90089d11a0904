#pragma once
#include <SQLiteCpp/SQLiteCpp.h>
#include <catalog/bench_records.h>
#include <vector>

/// Inside this room only: readings on their way into bench_reading.
namespace ohmkin::catalog {

/// Holds readings back and puts them in by key, so that a file in which the runs are mixed costs little more than one
/// in order. Of one in order few are held, which are then still at hand; of a mixed one as many as memory is granted,
/// 56 MB, since every batch after the first goes in between what is there.
class ReadingBatch {
 public:
  /// Of runs numbered from `firstRun` on. The database outlives it.
  ReadingBatch(SQLite::Database& database, RunNumber firstRun);
  /// The readings of one run by rising ordinal. Throws SQLite::Exception.
  void add(RunNumber run, std::int64_t ordinal, const RawReading& reading);
  void flush();

 private:
  struct Held {
    std::int64_t key = 0;
    double celsius = 0;
    double ohms = 0;
    double seconds = 0;
    double u = 0;
    double uLnOhms = 0;
    int direction = -1;  // as RunDirection; −1: not said
  };
  void put(const Held& held);
  [[nodiscard]] std::vector<std::uint32_t> byKey() const;

  SQLite::Statement insert_;
  RunNumber firstRun_;
  RunNumber lastRun_;  // of all that were added
  std::vector<Held> batch_;
  bool inOrder_ = true;
};

}  // namespace ohmkin::catalog
