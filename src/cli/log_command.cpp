#include <catalog/change_log.h>
#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/edit_words.h>
#include <cli/log_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <quantity/date.h>
#include <quantity/parse.h>
#include <workflow/edit_changes.h>
#include <charconv>
#include <limits>
#include <ostream>

namespace ohmkin::cli {
namespace {

constexpr std::int64_t kShown = 20;
constexpr std::int64_t kMost = 1000;

Expected<std::int64_t> wholeOf(const Arguments& given, const char* option, std::int64_t most, std::int64_t otherwise) {
  if (!given.has(option)) return otherwise;
  const std::string text = given.one(option);
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < 1 || value > most)
    return refuse("number-out-of-range", option, "'" + text + "'",
                  most == kMost ? "1 to 1,000" : "the number of a change, as ohmkin log shows it");
  return value;
}

Expected<std::string> dayOf(const Arguments& given, const char* option) {
  if (!given.has(option)) return std::string();
  return parseDate(given.one(option), option).map([](const auto& day) { return isoDate(day); });
}

Json json(const workflow::ChangeShown& shown) {
  Json fields = Json::array();
  for (const auto& field : shown.fields) fields.push_back(cli::json(field));
  return {{"change", shown.line.id},
          {"at", shown.line.at},
          {"who", shown.line.who},
          {"what", shown.line.what},
          {"subject", shown.line.subject},
          {"takes_back", shown.line.of},
          {"can_be_reverted", shown.line.kept()},
          {"sentence", shown.sentence},
          {"fields", std::move(fields)}};
}

Expected<Exit> revert(const Arguments& given, std::int64_t number, const DisplayUnits& units, Streams streams) {
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  workflow::EditSession session(catalogue, whoIsAsking(given), units);
  const auto done = session.revert(number);
  if (!done) {
    complain(done.error(), streams.err);
    return Exit::badInput;
  }
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.edit", 1);
    document["dry_run"] = false;
    document["change"] = done->change;
    document["sentence"] = done->sentence;
    document["thing"] = done->thing.kind.empty() ? Json() : cli::json(done->thing);
    streams.out << text(document);
  } else {
    streams.out << fmt::format("{}\nChange {}.\n", done->sentence, done->change);
  }
  return Exit::answer;
}

}  // namespace

const CommandSpec& LogCommand::spec() const {
  static const CommandSpec spec{
      "log",
      "Who changed what in the catalogue, when; takes a change back.",
      "",
      "",
      0,
      0,
      withCommonOptions({{"--of", "ID", "only of this thing, BR-2201 or \"sender BR-2201\""},
                         {"--by", "WHO", "only by this person; letters' case does not matter"},
                         {"--since", "DATE", "from this day on (UTC)"},
                         {"--until", "DATE", "before this day (UTC)"},
                         {"--before", "N", "older than change N: the next page"},
                         {"--limit", "N", "so many at most, newest first; otherwise 20"},
                         {"--revert", "N", "takes change N back, as a change of its own"},
                         {"--who", "NAME", "who takes it back; otherwise the name you are logged in by"}}),
      "ohmkin log --catalog demo.ohmkin --of BR-2201"};
  return spec;
}

Expected<Exit> LogCommand::run(const Arguments& given, Streams streams) const {
  constexpr auto kAny = std::numeric_limits<std::int64_t>::max();
  const auto units = displayUnits(given);
  if (!units) return tl::make_unexpected(units.error());
  const auto reverted = wholeOf(given, "--revert", kAny, 0);
  if (!reverted) return tl::make_unexpected(reverted.error());
  if (*reverted != 0) return revert(given, *reverted, *units, streams);
  const auto limit = wholeOf(given, "--limit", kMost, kShown);
  if (!limit) return tl::make_unexpected(limit.error());
  const auto before = wholeOf(given, "--before", kAny, 0);
  if (!before) return tl::make_unexpected(before.error());
  const auto since = dayOf(given, "--since");
  if (!since) return tl::make_unexpected(since.error());
  const auto until = dayOf(given, "--until");
  if (!until) return tl::make_unexpected(until.error());
  const auto catalogue = openCatalogue(given);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto lines = catalog::changes(
      *catalogue, {given.one("--of"), given.one("--by"), *since, *until, *before, static_cast<std::size_t>(*limit)});
  Json document = cli::document("ohmkin.log", 1);
  document["changes"] = Json::array();
  std::string told;
  for (const auto& line : lines) {
    const auto shown = workflow::shownChange(line, *units);
    document["changes"].push_back(json(shown));
    told += wrapped(fmt::format("{:>6}  {}  {}: {}", line.id, line.at, line.who, shown.sentence), 8, 0);
    for (const auto& field : shown.fields)
      told += wrapped(fmt::format("{}: {} → {}", field.label, field.before.empty() ? "-" : field.before,
                                  field.after.empty() ? "-" : field.after),
                      12, 10);
  }
  if (lines.empty()) told = "No change of that kind is in the log.\n";
  streams.out << (given.has("--json") ? text(document) : told);
  return lines.empty() ? Exit::noAnswer : Exit::answer;
}

}  // namespace ohmkin::cli
