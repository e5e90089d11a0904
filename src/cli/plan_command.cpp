#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/plan_command.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/plan.h>
#include <workflow/question_text.h>
#include <fstream>
#include <ostream>

namespace ohmkin::cli {
namespace {

Expected<workflow::PlanQuestion> planQuestion(const Arguments& given, const catalog::Catalogue& catalogue,
                                              Streams streams) {
  workflow::PlanQuestion asked;
  if (given.has("--open")) {
    const auto text = contentsOf(given.one("--open"));
    if (!text) return refuse("plan-missing", "--open", "'" + given.one("--open") + "'", "a plan that can be read");
    auto opened = workflow::readPlanDocument(*text, given.one("--open"));
    if (!opened) return tl::make_unexpected(opened.error());
    asked = std::move(*opened);
  }
  const workflow::Vocabulary vocabulary(catalogue, workflow::Vocabulary::Numbers::askedFor);
  for (const auto& [option, side] : {std::pair{"--dash", &asked.dashes}, std::pair{"--donor", &asked.engines}}) {
    for (const std::string& text : given.all(option)) {
      const auto reading = workflow::readQuestion(vocabulary, text);
      for (const auto& piece : reading.pieces) {
        if (piece.field.empty())
          streams.err << fmt::format("ohmkin: {}: {}\n", option, workflow::complaint(piece, text));
      }
      side->push_back(reading.question);
    }
  }
  return asked;
}

std::string cellHeadline(const workflow::PlanCell& cell, const DisplayUnits& units) {
  if (cell.refused) return "not looked at";
  std::string text = cell.answered ? fmt::format("{}", fmt::join(cell.partsToBuy, " + ")) : "no sender to recommend";
  if (cell.worst) text += ", worst " + printDifference(*cell.worst, units, 1);
  if (!cell.era.empty()) text += ", " + cell.era;
  return text;
}

std::string planText(const workflow::Plan& plan, const DisplayUnits& units) {
  std::string text;
  for (std::size_t d = 0; d < plan.dashNames.size(); ++d) {
    text += plan.dashNames[d] + "\n";
    for (std::size_t e = 0; e < plan.engineNames.size(); ++e) {
      const auto& cell = plan.at(d, e);
      text += wrapped(
          fmt::format("{} {}: {}", plan.bestEngine[d] == e ? "→" : " ", plan.engineNames[e], cellHeadline(cell, units)),
          4, 2);
      text += wrapped(cell.sentence, 6, 6);
      if (!cell.look.empty()) text += wrapped("Look: " + cell.look, 6, 6);
    }
    text += "\n";
  }
  if (!plan.partsToBuy.empty()) {
    text += "Parts to buy, with the engine marked for each dash:\n";
    for (const std::string& part : plan.partsToBuy) text += wrapped(part, 6, 2);
    text += "\n";
  }
  for (const std::string& caution : plan.cautions) text += wrapped(caution, 0, 0);
  return text;
}

Json shoppingJson(const std::vector<workflow::PartToBuy>& shopping) {
  Json all = Json::array();
  for (const workflow::PartToBuy& part : shopping) {
    all.push_back({{"part", part.part},
                   {"kind", part.kind},
                   {"name", part.name},
                   {"quantity", part.quantity},
                   {"resistance_ohm", part.resistance ? Json(inOhms(*part.resistance)) : Json()},
                   {"rating_w", part.rating ? Json(inWatts(*part.rating)) : Json()},
                   {"series", part.series.empty() ? Json() : Json(part.series)},
                   {"network", part.network.empty() ? Json() : Json(part.network)}});
  }
  return all;
}

/// Part numbers alone; a resistor has none and is said in words.
Json partNumbers(const std::vector<workflow::PartToBuy>& shopping) {
  Json all = Json::array();
  for (const workflow::PartToBuy& part : shopping) all.push_back(part.rating ? wordsOf(part) : part.part);
  return all;
}

std::string planJson(const workflow::Plan& plan) {
  Json out = document("ohmkin.plan-answer", 1);
  out["dashes"] = plan.dashNames;
  out["engines"] = plan.engineNames;
  Json cells = Json::array();
  for (const auto& cell : plan.cells) {
    cells.push_back({{"dash", cell.dash},
                     {"engine", cell.engine},
                     {"answered", cell.answered},
                     {"part", cell.part},
                     {"rank", pairing::rankName(cell.rank)},
                     {"sentence", cell.sentence},
                     {"parts_to_buy", partNumbers(cell.shopping)},
                     {"worst_k", cell.worst ? Json(inKelvin(*cell.worst)) : Json()},
                     {"era", cell.era},
                     {"look", cell.look},
                     {"branches", cell.branches},
                     {"refused", cell.refused ? json(*cell.refused) : Json()},
                     {"shopping", shoppingJson(cell.shopping)}});
  }
  out["cells"] = std::move(cells);
  out["parts_to_buy"] = partNumbers(plan.shopping);
  out["cautions"] = plan.cautions;
  out["shopping"] = shoppingJson(plan.shopping);
  return text(out);
}

}  // namespace

const CommandSpec& PlanCommand::spec() const {
  static const CommandSpec spec{
      "plan",
      "A swap plan: one or several dashes against one or several engines, side by side.",
      "",
      "",
      0,
      0,
      withCommonOptions(
          withPrintOptions({{"--dash", "TEXT", "a dash in plain words: 1968 ridgeway utility gauge package", true},
                            {"--donor", "TEXT", "an engine in plain words: casting 30418 dated H 22 1", true},
                            {"--open", "FILE", "a plan saved before; --dash and --donor are added to it"},
                            {"--save", "FILE", "keeps the plan's questions, to be opened again"}})),
      "ohmkin plan --catalog demo.ohmkin --dash \"1968 ridgeway utility\" --donor \"casting 30418\""};
  return spec;
}

Expected<Exit> PlanCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto request = printRequest(arguments, *units);
  if (!request) return tl::make_unexpected(request.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto asked = planQuestion(arguments, *catalogue, streams);
  if (!asked) return tl::make_unexpected(asked.error());
  const auto plan = workflow::plan(*catalogue, *asked, {{}, *units});
  if (!plan) return tl::make_unexpected(plan.error());
  if (arguments.has("--save")) {
    std::ofstream file(arguments.one("--save"), std::ios::binary | std::ios::trunc);
    file << workflow::planDocument(*asked);
    if (!file.flush())
      return refuse("plan-not-saved", "--save", "'" + arguments.one("--save") + "'", "a place that can be written");
  }
  if (request->wanted()) {
    const auto printed = deliver(*request, workflow::planSheet(*plan, request->options), streams);
    if (!printed) return tl::make_unexpected(printed.error());
  }
  streams.out << (arguments.has("--json") ? planJson(*plan) : planText(*plan, *units));
  return plan->answered() ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
