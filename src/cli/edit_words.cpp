#include <catalog/row_editor_state.h>
#include <cli/edit_words.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/edit_kinds.h>
#include <algorithm>
#include <charconv>
#include <ostream>
#include <ranges>
#include <set>

namespace ohmkin::cli {
namespace {

using workflow::EditField;
using workflow::EditKind;
using workflow::EditPart;
using workflow::FieldTexts;
using workflow::Thing;

const char* unitText(workflow::EditUnit unit) {
  switch (unit) {
    case workflow::EditUnit::none:
      return "";
    case workflow::EditUnit::celsius:
      return "°C";
    case workflow::EditUnit::kelvin:
      return "K";
    case workflow::EditUnit::ohms:
      return "Ω";
    case workflow::EditUnit::millimetres:
      return "mm";
    case workflow::EditUnit::metres:
      return "m";
    case workflow::EditUnit::newtonMetres:
      return "N·m or lbf·ft";
    case workflow::EditUnit::degrees:
      return "°";
    case workflow::EditUnit::volts:
      return "V";
    case workflow::EditUnit::kilopascals:
      return "kPa";
    case workflow::EditUnit::part:
      return "a part of one, or %";
  }
  return "";
}

tl::unexpected<Refusal> unknown(const char* code, const std::string& name, std::vector<std::string> names) {
  return refuse(code, name, "'" + name + "'",
                fmt::format("one of {}{}", fmt::join(names, ", "), perhaps(nearMisses(name, names))));
}

Expected<void> fieldIn(const std::vector<EditField>& fields, const std::string& name, const std::string& before = {}) {
  std::vector<std::string> names;
  for (const EditField& field : fields) {
    if (field.name == name) return {};
    names.push_back(field.name);
  }
  auto refused = unknown("field-unknown", name, names);
  refused.value().where.insert(0, before);
  return refused;
}

/// "dial_mark[3].angle": part, row from 1, field (empty: the row). No bracket: a field of the thing.
struct Target {
  std::string part;
  std::size_t row = 0;
  std::string field;
};

std::optional<Target> targetOf(const std::string& text) {
  const auto open = text.find('[');
  if (open == std::string::npos) return Target{{}, 0, text};
  Target target{text.substr(0, open), 0, {}};
  const auto close = text.find(']', open);
  if (close == std::string::npos) return {};
  const auto [end, error] = std::from_chars(text.data() + open + 1, text.data() + close, target.row);
  if (error != std::errc{} || end != text.data() + close || target.row == 0) return {};
  if (close + 1 == text.size()) return target;
  if (text[close + 1] != '.' || close + 2 == text.size()) return {};
  target.field = text.substr(close + 2);
  return target;
}

std::string takes(const EditField& field) {
  std::vector<std::string> all;
  if (field.required) all.emplace_back("needed");
  if (const std::string unit = unitText(field.unit); !unit.empty()) all.push_back(unit);
  if (field.type == workflow::EditType::date) all.emplace_back("a date, 1971-08-22");
  if (field.type == workflow::EditType::yesNo) all.emplace_back("yes or no");
  if (field.type == workflow::EditType::wholeNumber) all.emplace_back("a whole number");
  if (!field.choices.empty()) all.push_back(fmt::format("{}", fmt::join(field.choices, " | ")));
  if (!field.refersTo.empty()) {
    const EditKind* of = workflow::editKind(field.refersTo);
    all.push_back("names a " + (of == nullptr ? field.refersTo : of->label));
  }
  if (!field.range.empty()) all.push_back(field.range);
  return fmt::format("{}", fmt::join(all, "; "));
}

std::string valueIn(const FieldTexts& texts, const std::string& name) {
  const auto found = texts.find(name);
  return found == texts.end() ? std::string() : found->second;
}

void printField(const EditField& field, const std::string& where, const std::string& value, std::ostream& out) {
  std::string line = fmt::format("{:<26}{}", where + "=", value.empty() ? "-" : value);
  line += fmt::format("  [{}]", field.label);
  if (const std::string more = takes(field); !more.empty()) line += "  " + more;
  out << wrapped(line, 28, 2);
}

Json json(const EditField& field) {
  return {
      {"name", field.name},  {"label", field.label},         {"help", field.help},       {"required", field.required},
      {"key", field.key},    {"unit", unitText(field.unit)}, {"choices", field.choices}, {"refers_to", field.refersTo},
      {"range", field.range}};
}

Json json(const FieldTexts& texts) {
  Json all = Json::object();
  for (const auto& [name, value] : texts) all[name] = value;
  return all;
}

tl::unexpected<Refusal> unreadable(const std::string& found) {
  return refuse("document-unreadable", "--from", found, "a document as ohmkin edit --json shows a thing");
}

/// A JSON object of known names, each a text.
Expected<FieldTexts> textsOf(const Json& object, const std::vector<EditField>& fields, const std::string& before) {
  if (!object.is_object()) return unreadable("no fields");
  FieldTexts texts;
  for (const auto& [name, value] : object.items()) {
    if (const auto known = fieldIn(fields, name, before); !known) return tl::make_unexpected(known.error());
    if (!value.is_string()) return unreadable(fmt::format("a field that is no text: {}{}", before, name));
    texts[name] = value.get<std::string>();
  }
  return texts;
}

constexpr std::size_t kMostDocument = 4U << 20U;
constexpr int kMostDepth = 16;
constexpr std::size_t kMostRows = 100'000;

/// By part; the first row is 0. Taken out at the end, so that rows keep their numbers until then.
using RowsTakenOut = std::map<std::string, std::set<std::size_t>>;

/// `word` is the whole assignment, for messages.
Expected<void> assignToRow(Thing& thing, const EditKind& kind, const Target& target, const std::string& value,
                           const std::string& word, RowsTakenOut& takenOut) {
  const EditPart* part = kind.part(target.part);
  if (part == nullptr) {
    std::vector<std::string> names;
    names.reserve(kind.parts.size());
    for (const EditPart& one : kind.parts) names.push_back(one.name);
    if (names.empty()) return refuse("part-unknown", word, "'" + target.part + "'", "no parts: the kind has none");
    return unknown("part-unknown", target.part, names);
  }
  auto& rows = thing.parts[part->name];
  const bool adds = !target.field.empty() && target.row == rows.size() + 1;
  if (target.row > rows.size() && !adds)
    return refuse("row-unknown", fmt::format("{}[{}]", part->name, target.row), "no such row",
                  target.field.empty() ? fmt::format("1 to {}", rows.size())
                                       : fmt::format("1 to {}, or {} for a new one", rows.size(), rows.size() + 1));
  if (target.field.empty()) {
    if (!value.empty())
      return refuse("assignment-unreadable", word, "a value for a whole row",
                    "a field behind the row's number; or nothing after =, which takes the row out");
    takenOut[part->name].insert(target.row - 1);
    return {};
  }
  if (const auto known = fieldIn(part->fields, target.field, fmt::format("{}[{}].", part->name, target.row)); !known)
    return known;
  if (adds) rows.emplace_back();
  rows[target.row - 1][target.field] = value;
  return {};
}

/// All the rows of a document's parts into the thing.
Expected<void> takeParts(const Json& parts, const EditKind& kind, Thing& thing) {
  if (!parts.is_object()) return unreadable("parts that are no object");
  for (const auto& [name, rows] : parts.items()) {
    const EditPart* part = kind.part(name);
    if (part == nullptr || !rows.is_array() || rows.size() > kMostRows)
      return unreadable("parts it cannot have: " + name);
    for (const Json& row : rows) {
      auto texts = textsOf(row, part->fields, fmt::format("{}[{}].", name, thing.parts[name].size() + 1));
      if (!texts) return tl::make_unexpected(texts.error());
      thing.parts[name].push_back(std::move(*texts));
    }
  }
  return {};
}

}  // namespace

Expected<void> assign(Thing& thing, const std::vector<std::string>& words) {
  const EditKind& kind = *workflow::editKind(thing.kind);
  RowsTakenOut takenOut;
  for (const std::string& word : words) {
    const auto equals = word.find('=');
    const auto target = equals == std::string::npos ? std::nullopt : targetOf(word.substr(0, equals));
    if (!target)
      return refuse("assignment-unreadable", word, "'" + word + "'", "FIELD=VALUE, or PART[NUMBER].FIELD=VALUE");
    const std::string value = word.substr(equals + 1);
    if (!target->part.empty()) {
      if (const auto done = assignToRow(thing, kind, *target, value, word, takenOut); !done) return done;
      continue;
    }
    if (const auto known = fieldIn(kind.fields, target->field); !known) return known;
    thing.fields[target->field] = value;
  }
  for (const auto& [name, numbers] : takenOut)
    for (const auto row : std::views::reverse(numbers)) {
      auto& rows = thing.parts[name];
      rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(row));
    }
  return {};
}

Expected<Thing> thingFrom(const std::string& text) {
  if (text.size() > kMostDocument) return unreadable("more than 4 MiB");
  if (workflow::documents::depthOf(text) > kMostDepth) return unreadable("too many brackets");
  const Json all = Json::parse(text, nullptr, false);
  if (!all.is_object()) return unreadable("no JSON of one object");
  const auto textAt = [&](const char* name) {
    return all.contains(name) && all[name].is_string() ? all[name].get<std::string>() : std::string();
  };
  if (textAt("schema") != "ohmkin.thing" || !all.contains("version") || all["version"] != 1)
    return unreadable("another schema or version");
  const EditKind* kind = workflow::editKind(textAt("kind"));
  if (kind == nullptr) return unreadable("no kind there is");
  Thing thing = workflow::newThing(kind->name);
  if (!all.contains("fields")) return unreadable("no fields");
  auto fields = textsOf(all["fields"], kind->fields, "");
  if (!fields) return tl::make_unexpected(fields.error());
  for (auto& [name, value] : *fields) thing.fields[name] = std::move(value);
  if (all.contains("parts"))
    if (const auto taken = takeParts(all["parts"], *kind, thing); !taken) return tl::make_unexpected(taken.error());
  thing.pack = textAt("pack");
  thing.asRead = textAt("as_read");
  if (!thing.asRead.empty()) {
    const auto state = catalog::stateFromJson(thing.asRead);
    if (!state || state->table != kind->name) return unreadable("an as_read that is not of this thing");
  }
  return thing;
}

Json json(const Thing& thing) {
  const EditKind& kind = *workflow::editKind(thing.kind);
  Json document = cli::document("ohmkin.thing", 1);
  document["kind"] = thing.kind;
  document["key"] = workflow::keyOf(thing);
  document["pack"] = thing.pack;
  document["fields"] = Json::object();
  for (const EditField& field : kind.fields) document["fields"][field.name] = valueIn(thing.fields, field.name);
  document["parts"] = Json::object();
  for (const auto& [name, rows] : thing.parts) {
    document["parts"][name] = Json::array();
    for (const FieldTexts& row : rows) document["parts"][name].push_back(json(row));
  }
  document["as_read"] = thing.asRead;
  Json about{{"fields", Json::array()}, {"parts", Json::object()}};
  for (const EditField& field : kind.fields) about["fields"].push_back(json(field));
  for (const EditPart& part : kind.parts) {
    about["parts"][part.name] = Json::array();
    for (const EditField& field : part.fields) about["parts"][part.name].push_back(json(field));
  }
  document["about"] = std::move(about);
  return document;
}

void print(const Thing& thing, std::ostream& out) {
  const EditKind& kind = *workflow::editKind(thing.kind);
  if (thing.isNew()) out << fmt::format("a new {}\n", kind.label);
  else
    out << fmt::format("{}, {}\n", workflow::nameOf(thing),
                       thing.pack == "shop" ? std::string("the shop's own") : "of pack " + thing.pack);
  for (const EditField& field : kind.fields) printField(field, field.name, valueIn(thing.fields, field.name), out);
  for (const EditPart& part : kind.parts) {
    const auto rows = thing.parts.find(part.name);
    const std::size_t count = rows == thing.parts.end() ? 0 : rows->second.size();
    out << fmt::format("{}: {}\n", part.label, count);
    for (std::size_t r = 0; r < count; ++r) {
      std::vector<std::string> cells;
      for (const EditField& field : part.fields)
        if (const std::string value = valueIn(rows->second[r], field.name); !value.empty())
          cells.push_back(field.name + "=" + value);
      out << wrapped(fmt::format("{}[{}]  {}", part.name, r + 1, fmt::join(cells, ", ")), 6, 2);
    }
    const std::string next = fmt::format("{}[{}].", part.name, count + 1);
    for (const EditField& field : part.fields) printField(field, next + field.name, "", out);
  }
}

Json json(const workflow::FieldChange& change) {
  return {{"where", change.where}, {"label", change.label}, {"before", change.before}, {"after", change.after}};
}

Json json(const workflow::UsedBy& usedBy) {
  return {{"kind", usedBy.kind}, {"field", usedBy.field}, {"count", usedBy.count}, {"first", usedBy.first}};
}

Json json(const workflow::EditRefusal& refusal) {
  Json all{{"reasons", Json::array()}, {"used_by", Json::array()}, {"conflict", Json::array()}};
  for (const Refusal& reason : refusal.reasons) all["reasons"].push_back(cli::json(reason));
  for (const auto& one : refusal.usedBy) all["used_by"].push_back(json(one));
  for (const auto& one : refusal.conflict) all["conflict"].push_back(json(one));
  return all;
}

void complain(const workflow::EditRefusal& refusal, std::ostream& err) {
  for (const Refusal& reason : refusal.reasons) err << "ohmkin: " << reason.sentence() << '\n';
  for (const auto& one : refusal.usedBy) err << fmt::format("  used by {}\n", one.words());
  for (const auto& one : refusal.conflict)
    err << fmt::format("  {}: it was {}, now it is {}\n", one.label, one.before.empty() ? "empty" : one.before,
                       one.after.empty() ? "empty" : one.after);
}

}  // namespace ohmkin::cli
