#pragma once
#include <workflow/find_fault.h>
#include <workflow/sheets.h>

/// What a search for a fault has on paper.
namespace ohmkin::workflow {

/// The gauge wired past the car's own harness, drawn. `plan` is FaultFinder::wiring's.
sheet::Pages wiringSheet(const FaultFinder& finder, const circuit::WirePlan& plan, const SheetOptions& options);

/// What every trade test shows under every single fault of this circuit, by what has to be opened for it.
sheet::Pages predictionsSheet(const FaultFinder& finder, const SheetOptions& options);

}  // namespace ohmkin::workflow
