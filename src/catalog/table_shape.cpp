#include <catalog/table_shape.h>
#include <algorithm>
#include <charconv>

namespace ohmkin::catalog {
namespace {

/// A default's literal. Anything else (an expression) is nothing: it is not run.
Cell literal(std::string_view sql) {
  if (sql.size() >= 2 && sql.front() == '\'' && sql.back() == '\'') {
    std::string text;
    for (std::size_t i = 1; i + 1 < sql.size(); ++i) {
      text += sql[i];
      if (sql[i] == '\'') ++i;  // doubled inside
    }
    return text;
  }
  std::int64_t whole = 0;
  const char* const end = sql.data() + sql.size();
  if (const auto [at, error] = std::from_chars(sql.data(), end, whole); error == std::errc{} && at == end) return whole;
  double number = 0;
  if (const auto [at, error] = std::from_chars(sql.data(), end, number); error == std::errc{} && at == end)
    return number;
  return {};
}

std::vector<std::string> uniqueColumns(SQLite::Database& database, const std::string& table) {
  SQLite::Statement asked(database,
                          "SELECT c.name FROM pragma_index_list(?) i, pragma_index_info(i.name) c WHERE i.origin = 'u' "
                          "ORDER BY i.seq, c.seqno");
  asked.bind(1, table);
  std::vector<std::string> columns;
  while (asked.executeStep()) columns.push_back(asked.getColumn(0).getString());
  return columns;
}

TableShape shapeOf(SQLite::Database& database, const std::string& table) {
  TableShape shape;
  shape.name = table;
  bool bareNumber = false;
  SQLite::Statement columns(database,
                            "SELECT name, type, \"notnull\", dflt_value, pk FROM pragma_table_info(?) ORDER BY cid");
  columns.bind(1, table);
  std::vector<std::pair<int, std::string>> key;
  while (columns.executeStep()) {
    ColumnShape column;
    column.name = columns.getColumn(0).getString();
    column.type = columns.getColumn(1).getString();
    column.required = columns.getColumn(2).getInt() != 0;
    column.absent = literal(columns.getColumn(3).getString());
    if (const int place = columns.getColumn(4).getInt(); place > 0) {
      key.emplace_back(place, column.name);
      bareNumber = column.type == "INTEGER" && place == 1;
    }
    shape.columns.push_back(std::move(column));
  }
  std::sort(key.begin(), key.end());
  for (auto& [place, name] : key) shape.key.push_back(std::move(name));
  if (bareNumber && shape.key.size() == 1) shape.key = uniqueColumns(database, table);

  SQLite::Statement references(database,
                               "SELECT \"from\", \"table\", coalesce(\"to\", 'id') FROM pragma_foreign_key_list(?)");
  references.bind(1, table);
  while (references.executeStep())
    shape.references.push_back({references.getColumn(0).getString(), references.getColumn(1).getString(),
                                references.getColumn(2).getString()});
  return shape;
}

}  // namespace

std::string sqlName(std::string_view name) {
  std::string text = "\"";
  for (const char c : name) {
    text += c;
    if (c == '"') text += c;
  }
  return text + '"';
}

std::vector<TableShape> packTables(SQLite::Database& database) {
  std::vector<TableShape> all;
  SQLite::Statement names(database,
                          "SELECT t.name FROM sqlite_schema t JOIN pragma_table_info(t.name) c ON c.name = 'pack' "
                          "WHERE t.type = 'table' ORDER BY t.name");
  while (names.executeStep()) all.push_back(shapeOf(database, names.getColumn(0).getString()));
  return all;
}

TableShape tableShape(SQLite::Database& database, const std::string& table) { return shapeOf(database, table); }

std::vector<TableShape> allTables(SQLite::Database& database) {
  std::vector<TableShape> all;
  SQLite::Statement names(database,
                          "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND sql NOT "
                          "LIKE 'CREATE VIRTUAL%' ORDER BY name");
  while (names.executeStep()) all.push_back(shapeOf(database, names.getColumn(0).getString()));
  return all;
}

}  // namespace ohmkin::catalog
