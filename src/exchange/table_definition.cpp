#include <embedded/ohmkin_tables.h>
#include <exchange/table_definition.h>
#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>
#include <regex>
#include <stdexcept>

namespace ohmkin::exchange {
namespace {

using nlohmann::json;

FieldType typeNamed(const std::string& name) {
  if (name == "string") return FieldType::text;
  if (name == "integer") return FieldType::integer;
  if (name == "number") return FieldType::number;
  if (name == "date") return FieldType::date;
  if (name == "boolean") return FieldType::boolean;
  throw std::logic_error("catalogue-tables.json: no such type: " + name);
}

RowRule::Kind ruleNamed(const std::string& name) {
  if (name == "rising") return RowRule::Kind::rising;
  if (name == "notFalling") return RowRule::Kind::notFalling;
  if (name == "together") return RowRule::Kind::together;
  if (name == "exactlyOne") return RowRule::Kind::exactlyOne;
  if (name == "different") return RowRule::Kind::different;
  throw std::logic_error("catalogue-tables.json: no such rule: " + name);
}

std::optional<double> bound(const json& constraints, const char* name) {
  const auto found = constraints.find(name);
  if (found == constraints.end()) return {};
  return found->get<double>();
}

FieldDefinition readField(const json& j) {
  FieldDefinition field;
  field.name = j.at("name").get<std::string>();
  field.type = typeNamed(j.at("type").get<std::string>());
  field.blanks = j.value("blanks", false);
  field.description = j.value("description", "");
  const json constraints = j.value("constraints", json::object());
  field.required = constraints.value("required", false);
  for (const json& value : constraints.value("enum", json::array()))
    field.allowed.push_back(value.is_string() ? value.get<std::string>() : value.dump());
  field.minimum = bound(constraints, "minimum");
  field.maximum = bound(constraints, "maximum");
  field.exclusiveMinimum = bound(constraints, "exclusiveMinimum");
  field.exclusiveMaximum = bound(constraints, "exclusiveMaximum");
  field.pattern = constraints.value("pattern", "");
  if (!field.pattern.empty())
    field.matches = [expression = std::regex(field.pattern)](std::string_view text) {
      return std::regex_match(text.begin(), text.end(), expression);
    };
  return field;
}

TableDefinition readTable(const json& j) {
  TableDefinition table;
  table.name = j.at("name").get<std::string>();
  const json& schema = j.at("schema");
  for (const json& field : schema.at("fields")) table.fields.push_back(readField(field));
  table.primaryKey = schema.at("primaryKey").get<std::vector<std::string>>();
  for (const json& key : schema.value("foreignKeys", json::array()))
    table.foreignKeys.push_back({key.at("fields").get<std::string>(),
                                 key.at("reference").at("resource").get<std::string>(),
                                 key.at("reference").at("fields").get<std::string>()});
  for (const json& rule : j.value("rules", json::array()))
    for (const auto& [name, fields] : rule.items())
      table.rules.push_back({ruleNamed(name), fields.get<std::vector<std::string>>()});
  return table;
}

std::vector<TableDefinition> readAll() {
  std::vector<TableDefinition> all;
  const json document = json::parse(tables::files().front().text);
  for (const json& table : document.at("tables")) all.push_back(readTable(table));
  return all;
}

}  // namespace

const FieldDefinition* TableDefinition::field(std::string_view wanted) const {
  const auto found =
      std::find_if(fields.begin(), fields.end(), [&](const FieldDefinition& f) { return f.name == wanted; });
  return found == fields.end() ? nullptr : &*found;
}

std::span<const TableDefinition> tableDefinitions() {
  static const std::vector<TableDefinition> all = readAll();
  return all;
}

const TableDefinition* tableDefinition(std::string_view name) {
  const auto all = tableDefinitions();
  const auto found = std::find_if(all.begin(), all.end(), [&](const TableDefinition& t) { return t.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace ohmkin::exchange
