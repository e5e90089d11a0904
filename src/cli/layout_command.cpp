#include <catalog/layouts.h>
#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/layout_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/near_miss.h>
#include <workflow/date_engine.h>
#include <workflow/layouts.h>
#include <workflow/save_layout.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kReadingsShown = 12;

std::vector<std::string> fieldTexts(const dating::Layout& layout) {
  std::vector<std::string> all;
  all.reserve(layout.fields.size());
  for (const dating::Field& field : layout.fields) all.push_back(workflow::fieldText(field));
  return all;
}

Json json(const dating::Layout& layout) {
  return {{"id", layout.id},
          {"name", layout.name},
          {"found_on", dating::text(layout.foundOn)},
          {"fields", fieldTexts(layout)}};
}

Expected<dating::FoundOn> foundOn(const std::string& text) {
  std::vector<std::string> places;
  for (const auto place : {dating::FoundOn::head, dating::FoundOn::block, dating::FoundOn::intake,
                           dating::FoundOn::housing, dating::FoundOn::assemblyStamp}) {
    if (folded(dating::text(place)) == folded(text)) return place;
    places.emplace_back(dating::text(place));
  }
  return refuse("place-unknown", "--found-on", "'" + text + "'", fmt::format("one of {}", fmt::join(places, ", ")));
}

Expected<dating::Layout> layoutGiven(const Arguments& given) {
  dating::Layout layout;
  layout.name = given.one("--name");
  layout.id = given.one("--id", workflow::layoutIdFrom(layout.name));
  for (const std::string& text : given.all("--field")) {
    const auto field = workflow::readField(text, "--field");
    if (!field) return tl::make_unexpected(field.error());
    layout.fields.push_back(*field);
  }
  const auto place = foundOn(given.one("--found-on", "head"));
  if (!place) return tl::make_unexpected(place.error());
  layout.foundOn = *place;
  return layout;
}

/// The layout of the fields given, or the one of the catalogue that has the id.
Expected<dating::Layout> layoutToTry(const Arguments& given) {
  if (given.has("--field")) return layoutGiven(given);
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  std::vector<std::string> ids;
  for (const auto& record : catalog::dateLayouts(*catalogue)) {
    if (folded(record.id.text) == folded(given.one("--id"))) return workflow::layoutOf(record);
    ids.push_back(record.id.text);
  }
  return refuse("layout-unknown", "--id", "'" + given.one("--id") + "'",
                "a layout of this catalogue, or fields" + perhaps(nearMisses(given.one("--id"), ids)));
}

Expected<Exit> tryCode(const Arguments& given, std::ostream& out) {
  const auto layout = layoutToTry(given);
  if (!layout) return tl::make_unexpected(layout.error());
  const auto decoded = workflow::tryLayout(*layout, given.one("--try"));
  if (!decoded) return tl::make_unexpected(decoded.error());
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.layout-trial", 1);
    document["layout"] = json(*layout);
    document["code"] = decoded->text;
    Json readings = Json::array();
    for (const auto& reading : decoded->readings)
      readings.push_back({{"from", isoDate(reading.from)},
                          {"until", isoDate(reading.until)},
                          {"weight", reading.weight},
                          {"taken", reading.taken},
                          {"assumed", dating::assumptions(*decoded, reading)}});
    document["readings"] = std::move(readings);
    document["findings"] = cli::json(decoded->findings);
    out << text(document);
  } else {
    std::size_t shown = 0;
    for (const auto& reading : decoded->readings) {
      if (shown++ == kReadingsShown) break;
      const auto assumed = dating::assumptions(*decoded, reading);
      out << (assumed.empty() ? fmt::format("  {}\n", dating::plainReading(reading))
                              : fmt::format("  {:<20}{}\n", dating::plainReading(reading), fmt::join(assumed, ", ")));
    }
    if (decoded->readings.size() > kReadingsShown)
      out << fmt::format("  {} more ways to read it, less likely\n", decoded->readings.size() - kReadingsShown);
    for (const Finding& finding : decoded->findings) out << wrapped(finding.sentence, 2, 0);
  }
  return decoded->readings.empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> list(const Arguments& given, std::ostream& out) {
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto records = catalog::dateLayouts(*catalogue);
  Json document = cli::document("ohmkin.layouts", 1);
  document["layouts"] = Json::array();
  std::string lines;
  for (const auto& record : records) {
    Json one = json(workflow::layoutOf(record));
    one["example"] = record.example;
    one["example_date"] = isoDate(record.exampleDate);
    one["source"] = catalog::cite(record.source);
    document["layouts"].push_back(std::move(one));
    lines += fmt::format("{} ({}): {}; '{}' is {}\n", record.id.text, catalog::text(record.foundOn), record.name,
                         record.example, plainDate(record.exampleDate));
  }
  out << (given.has("--json") ? text(document) : lines);
  return records.empty() ? Exit::noAnswer : Exit::answer;
}

/// The use case names the fields of its form; at the terminal they are options.
Refusal asOption(Refusal refusal) {
  for (const char* field : {"name", "id", "example", "source"})
    if (refusal.where == field) refusal.where = std::string("--") + field;
  return refusal;
}

Expected<Exit> save(const Arguments& given, std::ostream& out) {
  workflow::LayoutToSave asked;
  auto layout = layoutGiven(given);
  if (!layout) return tl::make_unexpected(layout.error());
  asked.layout = std::move(*layout);
  asked.example = given.one("--example");
  const auto day = parseDate(given.one("--example-date"), "--example-date");
  if (!day) return tl::make_unexpected(day.error());
  asked.exampleDate = *day;
  auto source = workflow::readSource(given.one("--source"), "--source");
  if (!source) return tl::make_unexpected(source.error());
  asked.source = std::move(*source);
  asked.replace = given.has("--replace");
  if (const auto fine = workflow::checkLayoutToSave(asked); !fine) return tl::make_unexpected(asOption(fine.error()));
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  const auto saved = workflow::saveLayout(catalogue, asked, "ohmkin layout");
  if (!saved) return tl::make_unexpected(asOption(saved.error()));
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.layout-saved", 1);
    document["layout"] = json(saved->layout);
    document["replaced"] = saved->replaced;
    out << text(document);
  } else {
    out << saved->sentence << '\n';
  }
  return Exit::answer;
}

}  // namespace

const CommandSpec& LayoutCommand::spec() const {
  static const CommandSpec spec{
      "layout",
      "How dates are written in castings and stamps: tries a layout on a code, or adds the shop's own.",
      "",
      "",
      0,
      0,
      withCommonOptions(
          {{"--id", "ID", "small letters, digits, hyphens; without it, made from the name"},
           {"--name", "NAME", "month letter, day, year digit"},
           {"--found-on", "PLACE", "head, block, intake, housing or assembly stamp"},
           {"--field", "KIND[:TEXT][?]", "a field, in order; a ? at the end where it may be left out", true},
           {"--example", "CODE", "a code as it is read; the layout must read it as --example-date"},
           {"--example-date", "DATE", "the day it names, 1981-08-22"},
           {"--source", "KIND: TEXT", "published, maker sheet, bench or common practice, and what is cited"},
           {"--replace", "", "replaces the layout that has this id, a pack's too"},
           {"--try", "CODE", "what the code means under these fields, or under the layout --id; saves nothing"},
           {"--list", "", "the layouts of the catalogue; saves nothing"}}),
      "ohmkin layout --field \"month letter\" --field \"day:00\" --field \"year digit\" --try \"H221\""};
  return spec;
}

Expected<Exit> LayoutCommand::run(const Arguments& arguments, Streams streams) const {
  if (arguments.has("--list")) return list(arguments, streams.out);
  if (arguments.has("--try")) return tryCode(arguments, streams.out);
  return save(arguments, streams.out);
}

}  // namespace ohmkin::cli
