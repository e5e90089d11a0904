#include <catalog/pack_rows.h>
#include <catalog/snapshot.h>
#include <fmt/format.h>
#include <workflow/load_pack.h>
#include <workflow/row_names.h>
#include <algorithm>
#include <map>

namespace ohmkin::workflow {
namespace {

using exchange::Cell;
using exchange::Complaints;

/// Rows that are parts of others, as lines of text, by the key of the whole.
using PartLines = std::map<std::string, std::vector<std::string>, std::less<>>;

std::string inOneLine(std::span<const Cell> row) {
  std::string line;
  for (const Cell& cell : row) line += shownCell(cell) + "\x1F";
  return line;
}

std::size_t placeOf(const exchange::Table& table, const std::string& column) {
  const auto at = std::find(table.columns.begin(), table.columns.end(), column);
  return static_cast<std::size_t>(at - table.columns.begin());
}

/// An empty cell becomes what the column has for it, so that it is compared as it would be written.
std::vector<Cell> asWritten(const exchange::Table& table, std::size_t row, const catalog::PackRows& rows) {
  std::vector<Cell> cells(table.row(row).begin(), table.row(row).end());
  for (std::size_t c = 0; c < cells.size(); ++c)
    if (std::holds_alternative<std::monostate>(cells[c]))
      cells[c] = rows.absent(table.definition->name, table.columns[c]);
  return cells;
}

/// Finds the rows of one package that the shop has as its own.
class Conflicts {
 public:
  Conflicts(const catalog::Catalogue& catalogue, const exchange::Package& package)
      : rows_(catalogue), package_(package) {}

  std::vector<RowConflict> all() {
    std::vector<RowConflict> found;
    for (const exchange::Table& table : package_.tables)
      for (std::size_t r = 0; r < table.size(); ++r)
        if (auto conflict = of(table, r)) found.push_back(std::move(*conflict));
    return found;
  }

 private:
  std::optional<RowConflict> of(const exchange::Table& table, std::size_t r) {
    const std::string& name = table.definition->name;
    if (const auto part = rows_.partOf(name)) {
      // What the shop has whole is shown whole, with its parts.
      const std::vector<Cell> whole{table.row(r)[placeOf(table, part->column)]};
      const auto owner = rows_.under(part->whole, whole, rows_.key(part->whole));
      if (owner && owner->pack == "shop") return {};
    }
    const auto cells = asWritten(table, r, rows_);
    const auto shops = rows_.under(name, keyOf(table, cells), table.columns);
    if (!shops || shops->pack != "shop") return {};
    RowConflict conflict{rowName(table, r), {}, parts(table, r)};
    for (std::size_t c = 0; c < cells.size(); ++c)
      conflict.cells.push_back({table.columns[c], shownCell(shops->cells[c]), shownCell(cells[c])});
    const bool differs =
        std::any_of(conflict.cells.begin(), conflict.cells.end(), [](const auto& c) { return c.differs(); }) ||
        std::any_of(conflict.parts.begin(), conflict.parts.end(), [](const auto& p) { return p.differ; });
    if (!differs) return {};
    return conflict;
  }

  std::vector<RowConflict::Parts> parts(const exchange::Table& table, std::size_t r) {
    std::vector<RowConflict::Parts> all;
    const std::string key = rowName(table, r).key.front();
    for (const exchange::TableDefinition& definition : exchange::tableDefinitions()) {
      const auto part = rows_.partOf(definition.name);
      if (!part || part->whole != table.definition->name) continue;
      const PartsOf& both = partsOf(definition, part->column);
      const auto lines = [&](const PartLines& of) {
        const auto found = of.find(key);
        return found == of.end() ? std::vector<std::string>() : found->second;
      };
      const auto shops = lines(both.shops);
      const auto packs = lines(both.packs);
      if (!shops.empty() || !packs.empty())
        all.push_back({definition.name, shops.size(), packs.size(), shops != packs});
    }
    return all;
  }

  struct PartsOf {
    PartLines shops;
    PartLines packs;
  };
  const PartsOf& partsOf(const exchange::TableDefinition& definition, const std::string& column) {
    if (const auto found = parts_.find(definition.name); found != parts_.end()) return found->second;
    PartsOf both;
    const auto table = std::find_if(package_.tables.begin(), package_.tables.end(),
                                    [&](const exchange::Table& t) { return t.definition == &definition; });
    std::vector<std::string> columns;
    columns.reserve(definition.fields.size());
    for (const auto& field : definition.fields) columns.push_back(field.name);
    if (table != package_.tables.end()) {
      columns = table->columns;
      for (std::size_t r = 0; r < table->size(); ++r)
        both.packs[shownCell(table->row(r)[placeOf(*table, column)])].push_back(inOneLine(asWritten(*table, r, rows_)));
    }
    const auto at = static_cast<std::size_t>(std::find(columns.begin(), columns.end(), column) - columns.begin());
    rows_.each(definition.name, columns, "shop",
               [&](std::span<const Cell> row) { both.shops[shownCell(row[at])].push_back(inOneLine(row)); });
    for (auto* side : {&both.shops, &both.packs})
      for (auto& [key, lines] : *side) std::sort(lines.begin(), lines.end());
    return parts_.emplace(definition.name, std::move(both)).first->second;
  }

  catalog::PackRows rows_;
  const exchange::Package& package_;
  std::map<std::string, PartsOf, std::less<>> parts_;
};

}  // namespace

std::string shownCell(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return fmt::format("{}", *whole);
  if (const auto* number = std::get_if<double>(&cell)) return fmt::format("{}", *number);
  return {};
}

std::vector<Cell> keyOf(const exchange::Table& table, std::span<const Cell> row) {
  std::vector<Cell> key;
  key.reserve(table.definition->primaryKey.size());
  for (const std::string& column : table.definition->primaryKey) key.push_back(row[placeOf(table, column)]);
  return key;
}

RowName rowName(const exchange::Table& table, std::size_t row) {
  RowName name{table.definition->name, {}};
  for (const Cell& cell : keyOf(table, table.row(row))) name.key.push_back(shownCell(cell));
  return name;
}

std::string RowConflict::sentence() const {
  std::string text = fmt::format("{} {}:", row.table, fmt::join(row.key, " "));
  const char* before = " ";
  for (const Cell& cell : cells) {
    if (!cell.differs()) continue;
    text += fmt::format("{}{} is '{}' in the shop, '{}' in the package", before, cell.column, cell.shops, cell.packs);
    before = "; ";
  }
  for (const Parts& part : parts) {
    if (!part.differ) continue;
    text += fmt::format("{}{} rows of {} in the shop, {} in the package", before, part.shops, part.table, part.packs);
    before = "; ";
  }
  return text + ".";
}

tl::expected<std::vector<RowConflict>, Complaints> conflictsWith(const catalog::Catalogue& catalogue,
                                                                 const exchange::PackageSource& source) {
  const auto descriptor = exchange::readDescriptor(source);
  if (!descriptor) return tl::make_unexpected(descriptor.error());
  const catalog::Snapshot snapshot(catalogue);
  catalog::RowFinder finder(catalogue);
  const auto package = exchange::readPackage(
      source, [&](std::string_view table, std::string_view key) { return finder.holds(table, key, descriptor->id); });
  if (!package) return tl::make_unexpected(package.error());
  return Conflicts(catalogue, *package).all();
}

}  // namespace ohmkin::workflow
