#include "changes.h"

namespace ohmkin::test {

std::string wrongWith(const std::filesystem::path& file, const KindOfChange& kind, int acknowledged) {
  try {
    catalog::Catalogue catalogue = catalog::Catalogue::openToRead(file);
    const std::string pages = catalogue.connection().database().execAndGet("PRAGMA integrity_check(1)").getString();
    if (pages != "ok") return pages;
    if (number(catalogue, "SELECT count(*) FROM pragma_foreign_key_check") != 0) return "rows refer to nothing";
    const int had = kind.changesIn(catalogue);
    if (had == kHalf) return "half a change";
    if (had != acknowledged && had != acknowledged + 1)
      return std::to_string(acknowledged) + " acknowledged, " + std::to_string(had) + " there";
  } catch (const catalog::CatalogueError& error) {
    return error.refusal().sentence();
  } catch (const std::exception& failure) {
    return failure.what();
  }
  return {};
}

}  // namespace ohmkin::test
