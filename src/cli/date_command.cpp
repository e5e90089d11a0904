#include <cli/common_options.h>
#include <cli/date_command.h>
#include <cli/json_values.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <ostream>
#include <workflow/date_engine.h>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kReadingsShown = 8;

/// "30418:H 22 1" is a casting number and its date; without a colon the code alone.
workflow::CastingRead castingRead(dating::CastingRole role, const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return {"", role, "", text, ""};
  return {"", role, text.substr(0, colon), text.substr(colon + 1), ""};
}

Expected<workflow::DateQuestion> question(const Arguments& given) {
  workflow::DateQuestion asked;
  for (const auto& [option, role] : {std::pair{"--head", dating::CastingRole::head}, std::pair{"--block", dating::CastingRole::block},
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
      return refuse("year-unreadable", "--year", "'" + given.one("--year") + "'", "a model year of four digits, for example 1968");
    asked.year = ModelYear{static_cast<int>(*year)};
  }
  if (given.has("--built")) {
    const auto built = parseDate(given.one("--built"), "--built");
    if (!built) return tl::make_unexpected(built.error());
    asked.built = *built;
  }
  if (asked.castings.empty() && asked.stamp.empty())
    return refuse("nothing-to-date", "", "no code", "--head, --block, --intake, --housing or --stamp with the code as read");
  return asked;
}

std::string codeText(const workflow::CodeRead& code) {
  std::string text = fmt::format("{} '{}'", code.name, code.code);
  if (code.casting) text += " on casting " + code.casting->id.text;
  if (!code.layouts.empty()) text += fmt::format(", read as {}", fmt::join(code.layouts, " or "));
  text += "\n";
  std::size_t shown = 0;
  for (const auto& decoded : code.decoded) {
    for (const auto& reading : decoded.readings) {
      if (shown++ == kReadingsShown) break;
      const auto assumed = dating::assumptions(decoded, reading);
      text += fmt::format("  {:<22}{}\n", dating::plainReading(reading), assumed.empty() ? "as it stands" : fmt::format("{}", fmt::join(assumed, ", ")));
    }
  }
  if (code.readings.size() > kReadingsShown) text += fmt::format("  and {} more\n", code.readings.size() - kReadingsShown);
  if (code.readings.empty()) text += "  no date reads so\n";
  return text;
}

std::string dateText(const workflow::DateAnswer& answer) {
  std::string text;
  for (const auto& code : answer.codes) text += codeText(code);
  text += "\n";
  if (!answer.summary.empty()) text += wrapped("Engine assembled: " + answer.summary, 2, 0);
  for (std::size_t i = 0; i < answer.posterior.castings.size(); ++i) {
    const auto& casting = answer.posterior.castings[i];
    if (casting.days.empty() || i >= answer.codes.size()) continue;
    text += wrapped(fmt::format("{} cast: {}; fitted at assembly {:.0f} %", answer.codes[i].name, dating::eraSummary(casting.days), 100 * casting.fittedAtAssembly), 2, 0);
  }
  if (answer.posterior.conflict)
    text += wrapped(fmt::format("! These two cannot both be true: {} and {}.", answer.posterior.conflict->one, answer.posterior.conflict->other), 2, 0);
  if (!answer.engineWords.empty()) text += wrapped(answer.engineWords, 2, 0);
  for (const Finding& finding : answer.findings)
    text += wrapped(fmt::format("{} {} [{}]", finding.severity >= Severity::warning ? "!" : "-", finding.sentence, finding.source), 2, 0);
  return text;
}

Json json(const dating::DayDistribution& days) {
  if (days.empty()) return {};
  Json decades = Json::array();
  for (const auto& share : days.decades()) decades.push_back({{"decade", share.decade}, {"probability", share.probability}});
  return {{"most_probable", isoDate(days.mostProbable())},
          {"from_5_percent", isoDate(days.quantile(0.05))},
          {"to_95_percent", isoDate(days.quantile(0.95))},
          {"decades", std::move(decades)}};
}

std::string dateJson(const workflow::DateAnswer& answer) {
  Json out = document("ohmkin.date", 1);
  Json codes = Json::array();
  for (const auto& code : answer.codes) {
    Json readings = Json::array();
    for (const auto& decoded : code.decoded) {
      for (const auto& reading : decoded.readings) {
        readings.push_back({{"from", isoDate(reading.from)}, {"until", isoDate(reading.until)}, {"weight", reading.weight},
                            {"taken", reading.taken}, {"assumed", dating::assumptions(decoded, reading)}});
      }
    }
    codes.push_back({{"name", code.name}, {"code", code.code}, {"casting", code.casting ? Json(code.casting->id.text) : Json()},
                     {"layouts", code.layouts}, {"readings", std::move(readings)}, {"findings", cli::json(code.findings)}});
  }
  out["codes"] = std::move(codes);
  out["assembly"] = json(answer.posterior.assembly);
  Json castings = Json::array();
  for (const auto& casting : answer.posterior.castings) castings.push_back({{"cast", json(casting.days)}, {"fitted_at_assembly", casting.fittedAtAssembly}});
  out["castings"] = std::move(castings);
  out["first_engine"] = answer.posterior.firstEngine ? Json(*answer.posterior.firstEngine) : Json();
  out["engine"] = answer.engineWords;
  out["conflict"] = answer.posterior.conflict ? Json{answer.posterior.conflict->one, answer.posterior.conflict->other} : Json();
  out["findings"] = cli::json(answer.findings);
  return text(out);
}

}  // namespace

const CommandSpec& DateCommand::spec() const {
  static const CommandSpec spec{"date",
                                "Reads casting and stamp codes: when the engine was made, and whether it is the vehicle's first.",
                                "",
                                "",
                                0,
                                0,
                                withCommonOptions({{"--head", "[NUMBER:]CODE", "date cast in a head, ? for what cannot be read; each head by itself", true},
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
