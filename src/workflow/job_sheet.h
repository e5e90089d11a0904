#pragma once
#include <catalog/jobs.h>
#include <workflow/sheets.h>

namespace ohmkin::workflow {

/// What the customer takes home, out of the answer as it was kept; where today's is the same, the offset card with its
/// plot follows. Refuses (job-unknown).
Expected<sheet::Pages> jobSheet(const catalog::Catalogue& catalogue, catalog::JobNumber id,
                                const SheetOptions& options);

}  // namespace ohmkin::workflow
