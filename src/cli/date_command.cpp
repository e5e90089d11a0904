#include <cli/common_options.h>
#include <cli/date_arguments.h>
#include <cli/date_command.h>
#include <cli/json_values.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/date_engine.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kReadingsShown = 8;
constexpr double kWorthShowing = 0.005;

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
  text += "\n";
  for (const std::string& assumed : answer.assumptions) text += wrapped(assumed, 2, 0);
  text += "Weights of look-alikes are judgement from memory, no source; the codes are your readings.\n";
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

Json json(const dating::Lag& lag) {
  const dating::UsualDays days = dating::usualDays(lag);
  return {{"half_within_days", days.half},
          {"nine_in_ten_within_days", days.nineInTen},
          {"longest_days", lag.longest},
          {"source", lag.source}};
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
  out["lags"] = {{"casting_to_assembly", json(answer.beliefs.castingToAssembly)},
                 {"assembly_to_vehicle", json(answer.beliefs.assemblyToVehicle)}};
  out["still_first_engine"] = {{"share", answer.beliefs.firstEngine}, {"source", answer.beliefs.source}};
  out["considered"] = {{"from", isoDate(*answer.posterior.window.from)},
                       {"until", isoDate(*answer.posterior.window.until)}};
  out["assumptions"] = answer.assumptions;
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
      withCommonOptions(withPrintOptions(
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
           {"--built", "DATE", "build date of the vehicle, 1968-03-21"},
           {"--between", "FROM..TO", "dates thought possible: 1950..1985, or with days; else 1900..2029"},
           {"--casting-to-engine", "DAYS[,DAYS]",
            "half of the castings are in an engine within the first, nine in ten within the second; else 12,38, a "
            "judgement from memory"},
           {"--engine-to-vehicle", "DAYS[,DAYS]", "the same from the assembled engine to the vehicle; else 10,32"},
           {"--still-first", "PERCENT", "vehicles that still have their first engine; else 70, from memory"}})),
      "ohmkin date --catalog demo.ohmkin --head \"30418:H 22 1\" --year 1968"};
  return spec;
}

Expected<Exit> DateCommand::run(const Arguments& arguments, Streams streams) const {
  const auto asked = dateQuestion(arguments);
  if (!asked) return tl::make_unexpected(asked.error());
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto request = printRequest(arguments, *units);
  if (!request) return tl::make_unexpected(request.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::dateEngine(*catalogue, *asked);
  if (!answer) return tl::make_unexpected(answer.error());
  streams.out << (arguments.has("--json") ? dateJson(*answer) : dateText(*answer));
  if (request->wanted()) {
    const auto printed = deliver(*request, workflow::dateSheet(*answer, request->options), streams);
    if (!printed) return tl::make_unexpected(printed.error());
  }
  return answer->dated() ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
