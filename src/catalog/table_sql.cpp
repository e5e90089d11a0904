#include <catalog/table_sql.h>
#include <fmt/format.h>
#include <algorithm>
#include <stdexcept>

namespace ohmkin::catalog {

Cell cellAt(const SQLite::Column& column) {
  if (column.isNull()) return {};
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  return column.getString();
}

void bindCellAt(SQLite::Statement& statement, int at, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) statement.bind(at, *whole);
  else if (const auto* number = std::get_if<double>(&cell)) statement.bind(at, *number);
  else if (const auto* text = std::get_if<std::string>(&cell)) statement.bind(at, *text);
  else statement.bind(at);
}

std::string keyText(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return fmt::format("{}", *whole);
  if (const auto* number = std::get_if<double>(&cell)) return fmt::format("{}", *number);
  return {};
}

std::string whereAll(std::span<const std::string> columns) {
  std::string text;
  for (const std::string& column : columns) text += (text.empty() ? "" : " AND ") + sqlName(column) + " = ?";
  return text;
}

std::string listOf(std::span<const std::string> columns, std::string_view before, std::string_view after) {
  std::string text;
  for (const std::string& column : columns)
    text += fmt::format("{}{}{}{}", text.empty() ? "" : ", ", before, sqlName(column), after);
  return text;
}

TableShape shapeFor(const Catalogue& catalogue, std::string_view table) {
  try {
    TableShape shape = tableShape(catalogue.connection().database(), std::string(table));
    if (shape.columns.empty()) throw std::invalid_argument("no such table: " + std::string(table));
    return shape;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

const ColumnShape& columnOf(const TableShape& shape, std::string_view name) {
  const auto found =
      std::find_if(shape.columns.begin(), shape.columns.end(), [&](const ColumnShape& c) { return c.name == name; });
  if (found == shape.columns.end()) throw std::invalid_argument("no such column: " + std::string(name));
  return *found;
}

std::vector<std::string> dataColumns(const TableShape& shape) {
  std::vector<std::string> all;
  for (const ColumnShape& column : shape.columns) {
    const bool key = std::find(shape.key.begin(), shape.key.end(), column.name) != shape.key.end();
    // A bare number beside a key of other columns is the file's own affair.
    const bool bare = column.name == "id" && column.type == "INTEGER" && !key;
    if (column.name != "pack" && !bare) all.push_back(column.name);
  }
  return all;
}

}  // namespace ohmkin::catalog
