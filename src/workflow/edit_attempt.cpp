#include <catalog/pack_writer.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/edit_attempt.h>
#include <workflow/edit_states.h>
#include <workflow/save_layout.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::Cell;
using catalog::RowEditor;
using catalog::ThingState;
using Tried = tl::expected<Attempt, EditRefusal>;

tl::unexpected<EditRefusal> refused(Refusal refusal) { return tl::make_unexpected(refusedFor(std::move(refusal))); }
tl::unexpected<EditRefusal> refused(std::vector<Refusal> reasons) {
  return tl::make_unexpected(EditRefusal{std::move(reasons), {}, {}});
}

tl::unexpected<EditRefusal> movedOn(const EditKind& kind, const std::vector<Cell>& key,
                                    const std::optional<ThingState>& thought, const std::optional<ThingState>& now,
                                    const DisplayUnits& units, std::string code) {
  const std::string name = nameOf(kind, key);
  EditRefusal refusal = refusedFor({std::move(code), "",
                                    !now       ? name + ", which is no longer there"
                                    : !thought ? name + ", which is there again"
                                               : name + ", which was changed meanwhile",
                                    "it as it was; look at what it is now and change that"});
  refusal.conflict = differences(thought, now, units);
  return tl::make_unexpected(std::move(refusal));
}

tl::unexpected<EditRefusal> inUse(std::string code, const std::string& name,
                                  const std::vector<catalog::Referring>& referring, const char* expected) {
  EditRefusal refusal;
  refusal.usedBy = inWords(referring);
  std::vector<std::string> words;
  words.reserve(refusal.usedBy.size());
  for (const UsedBy& used : refusal.usedBy) words.push_back(used.words());
  refusal.reasons.push_back(
      {std::move(code), "", fmt::format("{}, used by {}", name, fmt::join(words, ", ")), expected});
  return tl::make_unexpected(std::move(refusal));
}

/// The source stated with the fact, as a row; its id is free, or it is the very same source.
Expected<catalog::RowCells> sourceRow(const catalog::Catalogue& catalogue, const EditKind& kind, const Thing& thing,
                                      const NewSource& source) {
  if (auto fine = checkStatedSource({source.kind, source.citation}); !fine) return tl::make_unexpected(fine.error());
  if (source.confidence && (*source.confidence < 0 || *source.confidence > 1))
    return refuse("source-confidence", "source", fmt::format("{}", *source.confidence), "a part from 0 to 1");
  std::string id = source.id;
  const auto taken = [&](const std::string& text) {
    const std::vector<Cell> key{text};
    return catalog::thingState(catalogue, "source", key).has_value();
  };
  if (!id.empty() && taken(id)) return refuse("key-taken", "source", fmt::format("'{}'", id), "an id that is free");
  if (id.empty()) {
    const std::string base = fmt::format("shop-{}-{}", kind.name, fmt::join(workflow::keyOf(thing), "-"));
    id = base;
    for (int next = 2; taken(id); ++next) id = fmt::format("{}-{}", base, next);
  }
  return catalog::RowCells{{"id", id},
                           {"kind", std::string(catalog::text(source.kind))},
                           {"citation", source.citation},
                           {"confidence", source.confidence.value_or(usualConfidence(source.kind))}};
}

/// A new key of what is referred to: the shop's references follow, a pack's cannot.
std::optional<EditRefusal> renameRefused(const catalog::Catalogue& catalogue, const EditKind& kind,
                                         const ThingState& before, const std::vector<Cell>& was) {
  if (was.size() != 1) return {};
  const std::string name = nameOf(kind, was);
  if (before.pack != "shop")
    return refusedFor(
        {"rename-refused", kind.key().front(),
         fmt::format("a new {} for {}, which the pack '{}' brought", kind.key().front(), name, before.pack),
         "the old one; add a new " + kind.label + " where another is meant"});
  auto referring = catalog::referringTo(catalogue, kind.name, std::get<std::string>(was.front()));
  std::erase_if(referring, [](const auto& r) { return r.ofPacks == 0; });
  if (referring.empty()) return {};
  auto refusal = inUse("rename-refused", name, referring, "the old key: rows of packs refer to it").value();
  refusal.reasons.front().where = kind.key().front();
  return refusal;
}

/// The thing as it stands in the catalogue, if that is still what the person read.
tl::expected<ThingState, EditRefusal> unmoved(const catalog::Catalogue& catalogue, const EditKind& kind,
                                              const ThingState& read, const DisplayUnits& units) {
  const auto key = keyOf(kind, read);
  auto current = catalog::thingState(catalogue, kind.name, key);
  if (!current || !catalog::sameValues(*current, read))
    return movedOn(kind, key, read, current, units, "edit-moved-on");
  return *std::move(current);
}

/// The stated source as a row; its id is put into the thing and into those of its rows that name none.
tl::expected<catalog::RowCells, EditRefusal> takeSource(const catalog::Catalogue& catalogue, const EditKind& kind,
                                                        const NewSource& source, Thing& thing) {
  if (!kind.needsSource)
    return refused(Refusal{"source-not-kept", "source", "a source", fmt::format("none: a {} has none", kind.label)});
  auto row = sourceRow(catalogue, kind, thing, source);
  if (!row) return refused(row.error());
  const std::string& id = std::get<std::string>(row->at("id"));
  const auto isSource = [](const EditField& field) { return field.name == "source"; };
  thing.fields["source"] = id;
  for (auto& [name, rows] : thing.parts) {
    const EditPart* part = kind.part(name);
    if (part == nullptr || std::none_of(part->fields.begin(), part->fields.end(), isSource)) continue;
    for (FieldTexts& fields : rows)
      if (fields["source"].empty()) fields["source"] = id;
  }
  return *std::move(row);
}

/// A key that is new has to be free, and what referred to the old one has to be able to follow.
std::optional<EditRefusal> keyRefused(const catalog::Catalogue& catalogue, const EditKind& kind,
                                      const std::optional<ThingState>& before, const ThingState& now) {
  const auto key = keyOf(kind, now);
  if (before) {
    const auto was = keyOf(kind, *before);
    if (was == key) return {};
    if (auto no = renameRefused(catalogue, kind, *before, was)) return no;
  }
  if (!catalog::thingState(catalogue, kind.name, key)) return {};
  return refusedFor(
      {"key-taken", kind.key().front(), nameOf(kind, key) + ", which is there already", "a key that is free"});
}

}  // namespace

EditRefusal refusedFor(Refusal refusal) { return {{std::move(refusal)}, {}, {}}; }

tl::expected<Attempt, EditRefusal> attemptSave(const catalog::Catalogue& catalogue, RowEditor& editor,
                                               const EditKind& kind, const Thing& asked,
                                               const std::optional<NewSource>& source, const DisplayUnits& units) {
  Attempt attempt;
  if (!asked.isNew()) {
    const auto read = catalog::stateFromJson(asked.asRead);
    if (!read)
      return refused(Refusal{"thing-unreadable", "", "a state that was not read here", "Thing::asRead as it was"});
    auto current = unmoved(catalogue, kind, *read, units);
    if (!current) return tl::make_unexpected(std::move(current.error()));
    attempt.before = *std::move(current);
  }

  Thing thing = asked;
  std::optional<catalog::RowCells> newSource;
  if (source) {
    auto row = takeSource(catalogue, kind, *source, thing);
    if (!row) return tl::make_unexpected(std::move(row.error()));
    newSource = *std::move(row);
  }

  auto built = stateOf(catalogue, kind, thing, attempt.before, units);
  auto dangling =
      danglingOf(catalogue, kind, built.state, newSource ? std::get<std::string>(newSource->at("id")) : std::string());
  built.refusals.insert(built.refusals.end(), dangling.begin(), dangling.end());
  if (!built.refusals.empty()) return refused(std::move(built.refusals));

  attempt.now = std::move(built.state);
  attempt.now->newSource = newSource;
  if (attempt.before && catalog::sameValues(*attempt.before, *attempt.now)) return attempt;
  attempt.changed = true;
  if (auto no = keyRefused(catalogue, kind, attempt.before, *attempt.now)) return tl::make_unexpected(std::move(*no));
  if (newSource)
    if (const auto added = editor.addSource(*newSource); !added) return refused(added.error());
  if (const auto put = editor.put(attempt.before, *attempt.now); !put) {
    Refusal refusal = put.error();
    refusal.where.clear();
    return refused(std::move(refusal));
  }
  if (auto faults = unsound(catalogue, *attempt.now); !faults.empty()) return refused(std::move(faults));
  return attempt;
}

tl::expected<Attempt, EditRefusal> attemptRemove(const catalog::Catalogue& catalogue, RowEditor& editor,
                                                 const EditKind& kind, const Thing& thing, const DisplayUnits& units) {
  Attempt attempt;
  const auto read = catalog::stateFromJson(thing.asRead);
  if (!read) return refused(Refusal{"thing-unreadable", "", "a thing that was never saved", "one of the catalogue"});
  auto current = unmoved(catalogue, kind, *read, units);
  if (!current) return tl::make_unexpected(std::move(current.error()));
  attempt.before = *std::move(current);
  const auto key = keyOf(kind, *attempt.before);
  if (key.size() == 1)
    if (const auto referring = catalog::referringTo(catalogue, kind.name, std::get<std::string>(key.front()));
        !referring.empty())
      return inUse("in-use", nameOf(kind, key), referring, "one that nothing refers to; nothing was deleted");
  editor.remove(*attempt.before);
  attempt.changed = true;
  return attempt;
}

tl::expected<Attempt, EditRefusal> attemptBack(const catalog::Catalogue& catalogue, RowEditor& editor,
                                               const catalog::ChangeLine& line, const DisplayUnits& units) {
  auto target = catalog::stateFromJson(line.before);
  const auto left = catalog::stateFromJson(line.after);
  const EditKind* kind = editKind(target ? target->table : left ? left->table : std::string());
  if (!line.kept() || kind == nullptr)
    return refused(Refusal{"change-not-kept", "", fmt::format("change {}: {}", line.id, line.what),
                           "a change of one thing, kept before and after"});
  Attempt attempt;
  attempt.before = catalog::thingState(catalogue, kind->name, keyOf(*kind, left ? *left : *target));
  const bool asLeft =
      left.has_value() == attempt.before.has_value() && (!left || catalog::sameValues(*left, *attempt.before));
  if (!asLeft)
    return movedOn(*kind, keyOf(*kind, left ? *left : *target), left, attempt.before, units, "change-moved-on");
  attempt.changed = true;
  if (attempt.before && left) attempt.before->newSource = left->newSource;

  if (!target) {
    const auto key = keyOf(*kind, *left);
    if (key.size() == 1)
      if (const auto referring = catalog::referringTo(catalogue, kind->name, std::get<std::string>(key.front()));
          !referring.empty())
        return inUse("in-use", nameOf(*kind, key), referring, "one that nothing stands on by now; nothing was changed");
    editor.remove(*left);
  } else {
    // What a pack owned is the pack's again, while that version of it is there.
    if (target->pack != "shop") {
      const auto pack = catalog::pack(catalogue, target->pack);
      if (!pack || pack->version != target->packVersion) {
        target->pack = "shop";
        target->packVersion.clear();
      }
    }
    if (attempt.before && keyOf(*kind, *attempt.before) != keyOf(*kind, *target)) {
      const auto was = keyOf(*kind, *attempt.before);
      if (auto no = renameRefused(catalogue, *kind, *attempt.before, was)) return tl::make_unexpected(std::move(*no));
    }
    if (target->newSource)
      if (const auto added = editor.addSource(*target->newSource); !added) return refused(added.error());
    if (auto dangling = danglingOf(catalogue, *kind, *target); !dangling.empty()) return refused(std::move(dangling));
    if (const auto put = editor.put(attempt.before, *target); !put) return refused(put.error());
    if (auto faults = circular(catalogue, *target); !faults.empty()) return refused(std::move(faults));
  }
  if (left && left->newSource) editor.removeSourceIfUnused(*left->newSource);
  attempt.now = std::move(target);
  return attempt;
}

}  // namespace ohmkin::workflow
