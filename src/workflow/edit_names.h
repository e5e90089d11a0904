#pragma once
#include <workflow/edit_kinds.h>
#include <optional>
#include <string_view>

/// Inside this room only: the trade's words for tables and columns, and the units columns are kept in.
namespace ohmkin::workflow {

struct TableWords {
  std::string_view table;
  std::string_view label;
  std::string_view plural;
  std::string_view help;
  std::string_view nameColumn;  ///< by which a person knows a row; empty: its key alone
};
/// Of kinds and parts; none for tables that are not edited so (stock has movements of its own).
const TableWords* tableWords(std::string_view table);

struct FieldWords {
  std::string_view label;
  EditUnit unit = EditUnit::none;
};
/// For columns whose name does not say it all, or that have a unit.
std::optional<FieldWords> fieldWords(std::string_view table, std::string_view column);

}  // namespace ohmkin::workflow
