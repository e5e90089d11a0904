#pragma once
#include <catalog/connection.h>
#include <catalog/pack_writer.h>
#include <string>
#include <vector>

/// Inside this room only: what the catalogue itself says of its tables. Statements for whole tables are built from this
/// and from nothing that comes from outside.
namespace ohmkin::catalog {

struct ColumnShape {
  std::string name;
  std::string type;
  bool required = false;
  Cell absent;  ///< what an empty cell becomes: the column's default where it is a plain literal, else nothing
};

struct Reference {
  std::string column;
  std::string table;
  std::string refersTo;
};

struct TableShape {
  std::string name;
  std::vector<ColumnShape> columns;
  /// What names a row outside this file: the primary key, or the unique columns where that is a bare number.
  std::vector<std::string> key;
  std::vector<Reference> references;
};

/// The tables whose rows belong to packs, by name.
std::vector<TableShape> packTables(SQLite::Database& database);
/// All tables there are, by name: those of the bench and the shop refer to rows of packs as well.
std::vector<TableShape> allTables(SQLite::Database& database);
/// One table; without columns where there is none of that name.
TableShape tableShape(SQLite::Database& database, const std::string& table);

/// A name in double quotes, for a statement.
std::string sqlName(std::string_view name);

}  // namespace ohmkin::catalog
