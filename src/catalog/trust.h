#pragma once
#include <sqlite3.h>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

/// Inside this room only: a file is hostile until proven. In this order, as SQLite's own guidance for files of unknown
/// origin has it (sqlite.org/security.html): its header (file_header.h) and what lies beside it, before SQLite touches
/// either; then bounds on what any statement may take; then its tables against those of its version; then its pages.
namespace ohmkin::catalog {

class Connection;

/// Looking a file over takes no longer, whatever is in it.
inline constexpr std::chrono::milliseconds kLongestLook{1000};
/// So much of that for the pages …
inline constexpr std::chrono::milliseconds kLongestPageLook{35};
/// … and only of files no larger, since SQLite cannot be stopped amid a table's pages: a file of a million readings
/// (32 MB) would take a tenth of a second. Larger ones are looked through with each backup (backup.h).
inline constexpr std::uintmax_t kLargestPageLook = 4U << 20U;

/// A log, an index or a journal beside the file is a plain file, and the journal names no other file: a journal made by
/// hand could have SQLite delete one. Throws catalogue-companion.
void checkCompanions(const std::filesystem::path& file);

/// Bounds on lengths, columns, depth and steps of statements; nothing can be attached.
void setLimits(sqlite3* handle);

/// While it lives, statements of the connection end with SQLITE_INTERRUPT once the time is over.
class TimeBound {
 public:
  TimeBound(sqlite3* handle, std::chrono::milliseconds longest);
  ~TimeBound();
  TimeBound(const TimeBound&) = delete;
  TimeBound& operator=(const TimeBound&) = delete;

 private:
  static int isOver(void* self);
  sqlite3* handle_;
  std::chrono::steady_clock::time_point end_;
};

/// Tables, indexes, views and triggers are those that the migrations up to `version` make: none more, none less, none
/// other, blanks and comments aside. Throws catalogue-foreign-tables.
void checkTables(Connection& connection, int version);

/// PRAGMA quick_check, integrity_check where there is a log beside the file; once for every state of a file: states
/// that were looked through are remembered. Throws catalogue-damaged.
void checkPagesOnce(Connection& connection);

/// What quick_check and integrity_check say, in one line: before it they say of which database.
std::string firstFault(std::string_view said);

/// An SQL text without comments, blanks where they part words only.
std::string normalisedSql(std::string_view sql);

}  // namespace ohmkin::catalog
