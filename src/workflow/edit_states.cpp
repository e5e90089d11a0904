#include <catalog/pack_writer.h>
#include <exchange/row_rules.h>
#include <exchange/table_definition.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/edit_cells.h>
#include <workflow/edit_states.h>
#include <algorithm>
#include <charconv>
#include <ranges>
#include <set>

namespace ohmkin::workflow {
namespace {

using catalog::Cell;
using catalog::RowCells;
using catalog::ThingState;

const Cell& cellIn(const RowCells& row, const std::string& column) {
  static const Cell nothing;
  const auto found = row.find(column);
  return found == row.end() ? nothing : found->second;
}

FieldTexts textsOf(const std::vector<EditField>& fields, const RowCells& row, const DisplayUnits& units) {
  FieldTexts texts;
  for (const EditField& field : fields) texts[field.name] = textOf(field, cellIn(row, field.name), units);
  return texts;
}

/// Reads the fields of one row. `table` is the catalogue's, `at` tells where a field stands.
class RowBuilder {
 public:
  RowBuilder(const catalog::Catalogue& catalogue, std::string table, const std::vector<EditField>& fields,
             const DisplayUnits& units, std::vector<Refusal>& refusals)
      : catalogue_(catalogue), table_(std::move(table)), fields_(fields), units_(units), refusals_(refusals) {}

  RowCells build(const FieldTexts& texts, const RowCells* before, FieldPlace place) {
    RowCells row;
    bool whole = true;
    const auto at = [&](const std::string& field) {
      place.field = field;
      return placeText(place);
    };
    for (const auto& [name, text] : texts)
      if (std::none_of(fields_.begin(), fields_.end(), [&](const EditField& f) { return f.name == name; })) {
        std::vector<std::string> names;
        names.reserve(fields_.size());
        for (const EditField& field : fields_) names.push_back(field.name);
        refusals_.push_back({"field-unknown", at(name), fmt::format("'{}'", name),
                             fmt::format("one of {}{}", fmt::join(names, ", "), perhaps(nearMisses(name, names)))});
        whole = false;
      }
    for (const EditField& field : fields_) {
      const auto typed = texts.find(field.name);
      const std::string text = typed == texts.end() ? std::string() : typed->second;
      if (before != nullptr && text == textOf(field, cellIn(*before, field.name), units_)) {
        row[field.name] = cellIn(*before, field.name);
        continue;
      }
      auto cell = cellOf(field, text, units_, at(field.name));
      if (!cell) {
        refusals_.push_back(cell.error());
        whole = false;
        continue;
      }
      const bool empty = std::holds_alternative<std::monostate>(*cell);
      row[field.name] = empty ? catalog::absentCell(catalogue_, table_, field.name) : std::move(*cell);
    }
    if (whole) checkRules(row, place);
    return row;
  }

 private:
  void checkRules(const RowCells& row, FieldPlace place) {
    exchange::Table table;
    table.definition = exchange::tableDefinition(table_);
    for (const auto& [column, cell] : row) {
      table.columns.push_back(column);
      // An empty text is what the catalogue keeps for no value.
      const auto* text = std::get_if<std::string>(&cell);
      table.cells.push_back(text != nullptr && text->empty() ? Cell{} : cell);
    }
    table.lines.push_back(0);
    exchange::Complaints complaints;
    exchange::checkRowRules(table, complaints);
    for (Refusal refusal : complaints.list()) {
      place.field = refusal.where.substr(refusal.where.rfind(':') + 1);
      refusal.where = placeText(place);
      refusals_.push_back(std::move(refusal));
    }
  }

  const catalog::Catalogue& catalogue_;
  std::string table_;
  const std::vector<EditField>& fields_;
  const DisplayUnits& units_;
  std::vector<Refusal>& refusals_;
};

void buildPart(const catalog::Catalogue& catalogue, const EditPart& part, const Thing& thing,
               const std::vector<RowCells>* before, const DisplayUnits& units, BuiltState& built) {
  auto& rows = built.state.parts[part.name];
  const auto typed = thing.parts.find(part.name);
  if (typed == thing.parts.end()) return;
  const bool sameCount = before != nullptr && before->size() == typed->second.size();
  RowBuilder builder(catalogue, part.name, part.fields, units, built.refusals);
  std::set<std::vector<std::string>> keys;
  for (std::size_t r = 0; r < typed->second.size(); ++r) {
    const RowCells* old = before != nullptr && r < before->size() ? &(*before)[r] : nullptr;
    RowCells row = builder.build(typed->second[r], old, {part.name, r, {}});
    if (part.inOrder) row["ordinal"] = sameCount ? cellIn(*old, "ordinal") : Cell{static_cast<std::int64_t>(r + 1)};
    std::vector<std::string> key;
    std::string keyField;
    for (const EditField& field : part.fields)
      if (field.key) {
        key.push_back(textOf(field, cellIn(row, field.name), {}));
        keyField = field.name;
      }
    if (!key.empty() && !keys.insert(key).second)
      built.refusals.push_back({"key-twice", placeText({part.name, r, keyField}),
                                fmt::format("'{}'", fmt::join(key, ", ")), "one that no other row has"});
    rows.push_back(std::move(row));
  }
  if (part.inOrder) return;
  for (const auto& field : std::views::reverse(part.fields))
    if (field.key)
      std::stable_sort(rows.begin(), rows.end(), [&](const RowCells& a, const RowCells& b) {
        return cellIn(a, field.name) < cellIn(b, field.name);
      });
}

void compareRows(const std::vector<EditField>& fields, const RowCells* before, const RowCells* after, FieldPlace place,
                 const std::string& label, const DisplayUnits& units, std::vector<FieldChange>& changes) {
  for (const EditField& field : fields) {
    const Cell was = before == nullptr ? Cell{} : cellIn(*before, field.name);
    const Cell is = after == nullptr ? Cell{} : cellIn(*after, field.name);
    if (was == is) continue;
    place.field = field.name;
    FieldChange change{placeText(place), label + field.label, textOf(field, was, units), textOf(field, is, units)};
    if (change.before != change.after) changes.push_back(std::move(change));
  }
}

}  // namespace

std::string placeText(const FieldPlace& place) {
  if (place.part.empty()) return place.field;
  return fmt::format("{}[{}].{}", place.part, place.row + 1, place.field);
}

FieldPlace fieldPlace(std::string_view where) {
  const auto open = where.find('[');
  const auto close = where.find("].");
  if (open == std::string_view::npos || close == std::string_view::npos || close < open)
    return {{}, 0, std::string(where)};
  FieldPlace place{std::string(where.substr(0, open)), 0, std::string(where.substr(close + 2))};
  std::size_t number = 0;
  std::from_chars(where.data() + open + 1, where.data() + close, number);
  place.row = number == 0 ? 0 : number - 1;
  return place;
}

Thing thingOf(const EditKind& kind, const ThingState& state, const DisplayUnits& units) {
  Thing thing;
  thing.kind = kind.name;
  thing.fields = textsOf(kind.fields, state.row, units);
  for (const EditPart& part : kind.parts) {
    auto& rows = thing.parts[part.name];
    if (const auto found = state.parts.find(part.name); found != state.parts.end())
      for (const RowCells& row : found->second) rows.push_back(textsOf(part.fields, row, units));
  }
  thing.pack = state.pack;
  thing.asRead = catalog::asJson(state);
  return thing;
}

BuiltState stateOf(const catalog::Catalogue& catalogue, const EditKind& kind, const Thing& thing,
                   const std::optional<ThingState>& before, const DisplayUnits& units) {
  BuiltState built;
  built.state.table = kind.name;
  built.state.pack = "shop";
  RowBuilder builder(catalogue, kind.name, kind.fields, units, built.refusals);
  built.state.row = builder.build(thing.fields, before ? &before->row : nullptr, {});
  for (const auto& [name, rows] : thing.parts)
    if (kind.part(name) == nullptr)
      built.refusals.push_back({"part-unknown", name, fmt::format("'{}'", name), "a part of a " + kind.label});
  for (const EditPart& part : kind.parts) {
    const std::vector<RowCells>* rows = nullptr;
    if (before)
      if (const auto found = before->parts.find(part.name); found != before->parts.end()) rows = &found->second;
    buildPart(catalogue, part, thing, rows, units, built);
  }
  return built;
}

std::vector<Refusal> danglingOf(const catalog::Catalogue& catalogue, const EditKind& kind, const ThingState& state,
                                const std::string& newSource) {
  std::vector<Refusal> all;
  catalog::RowFinder finder(catalogue);
  const auto look = [&](const std::vector<EditField>& fields, const RowCells& row, FieldPlace place) {
    for (const EditField& field : fields) {
      if (field.refersTo.empty()) continue;
      const auto* key = std::get_if<std::string>(&cellIn(row, field.name));
      if (key == nullptr || key->empty() || (field.refersTo == "source" && *key == newSource) ||
          finder.holds(field.refersTo, *key))
        continue;
      place.field = field.name;
      const EditKind* kindThere = editKind(field.refersTo);
      all.push_back({"reference-dangling", placeText(place), fmt::format("'{}'", *key),
                     fmt::format("a {} that is there", kindThere == nullptr ? field.refersTo : kindThere->label)});
    }
  };
  look(kind.fields, state.row, {});
  for (const EditPart& part : kind.parts)
    if (const auto rows = state.parts.find(part.name); rows != state.parts.end())
      for (std::size_t r = 0; r < rows->second.size(); ++r) look(part.fields, rows->second[r], {part.name, r, {}});
  return all;
}

std::vector<FieldChange> differences(const std::optional<ThingState>& before, const std::optional<ThingState>& after,
                                     const DisplayUnits& units) {
  std::vector<FieldChange> changes;
  const EditKind* kind = editKind(before ? before->table : after ? after->table : std::string());
  if (kind == nullptr) return changes;
  compareRows(kind->fields, before ? &before->row : nullptr, after ? &after->row : nullptr, {}, {}, units, changes);
  for (const EditPart& part : kind->parts) {
    static const std::vector<RowCells> none;
    const auto rowsOf = [&](const std::optional<ThingState>& state) -> const std::vector<RowCells>& {
      if (!state) return none;
      const auto found = state->parts.find(part.name);
      return found == state->parts.end() ? none : found->second;
    };
    const auto& was = rowsOf(before);
    const auto& is = rowsOf(after);
    for (std::size_t r = 0; r < std::max(was.size(), is.size()); ++r)
      compareRows(part.fields, r < was.size() ? &was[r] : nullptr, r < is.size() ? &is[r] : nullptr, {part.name, r, {}},
                  fmt::format("{} {}: ", part.label, r + 1), units, changes);
  }
  return changes;
}

std::string nameOf(const EditKind& kind, const std::vector<Cell>& key) {
  std::vector<std::string> texts;
  const auto names = kind.key();
  for (std::size_t k = 0; k < key.size(); ++k)
    texts.push_back(k < names.size() ? textOf(*kind.field(names[k]), key[k], {}) : std::string());
  return fmt::format("{} {}", kind.label, fmt::join(texts, ", "));
}

std::vector<Cell> keyOf(const EditKind& kind, const ThingState& state) {
  std::vector<Cell> key;
  for (const std::string& name : kind.key()) key.push_back(cellIn(state.row, name));
  return key;
}

std::vector<UsedBy> inWords(const std::vector<catalog::Referring>& referring) {
  std::vector<UsedBy> all;
  all.reserve(referring.size());
  for (const catalog::Referring& one : referring) all.push_back({one.table, one.column, one.count, one.first});
  return all;
}

}  // namespace ohmkin::workflow
