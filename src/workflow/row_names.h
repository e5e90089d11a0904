#pragma once
#include <exchange/package.h>
#include <workflow/load_pack.h>
#include <span>

/// Inside this room only: cells as a person reads them, and rows by their keys.
namespace ohmkin::workflow {

std::string shownCell(const exchange::Cell& cell);  ///< empty: no value
std::vector<exchange::Cell> keyOf(const exchange::Table& table, std::span<const exchange::Cell> row);
RowName rowName(const exchange::Table& table, std::size_t row);

}  // namespace ohmkin::workflow
