#pragma once
#include <catalog/layouts.h>
#include <finding/refusal.h>
#include <string>
#include <string_view>

/// The shop's own layouts going into the catalogue.
namespace ohmkin::catalog {

struct LayoutKept {
  bool replaced = false;      ///< there was one under that id
  std::string replacedOwner;  ///< whose it was
};

/// Writes the layout with its fields and its source as the shop's own rows, and a line of the change log: one
/// transaction, whole or not at all. Under an id that is taken it refuses (layout-exists) unless `replace`; a pack's
/// layout that was replaced stays replaced when the pack is loaded again. The source gets an id of its own, whatever
/// the record's. Refuses what breaks a rule of the tables (row-refused); throws CatalogueError: catalogue-read-only,
/// catalogue-busy.
Expected<LayoutKept> keepLayout(Catalogue& catalogue, const DateLayoutRecord& layout, std::string_view who,
                                bool replace = false);

}  // namespace ohmkin::catalog
