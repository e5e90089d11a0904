#pragma once
#include <catalog/connection.h>
#include <catalog/table_shape.h>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Inside this room only: statements built from what the catalogue says of its tables.
namespace ohmkin::catalog {

Cell cellAt(const SQLite::Column& column);
void bindCellAt(SQLite::Statement& statement, int at, const Cell& cell);
std::string keyText(const Cell& cell);

/// "a = ? AND b = ?"
std::string whereAll(std::span<const std::string> columns);
/// "a, b"
std::string listOf(std::span<const std::string> columns, std::string_view before = {}, std::string_view after = {});

/// The table's shape; throws std::invalid_argument where there is none.
TableShape shapeFor(const Catalogue& catalogue, std::string_view table);
/// Throws std::invalid_argument where the table has no such column.
const ColumnShape& columnOf(const TableShape& shape, std::string_view name);
/// Its columns but the owner and a number that names nothing outside the file.
std::vector<std::string> dataColumns(const TableShape& shape);

}  // namespace ohmkin::catalog
