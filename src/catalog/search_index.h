#pragma once
#include <catalog/connection.h>
#include <span>
#include <string>
#include <string_view>

/// Inside this room only: keeping the search index right. It is one block of bytes made of all rows at once, and a list
/// of what was touched since; a search reads the rows of that list anew. So a change of one row costs one short row
/// more, whatever the size of the catalogue, and the index cannot say of a row what is no longer true.
///
/// All of these belong into the transaction of the change itself, and throw SQLite::Exception.
namespace ohmkin::catalog {

/// Says that the row under this key is there or has changed. `key` holds the values of its key columns in the order of
/// the table: the primary key, or the unique columns where that is a bare number (original_sender: line, engine,
/// year_from, sender). Tables that nothing is found by may be named too. Call it after the row was written.
void indexRow(Connection& connection, std::string_view table, std::span<const std::string> key);
void indexRow(Connection& connection, std::string_view table, const std::string& key);  ///< one key column

/// The same before the row goes, or before anything in it changes that names another row.
void unindexRow(Connection& connection, std::string_view table, std::span<const std::string> key);
void unindexRow(Connection& connection, std::string_view table, const std::string& key);

/// Writes the whole index anew, from all rows. For a pack that came or went.
void rebuildIndex(Connection& connection);

/// True where the file has an index of the version this program writes.
bool indexStands(Connection& connection);

}  // namespace ohmkin::catalog
