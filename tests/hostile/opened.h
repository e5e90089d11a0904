#pragma once
#include <catalog/catalogue.h>
#include <catalog/vehicles.h>
#include "in_a_child.h"

namespace ohmkin::test {

/// "opened", or the code and the sentence that opening it and asking it a question is refused with.
inline std::string openedOrWhyNot(const std::filesystem::path& file, catalog::Access access) {
  try {
    const auto catalogue = access == catalog::Access::readOnly ? catalog::Catalogue::openToRead(file)
                                                               : catalog::Catalogue::open(file, access);
    (void)catalog::lines(catalogue);
    return "opened";
  } catch (const catalog::CatalogueError& error) {
    return error.refusal().code + "\n" + error.refusal().sentence();
  }
}

}  // namespace ohmkin::test
