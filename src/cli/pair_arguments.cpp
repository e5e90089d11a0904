#include <cli/common_options.h>
#include <cli/pair_arguments.h>
#include <cli/table_text.h>
#include <fmt/format.h>

namespace ohmkin::cli {

std::vector<OptionSpec> withPairOptions(std::vector<OptionSpec> own) {
  std::vector<OptionSpec> all{{"--gauge", "FAMILY", "family the gauge was built for, or the gauge itself"},
                              {"--sender", "FAMILY", "family of the sender, or its part number"},
                              {"--band", "LOW:HIGH", "temperatures that matter"}};
  all.insert(all.end(), own.begin(), own.end());
  return withCommonOptions(std::move(all));
}

Expected<workflow::PairQuestion> pairQuestion(const Arguments& arguments, const DisplayUnits& units) {
  workflow::PairQuestion question{arguments.one("--gauge"), arguments.one("--sender"), std::nullopt, {}};
  for (const auto& [option, value] : {std::pair{"--gauge", &question.gauge}, std::pair{"--sender", &question.sender}}) {
    if (value->empty()) return refuse("option-missing", option, "nothing", "a resistance family of the catalogue");
  }
  if (arguments.has("--band")) {
    const auto band = parseBand(arguments.one("--band"), units.temperature, "--band");
    if (!band) return tl::make_unexpected(band.error());
    question.band = *band;
  }
  return question;
}

std::string pairText(const workflow::PairAnswer& answer, const DisplayUnits& units) {
  std::string text = fmt::format("Gauge   {} (built for {})\nSender  {} ({})\n\n", answer.gaugeName, answer.gaugeFamily, answer.senderName,
                                 answer.senderFamily);
  text += wrapped(answer.verdict.sentence, 0, 0);
  text += wrapped("At the hot mark: " + hotWarningText(answer.errors.hot, units) + ".", 0, 0);
  text += "\n" + errorTableText(answer.errors, units) + "\n";
  for (const Finding& finding : answer.verdict.findings) text += wrapped("- " + finding.sentence, 2, 0);
  return text;
}

}  // namespace ohmkin::cli
