#include <catalog/pack_parts.h>
#include <catalog/pack_rows.h>
#include <catalog/table_sql.h>
#include <fmt/format.h>
#include <algorithm>
#include <map>
#include <stdexcept>

namespace ohmkin::catalog {

struct PackRows::Shapes {
  std::map<std::string, TableShape, std::less<>> byName;
  mutable std::map<std::string, SQLite::Statement, std::less<>> lookups;  // by their text

  const TableShape& of(std::string_view table) const {
    const auto found = byName.find(table);
    if (found == byName.end()) throw std::invalid_argument("no table of packs: " + std::string(table));
    return found->second;
  }
  const ColumnShape& column(std::string_view table, std::string_view name) const { return columnOf(of(table), name); }
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
                            fmt::format("SELECT {} FROM {} WHERE pack = ? ORDER BY {}", listOf(columns),
                                        sqlName(shape.name), listOf(shape.key)));
    asked.bind(1, std::string(pack));
    std::vector<Cell> cells(columns.size());
    while (asked.executeStep()) {
      for (std::size_t c = 0; c < cells.size(); ++c) cells[c] = cellAt(asked.getColumn(static_cast<int>(c)));
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
  try {
    const std::string sql =
        fmt::format("SELECT pack, {} FROM {} WHERE {}", listOf(columns), sqlName(shape.name), whereAll(shape.key));
    auto found = shapes_->lookups.find(sql);
    if (found == shapes_->lookups.end())
      found = shapes_->lookups.emplace(sql, SQLite::Statement(catalogue_.connection().database(), sql)).first;
    SQLite::Statement& asked = found->second;
    const Use use(asked);
    int at = 1;
    for (const Cell& cell : key) bindCellAt(asked, at++, cell);
    if (!asked.executeStep()) return {};
    Owned owned{asked.getColumn(0).getString(), {}};
    for (int c = 1; c <= static_cast<int>(columns.size()); ++c) owned.cells.push_back(cellAt(asked.getColumn(c)));
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
