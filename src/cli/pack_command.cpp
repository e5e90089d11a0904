#include <catalog/pack_writer.h>
#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/pack_command.h>
#include <cli/table_text.h>
#include <exchange/zip_package.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/export_pack.h>
#include <workflow/load_pack.h>
#include <algorithm>
#include <ostream>

namespace ohmkin::cli {
namespace {

using Conflicts = std::vector<workflow::RowConflict>;

std::string nameOf(const workflow::RowName& row) { return fmt::format("{}:{}", row.table, fmt::join(row.key, ",")); }

/// The shop's and the package's side by side, only what differs.
std::string conflictText(const workflow::RowConflict& conflict) {
  std::string text = fmt::format("{}\n  {:<16}{:<30}{}\n", nameOf(conflict.row), "", "the shop's", "the package's");
  for (const auto& cell : conflict.cells)
    if (cell.differs())
      text += fmt::format("  {:<16}{:<30}{}\n", cell.column, cell.shops.empty() ? "–" : cell.shops,
                          cell.packs.empty() ? "–" : cell.packs);
  for (const auto& parts : conflict.parts)
    if (parts.differ)
      text += fmt::format("  {:<16}{:<30}{}\n", parts.table, fmt::format("{} rows", parts.shops),
                          fmt::format("{} rows", parts.packs));
  return text;
}

Json json(const workflow::RowConflict& conflict) {
  Json cells = Json::array();
  for (const auto& cell : conflict.cells)
    if (cell.differs()) cells.push_back({{"column", cell.column}, {"shop", cell.shops}, {"pack", cell.packs}});
  Json parts = Json::array();
  for (const auto& one : conflict.parts)
    if (one.differ) parts.push_back({{"table", one.table}, {"shop_rows", one.shops}, {"pack_rows", one.packs}});
  return {{"row", nameOf(conflict.row)},
          {"table", conflict.row.table},
          {"key", conflict.row.key},
          {"cells", std::move(cells)},
          {"parts", std::move(parts)}};
}

/// --keep shop, --keep pack, --keep TABLE:KEY=shop or =pack.
struct Choice {
  workflow::TakePacks take;
  Conflicts open;  ///< nobody said which
};

Expected<Choice> chosen(const Conflicts& conflicts, const std::vector<std::string>& said) {
  std::optional<std::string> all;
  std::vector<std::pair<std::string, std::string>> rows;
  for (const std::string& text : said) {
    const auto equals = text.rfind('=');
    const std::string whose = equals == std::string::npos ? text : text.substr(equals + 1);
    if (whose != "shop" && whose != "pack")
      return refuse("keep-unreadable", "--keep", "'" + text + "'",
                    "shop or pack for all rows, or TABLE:KEY=shop, for example sender:SN-1=pack");
    if (equals == std::string::npos) all = whose;
    else rows.emplace_back(text.substr(0, equals), whose);
  }
  for (const auto& [row, whose] : rows) {
    const bool known = std::any_of(conflicts.begin(), conflicts.end(),
                                   [&, name = row](const auto& c) { return nameOf(c.row) == name; });
    if (!known)
      return refuse("keep-no-conflict", "--keep", "'" + row + "'",
                    "a row that the shop and the package both have; without --keep they are listed");
  }
  Choice choice;
  for (const workflow::RowConflict& conflict : conflicts) {
    std::optional<std::string> whose = all;
    for (const auto& [row, owner] : rows)
      if (row == nameOf(conflict.row)) whose = owner;
    if (!whose) choice.open.push_back(conflict);
    else if (*whose == "pack") choice.take.insert(conflict.row);
  }
  return choice;
}

Exit complained(const exchange::Complaints& complaints, Streams streams) {
  streams.err << complaints.text();
  return Exit::badInput;
}

Expected<Exit> load(const Arguments& given, Streams streams) {
  if (given.words.size() != 2)
    return refuse("pack-words", "load", fmt::format("{} more words", given.words.size() - 1),
                  "one: the package's folder or zip");
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  const auto package = exchange::PackageAt::open(given.words[1]);
  if (!package) return tl::make_unexpected(package.error());
  const auto conflicts = workflow::conflictsWith(catalogue, package->source());
  if (!conflicts) return complained(conflicts.error(), streams);
  const auto choice = chosen(*conflicts, given.all("--keep"));
  if (!choice) return tl::make_unexpected(choice.error());

  Json document = cli::document("ohmkin.pack-load", 1);
  document["conflicts"] = Json::array();
  for (const auto& conflict : *conflicts) document["conflicts"].push_back(json(conflict));
  if (!choice->open.empty() || given.has("--dry-run")) {
    document["loaded"] = false;
    if (given.has("--json")) {
      streams.out << text(document);
    } else {
      for (const auto& conflict : choice->open) streams.out << conflictText(conflict);
      streams.out << (choice->open.empty()
                          ? "No row is in question. Nothing was changed.\n"
                          : "Nothing was changed: say whose is to stay, --keep shop, --keep pack, or row by row "
                            "--keep TABLE:KEY=shop.\n");
    }
    return choice->open.empty() ? Exit::answer : Exit::noAnswer;
  }
  const auto loaded = workflow::loadPack(catalogue, package->source(), whoIsAsking(given), choice->take);
  if (!loaded) return complained(loaded.error(), streams);
  document["loaded"] = true;
  document["id"] = loaded->id;
  document["version"] = loaded->version;
  document["replaced"] = loaded->replaced.empty() ? Json() : Json(loaded->replaced);
  document["rows"] = loaded->rows();
  document["already_there"] = loaded->alreadyThere;
  streams.out << (given.has("--json") ? text(document) : loaded->sentence() + "\n");
  return Exit::answer;
}

Expected<Exit> exportTo(const Arguments& given, Streams streams) {
  if (given.words.size() != 3)
    return refuse("pack-words", "export", fmt::format("{} more words", given.words.size() - 1),
                  "two: a pack of the catalogue, or shop, and the new folder or .zip");
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const workflow::PackToExport asked{given.words[1], given.one("--id"), given.one("--title"), given.one("--version-is"),
                                     given.one("--licence")};
  const auto pack = workflow::exportPackTo(*catalogue, asked, given.words[2]);
  if (!pack) return complained(pack.error(), streams);
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.pack-export", 1);
    document["id"] = pack->id;
    document["version"] = pack->version;
    document["rows"] = pack->rows;
    document["tables"] = pack->tables;
    document["needs"] = pack->needs;
    streams.out << text(document);
  } else {
    streams.out << wrapped(pack->sentence(), 0, 0);
    if (!pack->needs.empty())
      streams.out << wrapped(fmt::format("It loads only where these are: {}.", fmt::join(pack->needs, ", ")), 0, 0);
  }
  return Exit::answer;
}

Expected<Exit> list(const Arguments& given, std::ostream& out) {
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  Json document = cli::document("ohmkin.packs", 1);
  document["packs"] = Json::array();
  std::string lines;
  for (const auto& pack : catalog::packs(*catalogue)) {
    document["packs"].push_back(
        {{"id", pack.id}, {"title", pack.title}, {"version", pack.version}, {"licence", pack.licence}});
    lines += fmt::format("{} {}: {}{}\n", pack.id, pack.version, pack.title,
                         pack.licence.empty() ? "" : fmt::format(" ({})", pack.licence));
  }
  out << (given.has("--json") ? text(document) : lines);
  return document["packs"].empty() ? Exit::noAnswer : Exit::answer;
}

}  // namespace

const CommandSpec& PackCommand::spec() const {
  static const CommandSpec spec{
      "pack",
      "Packages of catalogue rows, as Tabular Data Packages: lists them, writes one, loads one beside the shop's own "
      "rows.",
      "list | export PACK TARGET | load PACKAGE",
      "PACK is an id that list shows, or shop; TARGET a new folder or .zip; PACKAGE a folder or .zip",
      1,
      3,
      withCommonOptions(
          {{"--keep", "shop|pack",
            "whose row stays where both have one; TABLE:KEY=pack for one row. Without it such rows are shown side by "
            "side and nothing is loaded",
            true},
           {"--dry-run", "", "load: shows the rows in question and changes nothing"},
           {"--id", "ID", "export: what the package is called; needed for shop"},
           {"--title", "TEXT", "export: its title"},
           {"--version-is", "VERSION", "export: its version; needed for shop"},
           {"--licence", "NAME", "export: its licence"},
           {"--who", "NAME", "who loads it, for the change log; otherwise the name you are logged in by"}}),
      "ohmkin pack export shop my-shop.zip --id my-shop --version-is 1.0.0",
      {"list", "export", "load"}};
  return spec;
}

Expected<Exit> PackCommand::run(const Arguments& arguments, Streams streams) const {
  const std::string& what = arguments.words.front();
  if (what == "load") return load(arguments, streams);
  if (what == "export") return exportTo(arguments, streams);
  if (what == "list" && arguments.words.size() == 1) return list(arguments, streams.out);
  return refuse("pack-words", "", "'" + what + "'", "list, export PACK TARGET, or load PACKAGE");
}

}  // namespace ohmkin::cli
