#include <catalog/pack_writer.h>
#include <catalog/row_editor.h>
#include <catalog/row_editor_pages.h>
#include <exchange/table_definition.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/edit_attempt.h>
#include <workflow/edit_cells.h>
#include <workflow/edit_names.h>
#include <workflow/edit_rows.h>
#include <workflow/edit_states.h>
#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace ohmkin::workflow {
namespace {

using catalog::Cell;

const EditKind& kindNamed(std::string_view name) {
  const EditKind* kind = editKind(name);
  if (kind == nullptr) throw std::invalid_argument("no such kind: " + std::string(name));
  return *kind;
}

Refusal kindUnknown(std::string_view name) {
  std::vector<std::string> names;
  for (const EditKind& kind : editKinds()) names.push_back(kind.label);
  return {"kind-unknown", "kind", fmt::format("'{}'", name),
          fmt::format("one of {}{}", fmt::join(names, ", "), perhaps(nearMisses(name, names)))};
}

std::string placeOf(const catalog::PagePlace& place) {
  using nlohmann::json;
  const auto value = [](const Cell& cell) {
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) return json(*whole);
    if (const auto* number = std::get_if<double>(&cell)) return json(*number);
    if (const auto* text = std::get_if<std::string>(&cell)) return json(*text);
    return json();
  };
  json all = json::array({value(place.sorted)});
  for (const Cell& cell : place.key) all.push_back(value(cell));
  return all.dump(-1, ' ', false, json::error_handler_t::replace);
}

std::optional<catalog::PagePlace> placeFrom(const std::string& text) {
  using nlohmann::json;
  const json all = json::parse(text, nullptr, false);
  if (!all.is_array() || all.size() < 2) return {};
  const auto cell = [](const json& value) -> Cell {
    if (value.is_number_integer()) return value.get<std::int64_t>();
    if (value.is_number()) return value.get<double>();
    if (value.is_string()) return value.get<std::string>();
    return {};
  };
  catalog::PagePlace place{cell(all.front()), {}};
  for (std::size_t i = 1; i < all.size(); ++i) place.key.push_back(cell(all[i]));
  return place;
}

}  // namespace

Thing newThing(std::string_view kind) {
  const EditKind& of = kindNamed(kind);
  Thing thing;
  thing.kind = of.name;
  for (const EditField& field : of.fields) thing.fields[field.name];
  for (const EditPart& part : of.parts) thing.parts[part.name];
  return thing;
}

Expected<std::vector<Cell>> keyFromTexts(const EditKind& kind, const std::vector<std::string>& key) {
  const auto names = kind.key();
  if (key.size() != names.size())
    return refuse("thing-unknown", "key", fmt::format("'{}'", fmt::join(key, ", ")),
                  fmt::format("{}, in this order", fmt::join(names, ", ")));
  std::vector<Cell> cells;
  for (std::size_t k = 0; k < key.size(); ++k) {
    auto cell = cellOf(*kind.field(names[k]), key[k], {}, names[k]);
    if (!cell) return tl::make_unexpected(cell.error());
    cells.push_back(std::move(*cell));
  }
  return cells;
}

Expected<Thing> readThing(const catalog::Catalogue& catalogue, std::string_view name,
                          const std::vector<std::string>& key, const DisplayUnits& units) {
  const EditKind* kind = editKind(name);
  if (kind == nullptr) return tl::make_unexpected(kindUnknown(name));
  const auto cells = keyFromTexts(*kind, key);
  if (!cells) return tl::make_unexpected(cells.error());
  const auto state = catalog::thingState(catalogue, kind->name, *cells);
  if (state) return thingOf(*kind, *state, units);
  std::vector<std::string> near;
  if (key.size() == 1)
    for (const auto& like : catalog::keysLike(catalogue, kind->name, {}, key.front(), 3)) near.push_back(like.key);
  return refuse("thing-unknown", "key", fmt::format("'{}'", fmt::join(key, ", ")),
                fmt::format("a {} of this catalogue{}", kind->label, perhaps(near)));
}

std::vector<std::string> keyOf(const Thing& thing) {
  std::vector<std::string> key;
  for (const std::string& name : kindNamed(thing.kind).key()) {
    const auto found = thing.fields.find(name);
    key.push_back(found == thing.fields.end() ? std::string() : found->second);
  }
  return key;
}

std::string nameOf(const Thing& thing) {
  return fmt::format("{} {}", kindNamed(thing.kind).label, fmt::join(keyOf(thing), ", "));
}

Expected<std::string> checkField(const EditField& field, std::string_view text, const DisplayUnits& units,
                                 const catalog::Catalogue* catalogue, std::string_view where) {
  const std::string at = where.empty() ? field.name : std::string(where);
  const auto cell = cellOf(field, text, units, at);
  if (!cell) return tl::make_unexpected(cell.error());
  const auto* key = std::get_if<std::string>(&*cell);
  if (catalogue != nullptr && key != nullptr && !field.refersTo.empty()) {
    const EditKind* of = editKind(field.refersTo);
    if (of != nullptr && !catalog::RowFinder(*catalogue).holds(of->name, *key)) {
      std::vector<std::string> near;
      for (const auto& like : catalog::keysLike(*catalogue, of->name, {}, *key, 3)) near.push_back(like.key);
      return refuse("reference-dangling", at, fmt::format("'{}'", *key),
                    fmt::format("a {} that is there{}", of->label, perhaps(near)));
    }
  }
  return textOf(field, *cell, units);
}

std::vector<Refusal> checkThing(catalog::Catalogue& catalogue, const Thing& thing,
                                const std::optional<NewSource>& source, const DisplayUnits& units) {
  const EditKind* kind = editKind(thing.kind);
  if (kind == nullptr) return {kindUnknown(thing.kind)};
  if (catalogue.access() == catalog::Access::readOnly) {
    const auto before = catalog::stateFromJson(thing.asRead);
    auto built = stateOf(catalogue, *kind, thing, before, units);
    auto more = danglingOf(catalogue, *kind, built.state);
    built.refusals.insert(built.refusals.end(), more.begin(), more.end());
    return built.refusals;
  }
  catalog::RowEditor editor(catalogue);  // rolls back
  auto tried = attemptSave(catalogue, editor, *kind, thing, source, units);
  return tried ? std::vector<Refusal>() : std::move(tried.error().reasons);
}

std::vector<KnownKey> completions(const catalog::Catalogue& catalogue, std::string_view kind, std::string_view typed,
                                  std::size_t most) {
  const EditKind& of = kindNamed(kind);
  if (of.key().size() != 1) return {};
  std::vector<KnownKey> all;
  for (auto& like : catalog::keysLike(catalogue, of.name, tableWords(of.name)->nameColumn, typed, most))
    all.push_back({std::move(like.key), std::move(like.name)});
  return all;
}

std::string UsedBy::words() const {
  const TableWords* table = tableWords(kind);
  std::string noun = table == nullptr ? kind : std::string(count == 1 ? table->label : table->plural);
  if (table == nullptr) std::replace(noun.begin(), noun.end(), '_', ' ');
  return fmt::format("{} {} ({}{})", count, noun, fmt::join(first, "; "),
                     static_cast<std::int64_t>(first.size()) < count ? "; …" : "");
}

std::vector<UsedBy> usedBy(const catalog::Catalogue& catalogue, std::string_view kind,
                           const std::vector<std::string>& key) {
  const EditKind& of = kindNamed(kind);
  if (key.size() != 1 || of.key().size() != 1) return {};
  return inWords(catalog::referringTo(catalogue, of.name, key.front()));
}

Expected<Page> page(const catalog::Catalogue& catalogue, const PageRequest& asked, const DisplayUnits& units) {
  const EditKind* kind = editKind(asked.kind);
  if (kind == nullptr) return tl::make_unexpected(kindUnknown(asked.kind));
  const auto unknown = [&](const std::string& field, const char* where) {
    std::vector<std::string> names;
    names.reserve(kind->fields.size());
    for (const EditField& f : kind->fields) names.push_back(f.name);
    return refuse("field-unknown", where, fmt::format("'{}'", field),
                  fmt::format("one of {}{}", fmt::join(names, ", "), perhaps(nearMisses(field, names))));
  };
  catalog::PageOfRows rows;
  rows.table = kind->name;
  for (const EditField& field : kind->fields) rows.columns.push_back(field.name);
  if (!asked.sortBy.empty() && kind->field(asked.sortBy) == nullptr) return unknown(asked.sortBy, "sort");
  rows.sortBy = asked.sortBy;
  rows.descending = asked.descending;
  rows.pack = asked.onlyOf;
  rows.most = asked.most + 1;
  for (const auto& [field, text] : asked.filter) {
    if (text.empty()) continue;
    if (!field.empty() && kind->field(field) == nullptr) return unknown(field, "filter");
    rows.holds.push_back({field.empty() ? rows.columns : std::vector<std::string>{field}, text});
  }
  if (!asked.after.empty()) {
    rows.after = placeFrom(asked.after);
    if (!rows.after || rows.after->key.size() != kind->key().size())
      return refuse("place-unreadable", "after", fmt::format("'{}'", asked.after), "the place of a row seen before");
  }
  Page page;
  for (const catalog::RowSeen& seen : catalog::pageOfRows(catalogue, rows)) {
    if (page.rows.size() == asked.most) {
      page.more = true;
      break;
    }
    RowOfPage row{{}, {}, seen.pack, placeOf(seen.place)};
    for (std::size_t f = 0; f < kind->fields.size(); ++f) {
      row.texts.push_back(textOf(kind->fields[f], seen.cells[f], units));
      if (kind->fields[f].key) row.key.push_back(row.texts.back());
    }
    page.rows.push_back(std::move(row));
  }
  return page;
}

std::int64_t countRows(const catalog::Catalogue& catalogue, std::string_view kind) {
  return catalog::rowCount(catalogue, kindNamed(kind).name);
}

}  // namespace ohmkin::workflow
