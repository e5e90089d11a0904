#pragma once
#include <exchange/package.h>

namespace ohmkin::exchange {

/// Reads one CSV file against its definition; every bad cell, column and row of it is complained of, and read on. False
/// where the file could not be read as a table at all.
bool readTable(std::string_view text, const Limits& limits, Table& table, Complaints& complaints);

}  // namespace ohmkin::exchange
