#include <catalog/connection.h>
#include <catalog/pack_parts.h>
#include <catalog/pack_rows.h>
#include <catalog/table_shape.h>
#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

Cell cellOf(const SQLite::Column& column) {
  if (column.isNull()) return {};
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  return column.getString();
}

std::string joined(std::span<const std::string> columns) {
  std::string names;
  for (const std::string& column : columns) names += (names.empty() ? "" : ", ") + sqlName(column);
  return names;
}

void bindCell(SQLite::Statement& statement, int at, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) statement.bind(at, *whole);
  else if (const auto* number = std::get_if<double>(&cell)) statement.bind(at, *number);
  else if (const auto* text = std::get_if<std::string>(&cell)) statement.bind(at, *text);
  else statement.bind(at);
}

}  // namespace

struct PackRows::Shapes {
  std::map<std::string, TableShape, std::less<>> byName;
  mutable std::map<std::string, SQLite::Statement, std::less<>> lookups;  // by their text

  const TableShape& of(std::string_view table) const {
    const auto found = byName.find(table);
    if (found == byName.end()) throw std::invalid_argument("no table of packs: " + std::string(table));
    return found->second;
  }
  const ColumnShape& column(std::string_view table, std::string_view name) const {
    const TableShape& shape = of(table);
    const auto found =
        std::find_if(shape.columns.begin(), shape.columns.end(), [&](const ColumnShape& c) { return c.name == name; });
    if (found == shape.columns.end()) throw std::invalid_argument("no column: " + std::string(name));
    return *found;
  }
};

PackRows::PackRows(const Catalogue& catalogue) : shapes_(std::make_unique<Shapes>()), catalogue_(catalogue) {
  try {
    for (TableShape& shape : packTables(catalogue.connection().database())) {
      std::string name = shape.name;
      shapes_->byName.emplace(std::move(name), std::move(shape));
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

PackRows::~PackRows() = default;

void PackRows::each(std::string_view table, std::span<const std::string> columns, std::string_view pack,
                    const std::function<void(std::span<const Cell>)>& take) const {
  const TableShape& shape = shapes_->of(table);
  for (const std::string& name : columns) (void)shapes_->column(table, name);
  try {
    SQLite::Statement asked(catalogue_.connection().database(),
                            fmt::format("SELECT {} FROM {} WHERE pack = ? ORDER BY {}", joined(columns),
                                        sqlName(shape.name), joined(shape.key)));
    asked.bind(1, std::string(pack));
    std::vector<Cell> cells(columns.size());
    while (asked.executeStep()) {
      for (std::size_t c = 0; c < cells.size(); ++c) cells[c] = cellOf(asked.getColumn(static_cast<int>(c)));
      take(cells);
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue_.file());
  }
}

std::optional<PackRows::Owned> PackRows::under(std::string_view table, std::span<const Cell> key,
                                               std::span<const std::string> columns) const {
  const TableShape& shape = shapes_->of(table);
  if (key.size() != shape.key.size()) throw std::invalid_argument("a key of another width");
  for (const std::string& name : columns) (void)shapes_->column(table, name);
  std::string where;
  for (const std::string& name : shape.key) where += (where.empty() ? "" : " AND ") + sqlName(name) + " = ?";
  try {
    const std::string sql =
        fmt::format("SELECT pack, {} FROM {} WHERE {}", joined(columns), sqlName(shape.name), where);
    auto found = shapes_->lookups.find(sql);
    if (found == shapes_->lookups.end())
      found = shapes_->lookups.emplace(sql, SQLite::Statement(catalogue_.connection().database(), sql)).first;
    SQLite::Statement& asked = found->second;
    const Use use(asked);
    int at = 1;
    for (const Cell& cell : key) bindCell(asked, at++, cell);
    if (!asked.executeStep()) return {};
    Owned owned{asked.getColumn(0).getString(), {}};
    for (int c = 1; c <= static_cast<int>(columns.size()); ++c) owned.cells.push_back(cellOf(asked.getColumn(c)));
    return owned;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue_.file());
  }
}

const Cell& PackRows::absent(std::string_view table, std::string_view column) const {
  return shapes_->column(table, column).absent;
}

const std::vector<std::string>& PackRows::key(std::string_view table) const { return shapes_->of(table).key; }

std::optional<PackRows::PartOf> PackRows::partOf(std::string_view table) const {
  for (const Part& part : kParts)
    if (part.table == table) return PartOf{std::string(part.whole), std::string(part.column)};
  return {};
}

}  // namespace ohmkin::catalog
