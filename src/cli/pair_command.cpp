#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/pair_arguments.h>
#include <cli/pair_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <pairing/monte_carlo.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

Json json(const pairing::Sampled& sampled) {
  Json rows = Json::array();
  for (const auto& row : sampled.rows) {
    rows.push_back({{"true_c", inCelsius(row.trueTemperature)},
                    {"mean_k", inKelvin(row.mean)},
                    {"standard_k", inKelvin(row.standard)},
                    {"low95_k", inKelvin(row.low95)},
                    {"high95_k", inKelvin(row.high95)},
                    {"first_order_standard_k", inKelvin(row.firstOrder)},
                    {"linear", row.linear}});
  }
  return {{"draws", sampled.draws.count},
          {"seed", sampled.draws.seed},
          {"comparison", sampled.comparison},
          {"rows", std::move(rows)}};
}

std::string pairJson(const workflow::PairAnswer& answer, const std::optional<pairing::Sampled>& sampled) {
  Json out = document("ohmkin.pair", 1);
  out["gauge"] = {{"name", answer.gaugeName}, {"family", answer.gaugeFamily}};
  out["sender"] = {{"name", answer.senderName}, {"family", answer.senderFamily}};
  out["verdict"] = {{"electrical", pairing::electricalName(answer.verdict.electrical)},
                    {"sentence", answer.verdict.sentence},
                    {"findings", cli::json(answer.verdict.findings)}};
  out["errors"] = cli::json(answer.errors);
  out["monte_carlo"] = sampled ? json(*sampled) : Json();
  return text(out);
}

}  // namespace

const CommandSpec& PairCommand::spec() const {
  static const CommandSpec spec{
      "pair",
      "What the needle shows against what is true, for one gauge and one sender.",
      "",
      "",
      0,
      0,
      withPairOptions(
          {{"--monte-carlo", "DRAWS", "propagate distributions as well (JCGM 101), and say where the two disagree"}}),
      "ohmkin pair --catalog demo.ohmkin --gauge A --sender C"};
  return spec;
}

Expected<Exit> PairCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto question = pairQuestion(arguments, *units);
  if (!question) return tl::make_unexpected(question.error());
  pairing::Draws draws;
  if (arguments.has("--monte-carlo")) {
    const auto count = parseNumber(arguments.one("--monte-carlo"), "--monte-carlo");
    if (!count || *count < 1000 || *count > 10'000'000)
      return refuse("draws-out-of-range", "--monte-carlo", "'" + arguments.one("--monte-carlo") + "'",
                    "a number of draws from 1000 to 10000000");
    draws.count = static_cast<std::size_t>(*count);
  }
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::pair(*catalogue, *question, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  std::optional<pairing::Sampled> sampled;
  if (arguments.has("--monte-carlo")) {
    auto done = pairing::monteCarlo(*answer->gauge, answer->sender, answer->errors, draws);
    if (!done) return tl::make_unexpected(done.error());
    sampled = std::move(*done);
  }
  if (arguments.has("--json")) {
    streams.out << pairJson(*answer, sampled);
    return Exit::answer;
  }
  streams.out << pairText(*answer, *units);
  if (sampled) streams.out << wrapped(fmt::format("{} draws: {}", sampled->draws.count, sampled->comparison), 0, 0);
  return Exit::answer;
}

}  // namespace ohmkin::cli
