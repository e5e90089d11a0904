#pragma once
#include <exchange/package.h>
#include <exchange/table_definition.h>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace ohmkin::exchange {

/// What is wrong with a cell: a code and what was expected instead.
struct CellFault {
  std::string code;
  std::string expected;
};

/// "above 0 and at most 1"; empty where there are no bounds.
std::string boundsOf(const FieldDefinition& field);

/// Reads one cell as the field's definition has it; an empty one is nothing.
tl::expected<Cell, CellFault> readCell(std::string_view text, const FieldDefinition& field, std::size_t longest);

}  // namespace ohmkin::exchange
