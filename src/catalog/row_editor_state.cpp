#include <catalog/pack_parts.h>
#include <catalog/row_editor_state.h>
#include <nlohmann/json.hpp>

namespace ohmkin::catalog {
namespace {

using nlohmann::json;

/// A port has a source of its own, so a pack may bring one to the shop's casting: no part to packs, but to a person.
constexpr Part kPort{"port", "casting", "casting"};

json jsonOf(const RowCells& row) {
  json object = json::object();
  for (const auto& [column, cell] : row) {
    json& value = object[column];
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) value = *whole;
    else if (const auto* number = std::get_if<double>(&cell)) value = *number;
    else if (const auto* text = std::get_if<std::string>(&cell)) value = *text;
  }
  return object;
}

std::string textUnder(const json& object, const char* name) {
  const auto found = object.find(name);
  if (found == object.end()) return {};
  const auto* text = found->get_ptr<const std::string*>();
  return text == nullptr ? std::string() : *text;
}

RowCells rowFrom(const json& object) {
  RowCells row;
  for (const auto& [column, value] : object.items()) {
    Cell& cell = row[column];
    if (value.is_number_integer()) cell = value.get<std::int64_t>();
    else if (value.is_number()) cell = value.get<double>();
    else if (const auto* text = value.get_ptr<const std::string*>(); text != nullptr) cell = *text;
  }
  return row;
}

}  // namespace

std::vector<EditedPart> editedParts(std::string_view table) {
  std::vector<EditedPart> all;
  for (const Part& part : kParts)
    if (part.whole == table) all.push_back({std::string(part.table), std::string(part.column)});
  if (kPort.whole == table) all.push_back({std::string(kPort.table), std::string(kPort.column)});
  return all;
}

bool isEditedPart(std::string_view table) {
  for (const Part& part : kParts)
    if (part.table == table) return true;
  return kPort.table == table;
}

bool sameValues(const ThingState& a, const ThingState& b) {
  return a.table == b.table && a.row == b.row && a.parts == b.parts;
}

std::string asJson(const ThingState& state) {
  json document = {{"table", state.table}, {"pack", state.pack}, {"row", jsonOf(state.row)}};
  if (!state.packVersion.empty()) document["pack_version"] = state.packVersion;
  for (const auto& [table, rows] : state.parts) {
    json& list = document["parts"][table] = json::array();
    for (const RowCells& row : rows) list.push_back(jsonOf(row));
  }
  if (state.newSource) document["new_source"] = jsonOf(*state.newSource);
  return document.dump(-1, ' ', false, json::error_handler_t::replace);
}

std::optional<ThingState> stateFromJson(std::string_view text) {
  if (text.empty() || text.front() != '{') return {};
  try {
    const json document = json::parse(text);
    ThingState state;
    state.table = textUnder(document, "table");
    state.pack = textUnder(document, "pack");
    state.packVersion = textUnder(document, "pack_version");
    state.row = rowFrom(document.at("row"));
    if (state.table.empty() || state.pack.empty()) return {};
    if (const auto parts = document.find("parts"); parts != document.end())
      for (const auto& [table, rows] : parts->items()) {
        auto& list = state.parts[table];
        for (const json& row : rows) list.push_back(rowFrom(row));
      }
    if (const auto source = document.find("new_source"); source != document.end()) state.newSource = rowFrom(*source);
    return state;
  } catch (const json::exception&) {
    return {};
  }
}

}  // namespace ohmkin::catalog
