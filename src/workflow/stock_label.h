#pragma once
#include <catalog/catalogue.h>
#include <workflow/sheets.h>
#include <string>
#include <vector>

namespace ohmkin::workflow {

/// A label for every bin of these parts, of all that is on the shelf where none is named; `small`: one a page. Refuses
/// (part-unknown), (no-labels) where nothing lies there.
Expected<sheet::Pages> shelfLabels(const catalog::Catalogue& catalogue, const std::vector<std::string>& parts,
                                   const SheetOptions& options, bool small);

}  // namespace ohmkin::workflow
