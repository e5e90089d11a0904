#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/match_command.h>
#include <cli/print_request.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/job_work.h>
#include <workflow/match.h>
#include <workflow/question_text.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

Expected<ModelYear> modelYear(const std::string& text) {
  const auto number = parseNumber(text, "--year");
  if (!number || *number != static_cast<int>(*number) || *number < 1900 || *number > 2100)
    return refuse("year-unreadable", "--year", fmt::format("'{}'", text),
                  "a model year of four digits, for example 1968");
  return ModelYear{static_cast<int>(*number)};
}

workflow::Question questionInWords(const Arguments& given, const catalog::Catalogue& catalogue, Streams streams) {
  if (given.words.empty()) return {};
  const std::string text = fmt::format("{}", fmt::join(given.words, " "));
  const workflow::TextReading reading = workflow::readQuestion(catalogue, text);
  for (const workflow::TextPiece& piece : reading.pieces)
    if (piece.field.empty()) streams.err << fmt::format("ohmkin: {}\n", workflow::complaint(piece, text));
  return reading.question;
}

void takeTexts(const Arguments& given, workflow::Question& asked) {
  const auto take = [&](std::string_view option, std::string& field) {
    if (given.has(option)) field = given.one(option);
  };
  take("--vehicle", asked.line);
  take("--cluster", asked.cluster);
  take("--gauge", asked.gauge);
  take("--engine", asked.engine);
  take("--casting", asked.casting);
  take("--casting-date", asked.castingDate);
  take("--port", asked.portThread);
  take("--port-location", asked.portLocation);
  take("--terminal", asked.terminal);
  take("--fitted", asked.fitted);
}

/// What the options say goes over what the words were understood to say.
Expected<workflow::Question> question(const Arguments& given, const DisplayUnits& units,
                                      const catalog::Catalogue& catalogue, Streams streams) {
  workflow::Question asked = questionInWords(given, catalogue, streams);
  takeTexts(given, asked);
  if (given.has("--dash-not-original")) asked.dashOriginal = false;
  if (given.has("--year")) {
    const auto year = modelYear(given.one("--year"));
    if (!year) return tl::make_unexpected(year.error());
    asked.year = *year;
  }
  if (given.has("--serial")) {
    const auto serial = parseNumber(given.one("--serial"), "--serial");
    if (!serial || *serial != static_cast<int>(*serial) || *serial < 0)
      return refuse("serial-unreadable", "--serial", fmt::format("'{}'", given.one("--serial")),
                    "the serial's number part, digits only");
    asked.serial = static_cast<int>(*serial);
  }
  for (const auto& [option, field] :
       {std::pair{"--built", &asked.built}, std::pair{"--engine-built", &asked.engineBuilt}}) {
    if (!given.has(option)) continue;
    const auto day = parseDate(given.one(option), option);
    if (!day) return tl::make_unexpected(day.error());
    *field = *day;
  }
  for (const std::string& text : given.all("--reading")) {
    const auto reading = parseReading(text, units.temperature, "--reading");
    if (!reading) return tl::make_unexpected(reading.error());
    asked.readings.push_back(*reading);
  }
  if (given.has("--band")) {
    const auto band = parseBand(given.one("--band"), units.temperature, "--band");
    if (!band) return tl::make_unexpected(band.error());
    asked.band = *band;
  }
  return asked;
}

/// Of the best sender of the likeliest branch: its trim where it is recommended with one, otherwise its offset card.
Expected<sheet::Pages> sheetsOfBest(const workflow::Answer& answer, const PrintRequest& request) {
  if (answer.branches.empty() || answer.branches.front().ranked.empty())
    return refuse("no-sender-to-print", request.pdf.empty() ? "--svg" : "--pdf", "no sender in the answer",
                  "a question that a sender answers");
  const workflow::Branch& branch = answer.branches.front();
  const workflow::Candidate& best = branch.ranked.front();
  if (best.rank == pairing::Rank::trimmedWithinLimits) {
    const auto trim = workflow::trimOfCandidate(branch, best);
    if (!trim) return tl::make_unexpected(trim.error());
    return workflow::trimSheet(*trim, request.options);
  }
  const auto dial = workflow::dialOfCandidate(answer, branch, best, request.options.units);
  if (!dial) return tl::make_unexpected(dial.error());
  return workflow::offsetCardSheet(*dial, request.options);
}

/// --job ID: question and answer as they are now.
Expected<void> keepWithJob(const workflow::Answer& answer, const Arguments& given, Streams streams) {
  const auto id = workflow::readJobNumber(given.one("--job"), "--job");
  if (!id) return tl::make_unexpected(id.error());
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  const auto kept = workflow::keepMatch(catalogue, *id, answer, whoIsAsking(given));
  if (!kept) return tl::make_unexpected(kept.error());
  streams.err << fmt::format("ohmkin: kept with job {} as document {}\n", id->value, kept->ordinal);
  return {};
}

}  // namespace

const CommandSpec& MatchCommand::spec() const {
  static const CommandSpec spec{
      "match",
      "Which sender joins this gauge to that engine, and by how much the needle lies when none does.",
      "[TEXT]…",
      "the same in plain words, in any order: 1968 ridgeway utility casting 30418",
      0,
      64,
      withCommonOptions(withPrintOptions({
          {"--vehicle", "LINE", "vehicle line"},
          {"--year", "N", "model year"},
          {"--built", "DATE", "build date of the vehicle, 1968-03-21"},
          {"--serial", "N", "number part of the vehicle's serial, where a change within the year is told by it"},
          {"--cluster", "OPTION", "cluster option"},
          {"--gauge", "GAUGE", "the gauge itself, where the dash is not original", false, {}, Names::gauges},
          {"--dash-not-original", "", "the cluster is not the one the vehicle left with"},
          {"--engine", "FAMILY", "engine family"},
          {"--casting", "NUMBER", "casting number of head, intake or housing", false, {}, Names::castings},
          {"--casting-date", "CODE", "date cast beside it, ? for what cannot be read"},
          {"--engine-built", "DATE", "build date of the engine"},
          {"--port", "THREAD", "thread of the port, as seen"},
          {"--port-location", "PLACE", "where the port is"},
          {"--terminal", "STYLE", "terminal at the wire end"},
          {"--fitted", "PART", "the sender in the head now", false, {}, Names::parts},
          {"--reading", "T=R", "ohms read from the sender in hand at a temperature, 20C=480", true},
          {"--band", "LOW:HIGH", "temperatures that matter; otherwise 11 K below the thermostat to the hot mark"},
          {"--job", "ID", "keeps question and answer with that job"},
          {"--who", "NAME", "who keeps it; otherwise the name you are logged in by"},
      })),
      "ohmkin match --catalog demo.ohmkin --vehicle \"Ridgeway utility\" --year 1968 --casting 30418"};
  return spec;
}

Expected<Exit> MatchCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto request = printRequest(arguments, *units);
  if (!request) return tl::make_unexpected(request.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto asked = question(arguments, *units, *catalogue, streams);
  if (!asked) return tl::make_unexpected(asked.error());
  const auto answer = workflow::match(*catalogue, *asked, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  if (request->wanted()) {
    const auto pages = sheetsOfBest(*answer, *request);
    if (!pages) return tl::make_unexpected(pages.error());
    if (const auto done = deliver(*request, *pages, streams); !done) return tl::make_unexpected(done.error());
  }
  if (arguments.has("--job")) {
    if (const auto kept = keepWithJob(*answer, arguments, streams); !kept) return tl::make_unexpected(kept.error());
  }
  streams.out << (arguments.has("--json") ? matchJson(*answer) : matchText(*answer, *units));
  return answer->answered() ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
