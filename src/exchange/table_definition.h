#pragma once
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The fields of the exchange format, read once from schema/catalogue-tables.json (Frictionless Table Schema).
namespace ohmkin::exchange {

enum class FieldType { text, integer, number, date, boolean };

struct FieldDefinition {
  std::string name;
  FieldType type = FieldType::text;
  bool required = false;
  std::vector<std::string> allowed;  ///< enum; empty: anything
  std::optional<double> minimum;
  std::optional<double> maximum;
  std::optional<double> exclusiveMinimum;
  std::optional<double> exclusiveMaximum;
  std::string pattern;                            ///< a whole text must match; empty: anything
  std::function<bool(std::string_view)> matches;  ///< the pattern, compiled; empty where there is none
  bool blanks = false;                            ///< may begin or end with a blank
  std::string description;                        ///< one line for a person; may be empty
};

struct ForeignKey {
  std::string field;
  std::string table;
  std::string refersTo;
};

/// What must hold between the cells of one row; cells without a value are left out, except by `together` and
/// `exactlyOne`.
struct RowRule {
  enum class Kind { rising, notFalling, together, exactlyOne, different };
  Kind kind = Kind::rising;
  std::vector<std::string> fields;
};

struct TableDefinition {
  std::string name;
  std::vector<FieldDefinition> fields;
  std::vector<std::string> primaryKey;
  std::vector<ForeignKey> foreignKeys;
  std::vector<RowRule> rules;
  [[nodiscard]] const FieldDefinition* field(std::string_view name) const;  ///< none: no such field
};

/// All tables, each after those it refers to.
std::span<const TableDefinition> tableDefinitions();
const TableDefinition* tableDefinition(std::string_view name);

}  // namespace ohmkin::exchange
