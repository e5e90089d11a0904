#pragma once
#include <exchange/package.h>
#include <quantity/print.h>
#include <workflow/edit_kinds.h>
#include <string>
#include <string_view>

/// Inside this room only: a cell as a person types and reads it.
namespace ohmkin::workflow {

/// "85 °C", "1.2 Ω", "yes", "1971-08-22"; empty: no value. Reads back to the same cell in °C and N·m; other units carry
/// ten digits.
std::string textOf(const EditField& field, const exchange::Cell& cell, const DisplayUnits& units);

/// Refuses what exchange::readCell() would of a package, with its codes, and a unit that does not fit.
Expected<exchange::Cell> cellOf(const EditField& field, std::string_view text, const DisplayUnits& units,
                                std::string_view where);

}  // namespace ohmkin::workflow
