#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/edit_command.h>
#include <cli/edit_words.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <limits>
#include <ostream>

namespace ohmkin::cli {
namespace {

using workflow::EditKind;
using workflow::NewSource;
using workflow::Thing;

Expected<const EditKind*> kindNamed(const std::string& name) {
  if (const EditKind* kind = workflow::editKind(name)) return kind;
  std::vector<std::string> names;
  for (const EditKind& kind : workflow::editKinds()) names.push_back(kind.name);
  return refuse("kind-unknown", "KIND", "'" + name + "'",
                fmt::format("one of {}{}", fmt::join(names, ", "), perhaps(nearMisses(name, names))));
}

void listKinds(const Arguments& given, std::ostream& out) {
  Json document = cli::document("ohmkin.kinds", 1);
  document["kinds"] = Json::array();
  std::string lines;
  for (const EditKind& kind : workflow::editKinds()) {
    Json parts = Json::array();
    for (const auto& part : kind.parts) parts.push_back(part.name);
    document["kinds"].push_back({{"name", kind.name},
                                 {"label", kind.label},
                                 {"help", kind.help},
                                 {"key", kind.key()},
                                 {"parts", std::move(parts)},
                                 {"needs_source", kind.needsSource}});
    lines += fmt::format("{:<18}{:<34}{}\n", kind.name, fmt::format("{}", fmt::join(kind.key(), " ")), kind.help);
  }
  out << (given.has("--json") ? text(document) : lines);
}

Expected<std::optional<NewSource>> sourceGiven(const Arguments& given) {
  if (!given.has("--source-kind") && !given.has("--citation")) return std::nullopt;
  NewSource source;
  source.id = given.one("--source");
  source.citation = given.one("--citation");
  const std::string named = given.one("--source-kind", "common practice");
  std::vector<std::string> kinds;
  for (const auto kind : {catalog::SourceKind::published, catalog::SourceKind::makerSheet, catalog::SourceKind::bench,
                          catalog::SourceKind::commonPractice, catalog::SourceKind::demo}) {
    kinds.emplace_back(catalog::text(kind));
    if (folded(kinds.back()) != folded(named)) continue;
    source.kind = kind;
    return source;
  }
  return refuse("source-kind-unknown", "--source-kind", "'" + named + "'",
                fmt::format("one of {}", fmt::join(kinds, ", ")));
}

/// What the words and --from name, before anything of it is changed; the words left change it.
struct Asked {
  Thing thing;
  std::vector<std::string> assignments;
  bool changes = false;
};

Expected<Asked> asked(const Arguments& given, const catalog::Catalogue& catalogue, const DisplayUnits& units) {
  Asked asked;
  std::vector<std::string> words = given.words;
  if (given.has("--from")) {
    const auto text = contentsOf(given.one("--from"));
    if (!text) return refuse("file-unreadable", "--from", "'" + given.one("--from") + "'", "a file that can be read");
    auto thing = thingFrom(*text);
    if (!thing) return tl::make_unexpected(thing.error());
    if (given.has("--new")) thing->asRead.clear();
    else if (thing->asRead.empty())
      return refuse("document-unreadable", "--from", "a thing that was never read", "--new to add it");
    return Asked{std::move(*thing), std::move(words), true};
  }
  const auto kind = kindNamed(words.front());
  if (!kind) return tl::make_unexpected(kind.error());
  const auto names = (*kind)->key();
  words.erase(words.begin());
  const bool empty = given.has("--new") && words.empty();
  if (words.size() < names.size() && !empty)
    return refuse("word-missing", (*kind)->label, fmt::format("'{}'", fmt::join(words, " ")),
                  fmt::format("its {}, a word each, in this order", fmt::join(names, ", ")));
  const auto keyEnd = words.begin() + static_cast<std::ptrdiff_t>(empty ? 0 : names.size());
  const std::vector<std::string> key(words.begin(), keyEnd);
  asked.assignments.assign(keyEnd, words.end());
  if (given.has("--new")) {
    asked.thing = workflow::newThing((*kind)->name);
    for (std::size_t k = 0; k < key.size(); ++k) asked.thing.fields[names[k]] = key[k];
  } else {
    auto read = workflow::readThing(catalogue, (*kind)->name, key, units);
    if (!read) return tl::make_unexpected(read.error());
    asked.thing = std::move(*read);
  }
  asked.changes =
      !asked.assignments.empty() || given.has("--source") || given.has("--citation") || given.has("--source-kind");
  return asked;
}

Exit refused(const workflow::EditRefusal& why, const Arguments& given, Streams streams) {
  complain(why, streams.err);
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.edit-refused", 1);
    document.update(json(why));
    streams.out << text(document);
  }
  return Exit::badInput;
}

Exit said(const std::string& sentence, std::int64_t change, const Thing& thing, const Arguments& given,
          Streams streams) {
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.edit", 1);
    document["dry_run"] = given.has("--dry-run");
    document["change"] = change;
    document["sentence"] = sentence;
    document["thing"] = thing.kind.empty() ? Json() : json(thing);
    streams.out << text(document);
  } else {
    streams.out << sentence << '\n';
    if (change != 0) streams.out << fmt::format("Change {}; ohmkin log --revert {} takes it back.\n", change, change);
  }
  return Exit::answer;
}

Exit checked(catalog::Catalogue& catalogue, const Thing& thing, const std::optional<NewSource>& source,
             const DisplayUnits& units, const Arguments& given, Streams streams) {
  workflow::EditRefusal why;
  if (given.has("--delete")) {
    why.usedBy = workflow::usedBy(catalogue, thing.kind, workflow::keyOf(thing));
    if (!why.usedBy.empty())
      why.reasons.push_back({"in-use", "", workflow::nameOf(thing) + " that is in use", "a thing nothing refers to"});
  } else {
    why.reasons = workflow::checkThing(catalogue, thing, source, units);
  }
  if (!why.reasons.empty()) return refused(why, given, streams);
  return said(fmt::format("{} could be {}; nothing was changed.", workflow::nameOf(thing),
                          given.has("--delete") ? "deleted" : "saved"),
              0, thing, given, streams);
}

Expected<Exit> change(Asked asked, const Arguments& given, catalog::Catalogue& catalogue, const DisplayUnits& units,
                      Streams streams) {
  const auto source = sourceGiven(given);
  if (!source) return tl::make_unexpected(source.error());
  if (const auto done = assign(asked.thing, asked.assignments); !done) return tl::make_unexpected(done.error());
  if (given.has("--source") && !*source) {
    if (const auto done = assign(asked.thing, {"source=" + given.one("--source")}); !done)
      return tl::make_unexpected(done.error());
  }
  if (given.has("--dry-run")) return checked(catalogue, asked.thing, *source, units, given, streams);
  workflow::EditSession session(catalogue, whoIsAsking(given), units);
  const auto done = given.has("--delete") ? session.remove(asked.thing) : session.save(asked.thing, *source);
  if (!done) return refused(done.error(), given, streams);
  return said(done->sentence, done->change, done->thing, given, streams);
}

}  // namespace

const CommandSpec& EditCommand::spec() const {
  static const CommandSpec spec{
      "edit",
      "Shows, changes, adds, renames or deletes a thing of the catalogue; every change is kept in the log.",
      "KIND KEY… [FIELD=VALUE]…",
      "without FIELD=VALUE, shows the thing and what its fields take; FIELD= empties one; PART[2].FIELD=VALUE is of "
      "the second row of its parts, the row after the last is a new one, PART[2]= takes one out; a new value in a key "
      "field renames. Without any word, lists the kinds and the words of their keys",
      0,
      std::numeric_limits<std::size_t>::max(),
      withCommonOptions({{"--new", "", "adds it"},
                         {"--delete", "", "takes it out, unless something refers to it"},
                         {"--from", "FILE", "the thing as --json showed it, changed"},
                         {"--source", "ID", "the source of the fact; with --citation, the id of a new one"},
                         {"--source-kind",
                          "KIND",
                          "of a new source",
                          false,
                          {"published", "maker sheet", "bench", "common practice", "demo"}},
                         {"--citation", "TEXT", "what a new source cites"},
                         {"--dry-run", "", "only checks; nothing is changed"},
                         {"--who", "NAME", "who changes it; otherwise the name you are logged in by"}}),
      "ohmkin edit --catalog demo.ohmkin sender BR-2201 torque_low=\"12 lbf·ft\" --dry-run"};
  return spec;
}

Expected<Exit> EditCommand::run(const Arguments& given, Streams streams) const {
  if (given.words.empty() && !given.has("--from")) {
    listKinds(given, streams.out);
    return Exit::answer;
  }
  if (given.has("--new") && given.has("--delete"))
    return refuse("options-at-odds", "--delete", "--new with it", "one of the two");
  const auto units = displayUnits(given);
  if (!units) return tl::make_unexpected(units.error());
  if (!given.has("--from"))
    if (const auto kind = kindNamed(given.words.front()); !kind) return tl::make_unexpected(kind.error());
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto wanted = [&] {
    const auto catalogue = catalog::Catalogue::openToRead(*path);
    return asked(given, catalogue, *units);
  }();
  if (!wanted) return tl::make_unexpected(wanted.error());
  if (given.has("--delete") && !wanted->assignments.empty())
    return refuse("options-at-odds", "--delete", "'" + wanted->assignments.front() + "'", "no change beside it");
  if (wanted->changes || given.has("--delete")) {
    auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
    return change(std::move(*wanted), given, catalogue, *units, streams);
  }
  if (given.has("--json")) streams.out << text(json(wanted->thing));
  else print(wanted->thing, streams.out);
  return Exit::answer;
}

}  // namespace ohmkin::cli
