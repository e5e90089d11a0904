#include <cli/common_options.h>
#include <cli/dial_command.h>
#include <cli/json_values.h>
#include <cli/pair_arguments.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fstream>
#include <gauge/draw_dial.h>
#include <ostream>
#include <workflow/trim.h>

namespace ohmkin::cli {
namespace {

std::string cardText(const workflow::DialAnswer& answer, const DisplayUnits& units) {
  std::string text = fmt::format("Offset card: {} with {}\n\n", answer.pair.gaugeName, answer.pair.senderName);
  text += wrapped(answer.card.driverLine, 0, 0) + "\n      true   needle shows            error   ± (k = 2)\n";
  for (const auto& row : answer.card.rows) {
    text += fmt::format("{:>10}   {:<22}{:>7}{:>12}\n", print(row.trueTemperature, units), row.shown, printDifference(row.error, units),
                        printAmount(row.uncertainty, units));
  }
  text += "\n";
  for (const std::string& caution : answer.card.cautions) text += wrapped(caution, 0, 0);
  if (!answer.whyNot.empty()) text += wrapped("The dial cannot be re-marked for this sender: " + answer.whyNot + ".", 0, 0);
  return text;
}

std::string cardJson(const workflow::DialAnswer& answer) {
  Json out = document("ohmkin.dial", 1);
  out["gauge"] = answer.pair.gaugeName;
  out["sender"] = answer.pair.senderName;
  out["driver_line"] = answer.card.driverLine;
  Json rows = Json::array();
  for (const auto& row : answer.card.rows)
    rows.push_back({{"true_c", inCelsius(row.trueTemperature)}, {"indicated", json(row.indicated)}, {"error_k", inKelvin(row.error)}, {"uncertainty_k", inKelvin(row.uncertainty)}});
  out["card"] = std::move(rows);
  Json marks = Json::array();
  if (answer.remarked) {
    for (const auto& mark : answer.remarked->dial.marks())
      marks.push_back({{"at_c", mark.at ? Json(inCelsius(*mark.at)) : Json()}, {"needle_degrees", mark.angle.degrees}, {"text", mark.text}});
  }
  out["marks"] = std::move(marks);
  out["why_not"] = answer.whyNot;
  return text(out);
}

Expected<void> writeDrawing(const workflow::DialAnswer& answer, const std::string& path, double radius) {
  if (!answer.remarked) return refuse("dial-not-drawn", "--svg", answer.whyNot, "a pair whose needle can show the hot temperature");
  gauge::DialSheet sheet;
  sheet.radius = radius;
  sheet.title = fmt::format("{} re-marked for {}", answer.pair.gaugeName, answer.pair.senderName);
  sheet.notes = {answer.card.driverLine, "Print at 100 % and check the ruler. The gauge is an aid; prove it against a thermometer."};
  const auto drawing = gauge::drawDial(answer.remarked->dial, sheet);
  if (!drawing) return tl::make_unexpected(drawing.error());
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  file << *drawing;
  if (!file.flush()) return refuse("dial-not-saved", "--svg", "'" + path + "'", "a place that can be written");
  return {};
}

}  // namespace

const CommandSpec& DialCommand::spec() const {
  static const CommandSpec spec{"dial",
                                "The offset card of a pair that is left as it is, and the dial that would tell the truth.",
                                "",
                                "",
                                0,
                                0,
                                withPairOptions({{"--thermostat", "T", "the line for the driver is for this thermostat; otherwise 82 °C"},
                                                 {"--svg", "FILE", "the re-marked dial at true size, with a ruler to check the print"},
                                                 {"--radius", "MM", "pivot to the ends of the marks; otherwise 40"}}),
                                "ohmkin dial --catalog demo.ohmkin --gauge GA-1 --sender B --svg dial.svg"};
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
  double radius = gauge::DialSheet{}.radius;
  if (arguments.has("--radius")) {
    const auto read = parseNumber(arguments.one("--radius"), "--radius");
    if (!read) return tl::make_unexpected(read.error());
    radius = *read;
  }
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::dial(*catalogue, *question, thermostat, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  if (arguments.has("--svg")) {
    if (const auto drawn = writeDrawing(*answer, arguments.one("--svg"), radius); !drawn) return tl::make_unexpected(drawn.error());
  }
  streams.out << (arguments.has("--json") ? cardJson(*answer) : cardText(*answer, *units));
  return Exit::answer;
}

}  // namespace ohmkin::cli
