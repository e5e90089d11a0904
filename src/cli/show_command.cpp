#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/show_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/show.h>
#include <limits>
#include <ostream>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kLabel = 18;

void printText(const workflow::ShownThing& thing, std::ostream& out) {
  out << fmt::format("{} {}\n", catalog::text(thing.kind), thing.id);
  if (thing.leadsTo) out << wrapped(thing.leadsTo->sentence, 2, 2);
  for (const auto& fact : thing.facts) out << wrapped(fmt::format("{:<16}{}", fact.label, fact.text), kLabel, 2);
  for (const auto& list : thing.lists) {
    out << fmt::format("  {}\n", list.heading);
    for (const std::string& row : list.rows) out << wrapped(row, kLabel, 4);
    if (list.total > list.rows.size()) out << fmt::format("    and {} more\n", list.total - list.rows.size());
  }
  if (!thing.source.empty()) out << wrapped(fmt::format("{:<16}{}", "source", thing.source), kLabel, 2);
}

Json json(const workflow::ShownThing& thing) {
  Json document = cli::document("ohmkin.show", 1);
  document["kind"] = catalog::text(thing.kind);
  document["id"] = thing.id;
  document["facts"] = Json::array();
  for (const auto& fact : thing.facts) document["facts"].push_back({{"label", fact.label}, {"text", fact.text}});
  document["lists"] = Json::array();
  for (const auto& list : thing.lists)
    document["lists"].push_back({{"heading", list.heading}, {"rows", list.rows}, {"total", list.total}});
  document["leads_to"] = nullptr;
  if (thing.leadsTo)
    document["leads_to"] = {{"parts", thing.leadsTo->parts},
                            {"through", thing.leadsTo->through},
                            {"circle", thing.leadsTo->circle},
                            {"sentence", thing.leadsTo->sentence}};
  document["source"] = thing.source;
  return document;
}

}  // namespace

const CommandSpec& ShowCommand::spec() const {
  static const CommandSpec spec{
      "show",
      "Everything the catalogue says of one thing: a sender, a gauge, a vehicle line, a casting, …",
      "ID…",
      "its number or whole name; blanks, signs and letter case aside",
      1,
      std::numeric_limits<std::size_t>::max(),
      withCommonOptions({{"--kind", "KIND", "which is meant, where things share a name", true}}),
      "ohmkin show --catalog demo.ohmkin BR-2215"};
  return spec;
}

Expected<Exit> ShowCommand::run(const Arguments& arguments, Streams streams) const {
  std::vector<workflow::FoundKind> kinds;
  for (const std::string& word : arguments.all("--kind")) {
    const auto kind = workflow::foundKindNamed(word);
    if (!kind) return refuse("kind-unknown", "--kind", "'" + word + "'", "a kind of ohmkin search");
    kinds.push_back(*kind);
  }
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto thing = workflow::showThing(*catalogue, fmt::format("{}", fmt::join(arguments.words, " ")), kinds, *units);
  if (!thing) return tl::make_unexpected(thing.error());
  if (arguments.has("--json")) streams.out << text(json(*thing));
  else printText(*thing, streams.out);
  return Exit::answer;
}

}  // namespace ohmkin::cli
