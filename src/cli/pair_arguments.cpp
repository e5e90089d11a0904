#include <cli/common_options.h>
#include <cli/movement_option.h>
#include <cli/pair_arguments.h>
#include <cli/table_text.h>
#include <fmt/format.h>

namespace ohmkin::cli {
namespace {

Expected<void> readConditions(const Arguments& arguments, const DisplayUnits& units, gauge::Conditions& conditions) {
  if (arguments.has("--cluster-at")) {
    const auto at = parseTemperature(arguments.one("--cluster-at"), units.temperature, "--cluster-at");
    if (!at) return tl::make_unexpected(at.error());
    conditions.cluster = *at;
  }
  if (arguments.has("--supply")) {
    const auto supply = parseNumber(arguments.one("--supply"), "--supply");
    if (!supply || !(*supply > 0) || *supply > 32)
      return refuse("supply-out-of-range", "--supply", "'" + arguments.one("--supply") + "'",
                    "volts above 0 and up to 32, for example 13.5");
    conditions.supply = volts(*supply);
  }
  if (arguments.has("--ground-rise")) {
    const auto percent = parseNumber(arguments.one("--ground-rise"), "--ground-rise");
    if (!percent || *percent < 0 || *percent > 50)
      return refuse("ground-rise-out-of-range", "--ground-rise", "'" + arguments.one("--ground-rise") + "'",
                    "percent of the feed, 0 to 50");
    conditions.groundRise = *percent / 100;
  }
  conditions.regulatorWorks = !arguments.has("--regulator-fails");
  return {};
}

}  // namespace

std::vector<OptionSpec> withPairOptions(std::vector<OptionSpec> own) {
  std::vector<OptionSpec> all{
      {"--gauge", "FAMILY", "family the gauge was built for, or the gauge itself", false, {}, Names::gauges},
      {"--sender", "FAMILY", "family of the sender, or its part number", false, {}, Names::parts},
      movementOption(),
      {"--band", "LOW:HIGH", "temperatures that matter"},
      {"--cluster-at", "T", "temperature of the cluster; otherwise 20 °C"},
      {"--supply", "VOLTS", "battery; matters to a bimetal without its regulator"},
      {"--regulator-fails", "", "stuck, missing, or its case not grounded"},
      {"--ground-rise", "PERCENT", "how far other loads lift the gauge's ground, of the feed"}};
  all.insert(all.end(), own.begin(), own.end());
  return withCommonOptions(std::move(all));
}

Expected<workflow::PairQuestion> pairQuestion(const Arguments& arguments, const DisplayUnits& units) {
  workflow::PairQuestion question;
  question.gauge = arguments.one("--gauge");
  question.sender = arguments.one("--sender");
  for (const auto& [option, value] : {std::pair{"--gauge", &question.gauge}, std::pair{"--sender", &question.sender}}) {
    if (value->empty()) return refuse("option-missing", option, "nothing", "a resistance family of the catalogue");
  }
  auto movement = measuredMovement(arguments);
  if (!movement) return tl::make_unexpected(movement.error());
  question.movement = std::move(*movement);
  if (arguments.has("--band")) {
    const auto band = parseBand(arguments.one("--band"), units.temperature, "--band");
    if (!band) return tl::make_unexpected(band.error());
    question.band = *band;
  }
  if (const auto read = readConditions(arguments, units, question.conditions); !read)
    return tl::make_unexpected(read.error());
  return question;
}

std::string pairText(const workflow::PairAnswer& answer, const DisplayUnits& units) {
  std::string text = fmt::format("Gauge   {} (built for {})\nSender  {} ({})\n\n", answer.gaugeName, answer.gaugeFamily,
                                 answer.senderName, answer.senderFamily);
  text += wrapped(answer.verdict.sentence, 0, 0);
  if (!answer.unanswered.empty()) text += wrapped("! " + answer.unanswered, 2, 0);
  text += wrapped("At the hot mark: " + hotWarningText(answer.errors.hot, units) + ".", 0, 0);
  text += "\n" + errorTableText(answer.errors, units) + "\n";
  for (const Finding& finding : answer.verdict.findings) text += wrapped("- " + finding.sentence, 2, 0);
  return text;
}

}  // namespace ohmkin::cli
