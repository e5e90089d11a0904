#include <cli/common_options.h>
#include <cli/date_command.h>
#include <cli/json_values.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/date_engine.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kReadingsShown = 8;
constexpr double kWorthShowing = 0.005;

/// "30418:H 22 1" is a casting number and its date; without a colon the code alone.
workflow::CastingRead castingRead(dating::CastingRole role, const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return {"", role, "", text, ""};
  return {"", role, text.substr(0, colon), text.substr(colon + 1), ""};
}

Expected<workflow::DateQuestion> question(const Arguments& given) {
  workflow::DateQuestion asked;
  for (const auto& [option, role] :
       {std::pair{"--head", dating::CastingRole::head}, std::pair{"--block", dating::CastingRole::block},
        std::pair{"--intake", dating::CastingRole::intake}, std::pair{"--housing", dating::CastingRole::housing}}) {
    for (const std::string& text : given.all(option)) {
      asked.castings.push_back(castingRead(role, text));
      asked.castings.back().layout = given.one("--layout");
    }
  }
  asked.stamp = given.one("--stamp");
  asked.stampLayout = given.one("--stamp-layout");
  asked.padRecut = given.has("--recut");
  asked.line = given.one("--vehicle");
  if (given.has("--year")) {
    const auto year = parseNumber(given.one("--year"), "--year");
    if (!year || *year < 1900 || *year > 2100)
      return refuse("year-unreadable", "--year", "'" + given.one("--year") + "'",
                    "a model year of four digits, for example 1968");
    asked.year = ModelYear{static_cast<int>(*year)};
  }
  if (given.has("--built")) {
    const auto built = parseDate(given.one("--built"), "--built");
    if (!built) return tl::make_unexpected(built.error());
    asked.built = *built;
  }
  if (asked.castings.empty() && asked.stamp.empty())
    return refuse("nothing-to-date", "", "no code",
                  "--head, --block, --intake, --housing or --stamp with the code as read");
  return asked;
}

std::string codeText(const workflow::CodeRead& code) {
  std::string text =
      fmt::format("{} '{}'{}\n", code.name, code.code, code.casting ? " on casting " + code.casting->id.text : "");
  std::size_t shown = 0;
  for (const auto& meaning : code.meanings) {
    if (shown == kReadingsShown || (shown > 0 && meaning.probability < kWorthShowing)) break;
    ++shown;
    text += fmt::format("  {:<20}{:>5.0f} %  {}{}\n", dating::plainReading(meaning.reading), 100 * meaning.probability,
                        meaning.layout,
                        meaning.assumed.empty() ? "" : fmt::format("; {}", fmt::join(meaning.assumed, ", ")));
  }
  if (code.meanings.size() > shown)
    text += fmt::format("  {} more ways to read it, none of them likely here\n", code.meanings.size() - shown);
  if (code.meanings.empty()) text += "  no date reads so\n";
  return text;
}

std::string dateText(const workflow::DateAnswer& answer) {
  std::string text;
  for (const auto& code : answer.codes) text += codeText(code);
  text += "\n";
  for (const Finding& finding : answer.findings)
    text += wrapped(fmt::format("{} {}", finding.severity >= Severity::warning ? "!" : "-", finding.sentence), 2, 0);
  text += "\nLags and weights are judgement from memory, no source; the codes are your readings.\n";
  return text;
}

Json json(const dating::DayDistribution& days) {
  if (days.empty()) return {};
  Json decades = Json::array();
  for (const auto& share : days.decades())
    decades.push_back({{"decade", share.decade}, {"probability", share.probability}});
  return {{"most_probable", isoDate(days.mostProbable())},
          {"from_5_percent", isoDate(days.quantile(0.05))},
          {"to_95_percent", isoDate(days.quantile(0.95))},
          {"decades", std::move(decades)}};
}

std::string dateJson(const workflow::DateAnswer& answer) {
  Json out = document("ohmkin.date", 1);
  Json codes = Json::array();
  for (const auto& code : answer.codes) {
    Json meanings = Json::array();
    for (const auto& meaning : code.meanings) {
      meanings.push_back({{"from", isoDate(meaning.reading.from)},
                          {"until", isoDate(meaning.reading.until)},
                          {"probability", meaning.probability},
                          {"layout", meaning.layout},
                          {"taken", meaning.reading.taken},
                          {"assumed", meaning.assumed}});
    }
    codes.push_back({{"name", code.name},
                     {"code", code.code},
                     {"casting", code.casting ? Json(code.casting->id.text) : Json()},
                     {"meanings", std::move(meanings)},
                     {"findings", cli::json(code.findings)}});
  }
  out["codes"] = std::move(codes);
  out["assembly"] = json(answer.posterior.assembly);
  Json castings = Json::array();
  for (const auto& casting : answer.posterior.castings)
    castings.push_back({{"cast", json(casting.days)}, {"fitted_at_assembly", casting.fittedAtAssembly}});
  out["castings"] = std::move(castings);
  out["first_engine"] = answer.posterior.firstEngine ? Json(*answer.posterior.firstEngine) : Json();
  out["engine"] = answer.engineWords;
  out["conflict"] =
      answer.posterior.conflict ? Json{answer.posterior.conflict->one, answer.posterior.conflict->other} : Json();
  out["findings"] = cli::json(answer.findings);
  return text(out);
}

}  // namespace

const CommandSpec& DateCommand::spec() const {
  static const CommandSpec spec{
      "date",
      "Reads casting and stamp codes: when the engine was made, and whether it is the vehicle's first.",
      "",
      "",
      0,
      0,
      withCommonOptions(
          {{"--head", "[NUMBER:]CODE", "date cast in a head, ? for what cannot be read; each head by itself", true},
           {"--block", "[NUMBER:]CODE", "date cast in the block", true},
           {"--intake", "[NUMBER:]CODE", "date cast in the intake", true},
           {"--housing", "[NUMBER:]CODE", "date cast in a housing", true},
           {"--layout", "LAYOUT", "how the castings' codes are written, where the casting does not say"},
           {"--stamp", "CODE", "assembly stamp"},
           {"--stamp-layout", "LAYOUT", "how the stamp is written"},
           {"--recut", "", "the stamp's pad has been cut again"},
           {"--vehicle", "LINE", "vehicle line"},
           {"--year", "N", "model year of the vehicle"},
           {"--built", "DATE", "build date of the vehicle, 1968-03-21"}}),
      "ohmkin date --catalog demo.ohmkin --head \"30418:H 22 1\" --year 1968"};
  return spec;
}

Expected<Exit> DateCommand::run(const Arguments& arguments, Streams streams) const {
  const auto asked = question(arguments);
  if (!asked) return tl::make_unexpected(asked.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::dateEngine(*catalogue, *asked);
  if (!answer) return tl::make_unexpected(answer.error());
  streams.out << (arguments.has("--json") ? dateJson(*answer) : dateText(*answer));
  return answer->dated() ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
