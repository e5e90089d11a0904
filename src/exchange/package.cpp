#include <exchange/package.h>
#include <exchange/references.h>
#include <exchange/table_reader.h>
#include <algorithm>

namespace ohmkin::exchange {

tl::expected<Package, Complaints> readPackage(const PackageSource& source, const KnownElsewhere& known,
                                              const Limits& limits) {
  auto descriptor = readDescriptor(source, limits);
  if (!descriptor) return tl::make_unexpected(std::move(descriptor.error()));

  Complaints complaints(limits.complaints);
  Package package{std::move(*descriptor), {}};
  std::set<std::string, std::less<>> unread;
  for (const TableDefinition& definition : tableDefinitions()) {
    const auto& resources = package.descriptor.resources;
    const auto resource =
        std::find_if(resources.begin(), resources.end(), [&](const auto& r) { return r.table == definition.name; });
    if (resource == resources.end()) continue;
    const auto text = source.read(resource->path, limits.fileBytes);
    Table table;
    table.definition = &definition;
    table.file = resource->path;
    if (!text) complaints.add(text.error());
    if (text && readTable(*text, limits, table, complaints)) package.tables.push_back(std::move(table));
    else unread.insert(definition.name);
  }
  checkKeysAndReferences(package.tables, unread, known, complaints);
  if (!complaints.none()) return tl::make_unexpected(std::move(complaints));
  return package;
}

}  // namespace ohmkin::exchange
