#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/pair_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <ostream>
#include <workflow/pair.h>

namespace ohmkin::cli {
namespace {

std::string pairText(const workflow::PairAnswer& answer, const DisplayUnits& units) {
  std::string text = fmt::format("Gauge   {} (built for {})\nSender  {} ({})\nNetwork {}\n\n", answer.gaugeName, answer.gaugeFamily, answer.senderName,
                                 answer.senderFamily, answer.errors.trim.name());
  text += wrapped(answer.verdict.sentence, 0, 0);
  text += wrapped("At the hot mark: " + hotWarningText(answer.errors.hot, units) + ".", 0, 0);
  text += "\n" + errorTableText(answer.errors, units) + "\n";
  for (const Finding& finding : answer.verdict.findings) text += wrapped("- " + finding.sentence, 2, 0);
  return text;
}

std::string pairJson(const workflow::PairAnswer& answer) {
  Json out = document("ohmkin.pair", 1);
  out["gauge"] = {{"name", answer.gaugeName}, {"family", answer.gaugeFamily}};
  out["sender"] = {{"name", answer.senderName}, {"family", answer.senderFamily}};
  out["network"] = json(answer.errors.trim);
  out["verdict"] = {{"electrical", pairing::electricalName(answer.verdict.electrical)},
                    {"sentence", answer.verdict.sentence},
                    {"findings", json(answer.verdict.findings)}};
  out["errors"] = json(answer.errors);
  return text(out);
}

}  // namespace

const CommandSpec& PairCommand::spec() const {
  static const CommandSpec spec{"pair",
                                "What the needle shows against what is true, for one gauge and one sender.",
                                "",
                                "",
                                0,
                                0,
                                withCommonOptions({{"--gauge", "FAMILY", "family the gauge was built for, or the gauge itself"},
                                                   {"--sender", "FAMILY", "family of the sender, or its part number"},
                                                   {"--band", "LOW:HIGH", "temperatures that matter"}}),
                                "ohmkin pair --catalog demo.ohmkin --gauge A --sender C"};
  return spec;
}

Expected<Exit> PairCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  workflow::PairQuestion question{arguments.one("--gauge"), arguments.one("--sender"), std::nullopt, {}};
  for (const auto& [option, value] : {std::pair{"--gauge", &question.gauge}, std::pair{"--sender", &question.sender}}) {
    if (value->empty()) return refuse("option-missing", option, "nothing", "a resistance family of the catalogue");
  }
  if (arguments.has("--band")) {
    const auto band = parseBand(arguments.one("--band"), units->temperature, "--band");
    if (!band) return tl::make_unexpected(band.error());
    question.band = *band;
  }
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::pair(*catalogue, question, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  streams.out << (arguments.has("--json") ? pairJson(*answer) : pairText(*answer, *units));
  return Exit::answer;
}

}  // namespace ohmkin::cli
