#include <cli/common_options.h>
#include <cli/dial_command.h>
#include <cli/json_values.h>
#include <cli/pair_arguments.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <gauge/draw_dial.h>
#include <workflow/trim.h>
#include <ostream>

namespace ohmkin::cli {
namespace {

std::string cardText(const workflow::DialAnswer& answer, const DisplayUnits& units) {
  std::string text = fmt::format("Offset card: {} with {}\n\n", answer.pair.gaugeName, answer.pair.senderName);
  text += wrapped(answer.card.driverLine, 0, 0) + "\n      true   needle shows            error   ± (k = 2)\n";
  for (const auto& row : answer.card.rows) {
    text += fmt::format("{:>10}   {:<22}{:>7}{:>12}\n", print(row.trueTemperature, units), row.shown,
                        printDifference(row.error, units), printAmount(row.uncertainty, units));
  }
  text += "\n";
  for (const std::string& caution : answer.card.cautions) text += wrapped(caution, 0, 0);
  if (!answer.whyNot.empty())
    text += wrapped("The dial cannot be re-marked for this sender: " + answer.whyNot + ".", 0, 0);
  return text;
}

std::string cardJson(const workflow::DialAnswer& answer) {
  Json out = document("ohmkin.dial", 1);
  out["gauge"] = answer.pair.gaugeName;
  out["sender"] = answer.pair.senderName;
  out["driver_line"] = answer.card.driverLine;
  Json rows = Json::array();
  for (const auto& row : answer.card.rows)
    rows.push_back({{"true_c", inCelsius(row.trueTemperature)},
                    {"indicated", json(row.indicated)},
                    {"error_k", inKelvin(row.error)},
                    {"uncertainty_k", inKelvin(row.uncertainty)}});
  out["card"] = std::move(rows);
  Json marks = Json::array();
  if (answer.remarked) {
    for (const auto& mark : answer.remarked->dial.marks())
      marks.push_back({{"at_c", mark.at ? Json(inCelsius(*mark.at)) : Json()},
                       {"needle_degrees", mark.angle.degrees},
                       {"text", mark.text}});
  }
  out["marks"] = std::move(marks);
  out["why_not"] = answer.whyNot;
  return text(out);
}

/// The card, and the dial on a page of its own; where the needle cannot be given one the card alone, and why.
Expected<void> print(const workflow::DialAnswer& answer, const PrintRequest& request, double radius, Streams streams) {
  sheet::Pages pages = workflow::offsetCardSheet(answer, request.options);
  if (answer.remarked) {
    const auto dial = workflow::remarkedDialSheet(answer, radius, request.options);
    if (!dial) return tl::make_unexpected(dial.error());
    pages.insert(pages.end(), dial->begin(), dial->end());
  } else {
    streams.err << fmt::format("ohmkin: the card alone is printed; the dial cannot be re-marked: {}\n", answer.whyNot);
  }
  return deliver(request, pages, streams);
}

}  // namespace

const CommandSpec& DialCommand::spec() const {
  static const CommandSpec spec{
      "dial",
      "The offset card of a pair that is left as it is, and the dial that would tell the truth.",
      "",
      "",
      0,
      0,
      withPairOptions(
          withPrintOptions({{"--thermostat", "T", "the line for the driver is for this thermostat; otherwise 82 °C"},
                            {"--radius", "MM", "pivot to the ends of the marks; otherwise 40"}})),
      "ohmkin dial --catalog demo.ohmkin --gauge GA-1 --sender B --pdf dial.pdf"};
  return spec;
}

Expected<Exit> DialCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto question = pairQuestion(arguments, *units);
  if (!question) return tl::make_unexpected(question.error());
  std::optional<Temperature> thermostat;
  if (arguments.has("--thermostat")) {
    const auto read = parseTemperature(arguments.one("--thermostat"), units->temperature, "--thermostat");
    if (!read) return tl::make_unexpected(read.error());
    thermostat = *read;
  }
  // cppcheck-suppress legacyUninitvar ; it has an initial value
  double radius = gauge::DialSheet{}.radius;
  if (arguments.has("--radius")) {
    const auto read = parseNumber(arguments.one("--radius"), "--radius");
    if (!read) return tl::make_unexpected(read.error());
    radius = *read;
  }
  const auto request = printRequest(arguments, *units);
  if (!request) return tl::make_unexpected(request.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::dial(*catalogue, *question, thermostat, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  if (request->wanted()) {
    if (const auto printed = print(*answer, *request, radius, streams); !printed)
      return tl::make_unexpected(printed.error());
  }
  streams.out << (arguments.has("--json") ? cardJson(*answer) : cardText(*answer, *units));
  return Exit::answer;
}

}  // namespace ohmkin::cli
