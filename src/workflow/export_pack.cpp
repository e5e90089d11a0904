#include <catalog/pack_rows.h>
#include <catalog/pack_writer.h>
#include <catalog/snapshot.h>
#include <fmt/format.h>
#include <workflow/export_pack.h>
#include <workflow/row_names.h>
#include <algorithm>
#include <set>

namespace ohmkin::workflow {
namespace {

using exchange::Complaints;

tl::unexpected<Complaints> refused(Refusal refusal) {
  Complaints complaints;
  complaints.add(std::move(refusal));
  return tl::make_unexpected(std::move(complaints));
}

exchange::Table tableOf(const exchange::TableDefinition& definition, const catalog::PackRows& rows,
                        const std::string& pack) {
  exchange::Table table;
  table.definition = &definition;
  table.file = definition.name + ".csv";
  for (const exchange::FieldDefinition& field : definition.fields) table.columns.push_back(field.name);
  rows.each(definition.name, table.columns, pack, [&](std::span<const catalog::Cell> row) {
    table.cells.insert(table.cells.end(), row.begin(), row.end());
    table.lines.push_back(table.lines.size() + 2);
  });
  return table;
}

/// Packs whose rows the package leads to.
std::vector<std::string> needsOf(const exchange::Package& package, const catalog::PackRows& rows,
                                 const std::string& pack) {
  std::set<std::string> owners;
  std::set<std::pair<std::string, std::string>> asked;
  for (const exchange::Table& table : package.tables)
    for (const exchange::ForeignKey& key : table.definition->foreignKeys) {
      const auto at = std::find(table.columns.begin(), table.columns.end(), key.field) - table.columns.begin();
      for (std::size_t r = 0; r < table.size(); ++r) {
        const std::vector<exchange::Cell> value{table.row(r)[static_cast<std::size_t>(at)]};
        if (shownCell(value.front()).empty() || !asked.emplace(key.table, shownCell(value.front())).second) continue;
        if (const auto owned = rows.under(key.table, value, rows.key(key.table)); owned && owned->pack != pack)
          owners.insert(owned->pack);
      }
    }
  return {owners.begin(), owners.end()};
}

}  // namespace

std::string ExportedPack::sentence() const {
  std::string text = fmt::format("'{}' {}: {} rows in {} tables.", id, version, rows, tables);
  if (!needs.empty()) text += fmt::format(" It loads where these are: {}.", fmt::join(needs, ", "));
  return text;
}

Exporting exportPack(const catalog::Catalogue& catalogue, const PackToExport& asked) {
  const catalog::Snapshot snapshot(catalogue);
  const bool shop = asked.pack == "shop";
  catalog::Pack pack;
  if (!shop) {
    const auto found = catalog::pack(catalogue, asked.pack);
    if (!found)
      return refused(
          {"pack-unknown", "pack", fmt::format("'{}'", asked.pack), "the id of a pack of the catalogue, or shop"});
    pack = *found;
  }
  const auto either = [](const std::string& wanted, const std::string& has) { return wanted.empty() ? has : wanted; };
  exchange::Package package;
  package.descriptor = {either(asked.id, pack.id),
                        either(asked.title, pack.title),
                        either(asked.version, pack.version),
                        either(asked.licence, pack.licence),
                        {}};
  if (shop && (asked.id.empty() || asked.id == "shop" || asked.version.empty()))
    return refused({"pack-not-named", "id",
                    asked.id.empty()        ? "none"
                    : asked.version.empty() ? "no version"
                                            : fmt::format("'{}'", asked.id),
                    "an id for the package, other than shop, and a version: the shop's own rows have none"});
  if (package.descriptor.title.empty()) package.descriptor.title = package.descriptor.id;

  const catalog::PackRows rows(catalogue);
  ExportedPack exported{package.descriptor.id, package.descriptor.version, 0, 0, {}, {}};
  for (const exchange::TableDefinition& definition : exchange::tableDefinitions()) {
    exchange::Table table = tableOf(definition, rows, asked.pack);
    if (table.size() == 0) continue;
    exported.rows += table.size();
    package.tables.push_back(std::move(table));
  }
  if (package.tables.empty())
    return refused({"pack-empty", asked.pack, "not one row", "rows to write; nothing was written"});
  exported.tables = package.tables.size();
  exported.needs = needsOf(package, rows, asked.pack);
  auto files = exchange::writePackage(package);
  if (!files) return tl::make_unexpected(std::move(files.error()));
  exported.files = std::move(*files);
  return exported;
}

Exporting exportPackTo(const catalog::Catalogue& catalogue, const PackToExport& asked,
                       const std::filesystem::path& target) {
  auto exported = exportPack(catalogue, asked);
  if (!exported) return exported;
  const auto written = target.extension() == ".zip" ? exchange::writeZip(exported->files, target)
                                                    : exchange::writeFolder(exported->files, target);
  if (!written) return refused(written.error());
  return exported;
}

}  // namespace ohmkin::workflow
