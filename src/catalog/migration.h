#pragma once
#include <SQLiteCpp/SQLiteCpp.h>
#include <span>
#include <string_view>
#include <vector>

/// Inside this room only: numbered scripts that make the tables and change them later.
namespace ohmkin::catalog {

struct Migration {
  std::string_view name;  ///< "001_catalogue.sql"
  std::string_view sql;
};

/// The scripts of schema/, in order; the version of a catalogue is how many of them it has had.
std::vector<Migration> migrations();

/// Runs those the database has not had. Each is one transaction, with the version set inside it: a script that fails
/// leaves everything as it was before that script, and throws SQLite::Exception.
void migrate(SQLite::Database& database, std::span<const Migration> all);

int userVersion(SQLite::Database& database);

}  // namespace ohmkin::catalog
