#pragma once
#include <workflow/sheets.h>

namespace ohmkin::desk {

/// A sheet printed today, in the person's units, on the paper the desktop is used to: Letter where it measures in
/// inches after the manner of the United States, otherwise A4.
workflow::SheetOptions todaysSheet(const DisplayUnits& units);

}  // namespace ohmkin::desk
