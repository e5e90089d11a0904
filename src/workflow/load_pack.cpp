#include <catalog/pack_writer.h>
#include <fmt/format.h>
#include <workflow/load_pack.h>
#include <workflow/row_names.h>
#include <optional>

namespace ohmkin::workflow {
namespace {

using exchange::Complaints;

catalog::Pack packOf(const exchange::Descriptor& descriptor) {
  return {descriptor.id, descriptor.title, descriptor.version, descriptor.licence};
}

/// Writes one table; every row that is not taken is complained of.
TableCount writeTable(const exchange::Table& table, catalog::PackWriter& writer, const TakePacks& take,
                      Complaints& complaints) {
  TableCount count{table.definition->name, 0, 0, 0};
  for (std::size_t row = 0; row < table.size(); ++row) {
    const std::string where = fmt::format("{}:{}", table.file, table.lines[row]);
    const bool givesWay = !take.empty() && take.contains(rowName(table, row));
    const auto fate =
        writer.write(table.definition->name, table.columns, table.row(row),
                     givesWay ? catalog::PackWriter::ShopsRow::givesWay : catalog::PackWriter::ShopsRow::stays);
    if (!fate) {
      complaints.add(fate.error().code, where, fate.error().found, fate.error().expected);
    } else if (*fate == catalog::RowFate::written) {
      ++count.written;
    } else if (*fate == catalog::RowFate::tookTheShops) {
      ++count.written;
      ++count.tookTheShops;
    } else if (*fate == catalog::RowFate::keptForShop) {
      ++count.keptForShop;
    } else {
      complaints.add("row-of-another-pack", where, "a row another pack already has", "a key of its own");
    }
  }
  return count;
}

/// What would refer to rows that are no longer there: mostly the shop's own, after an upgrade that drops a part.
void complainOfDangling(const catalog::PackWriter& writer, Complaints& complaints) {
  for (const catalog::Dangling& row : writer.dangling()) {
    const std::string whose = row.pack == "shop" ? "the shop" : fmt::format("the pack '{}'", row.pack);
    complaints.add("reference-dangling", fmt::format("{}:{}", row.table, row.column),
                   fmt::format("'{}', which {} refers to and the package does not have", row.value, whose),
                   fmt::format("a row of {} with that key", row.refersTo));
  }
}

tl::unexpected<Complaints> refused(Complaints complaints) { return tl::make_unexpected(std::move(complaints)); }

}  // namespace

std::size_t LoadedPack::rows() const {
  std::size_t all = 0;
  for (const TableCount& table : tables) all += table.written;
  return all;
}

std::string LoadedPack::sentence() const {
  if (alreadyThere) return fmt::format("'{}' {} is already in the catalogue; nothing was changed.", title, version);
  std::size_t kept = 0;
  std::size_t taken = 0;
  for (const TableCount& table : tables) {
    kept += table.keptForShop;
    taken += table.tookTheShops;
  }
  std::string text = fmt::format("Loaded '{}' {}", title, version);
  if (!replaced.empty()) text += fmt::format(" in place of {}", replaced);
  text += fmt::format(": {} rows in {} tables.", rows(), tables.size());
  if (kept > 0) text += fmt::format(" {} rows were left out because the shop has its own.", kept);
  if (taken > 0) text += fmt::format(" {} of the shop's own rows gave way.", taken);
  return text;
}

Loading loadPack(catalog::Catalogue& catalogue, const exchange::PackageSource& source, std::string_view who,
                 const TakePacks& take) {
  const auto descriptor = exchange::readDescriptor(source);
  if (!descriptor) return refused(descriptor.error());
  LoadedPack loaded{descriptor->id, descriptor->title, descriptor->version, {}, false, {}};
  if (const auto before = catalog::pack(catalogue, descriptor->id)) {
    loaded.replaced = before->version;
    if (before->version == descriptor->version && take.empty()) {
      loaded.alreadyThere = true;
      return loaded;
    }
  }

  catalog::RowFinder finder(catalogue);
  const auto package = exchange::readPackage(
      source, [&](std::string_view table, std::string_view key) { return finder.holds(table, key, descriptor->id); });
  if (!package) return refused(package.error());

  Complaints complaints;
  catalog::PackWriter writer(catalogue, packOf(*descriptor));
  for (const exchange::Table& table : package->tables)
    loaded.tables.push_back(writeTable(table, writer, take, complaints));
  complainOfDangling(writer, complaints);
  if (!complaints.none()) return refused(std::move(complaints));
  writer.keep(who);
  return loaded;
}

Loading createWithPack(const std::filesystem::path& file, const exchange::PackageSource& source, std::string_view who) {
  struct NotLoaded {};  // leaves create(), which then takes its draft away
  std::optional<Loading> loading;
  try {
    catalog::Catalogue::create(file, [&](catalog::Catalogue& fresh) {
      loading = loadPack(fresh, source, who);
      if (!*loading) throw NotLoaded{};
    });
  } catch (const NotLoaded&) {
  }
  return *std::move(loading);
}

}  // namespace ohmkin::workflow
