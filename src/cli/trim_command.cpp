#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/pair_arguments.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <cli/trim_command.h>
#include <fmt/format.h>
#include <workflow/trim.h>
#include <ostream>
#include <sstream>

namespace ohmkin::cli {
namespace {

Expected<std::vector<Ohms>> drawerValues(const Arguments& arguments) {
  std::vector<Ohms> values;
  for (std::string list : arguments.all("--drawer")) {
    while (!list.empty()) {
      const auto comma = list.find(',');
      const auto value = parseOhms(list.substr(0, comma), "--drawer");
      if (!value) return tl::make_unexpected(value.error());
      values.push_back(*value);
      list = comma == std::string::npos ? "" : list.substr(comma + 1);
    }
  }
  return values;
}

/// "parallel 200 series 10": the first part sits at the sender.
Expected<pairing::TrimNetwork> networkFrom(const std::string& text) {
  const auto bad = [&] {
    return refuse("network-unreadable", "--network", "'" + text + "'",
                  "series or parallel, each with its ohms, for example 'parallel 200 series 10'");
  };
  std::istringstream words(text);
  std::vector<std::pair<bool, Ohms>> parts;  // in series or not
  for (std::string kind, value; words >> kind;) {
    if ((kind != "series" && kind != "parallel") || !(words >> value)) return bad();
    const auto r = parseOhms(value, "--network");
    if (!r) return tl::make_unexpected(r.error());
    parts.emplace_back(kind == "series", *r);
  }
  if (parts.size() == 1)
    return parts[0].first ? pairing::TrimNetwork::series(parts[0].second)
                          : pairing::TrimNetwork::parallel(parts[0].second);
  if (parts.size() != 2 || parts[0].first == parts[1].first) return bad();
  return parts[0].first ? pairing::TrimNetwork::seriesThenParallel(parts[0].second, parts[1].second)
                        : pairing::TrimNetwork::parallelThenSeries(parts[0].second, parts[1].second);
}

std::string proposalText(const pairing::TrimProposal& proposal, const DisplayUnits& units) {
  std::string text = fmt::format("\nBest network: {}{}\n", proposal.network.name(),
                                 proposal.permanent      ? ""
                                 : proposal.withinLimits ? " (to get home only)"
                                                         : " (not good enough)");
  text += fmt::format(
      "Worst error {} instead of {}; low {}, high {}.\n", printDifference(proposal.after.worst.error, units, 1),
      printAmount(proposal.weightedWorstBefore, units, 1) + " (weighted)",
      printDifference(proposal.after.low.error, units, 1), printDifference(proposal.after.high.error, units, 1));
  text += wrapped("At the hot mark: " + hotWarningText(proposal.after.hot, units) + ".", 0, 0);
  for (const Finding& finding : proposal.findings) text += wrapped("- " + finding.sentence, 2, 0);
  text += "\n" + errorTableText(proposal.after, units, 9);
  text += "\nWith parts at their worst corners\n";
  for (const auto& tolerance : proposal.tolerances) {
    text += fmt::format("  {:.0f} % parts: low {}, high {}, {}\n", 100 * tolerance.tolerance,
                        printDifference(tolerance.low, units, 1), printDifference(tolerance.high, units, 1),
                        tolerance.late ? printDifference(*tolerance.late, units, 1) + " late at the hot mark"
                                       : "may never reach the hot mark");
  }
  text += fmt::format("\nPower at {:.0f} V, derated for {:.0f} °C behind the dash\n", pairing::kTrimVolts,
                      pairing::kTrimCelsius);
  for (const auto& load : proposal.loads) {
    text += fmt::format("  {}: {}{:.2f} W with the post shorted to feed; buy {:g} W or more\n", load.part,
                        load.working ? fmt::format("{:.2f} W working, ", inWatts(*load.working)) : "",
                        inWatts(load.shortedToFeed), inWatts(load.rating));
  }
  text += "\nWhat fails, and what the needle then shows\n";
  for (const auto& failure : proposal.failures)
    text += wrapped((failure.severity >= Severity::warning ? "! " : "- ") + failure.sentence, 4, 2);
  text += fmt::format("\n{} networks: {} computed, {} excluded by bounds; the best is the best of all.\n",
                      proposal.search.networks, proposal.search.evaluated, proposal.search.excluded);
  return text;
}

std::string trimJson(const workflow::TrimAnswer& answer) {
  Json out = document("ohmkin.trim", 1);
  out["gauge"] = {{"name", answer.asItIs.gaugeName}, {"family", answer.asItIs.gaugeFamily}};
  out["sender"] = {{"name", answer.asItIs.senderName}, {"family", answer.asItIs.senderFamily}};
  out["as_it_is"] = json(answer.asItIs.errors);
  out["proposal"] = answer.proposal ? json(*answer.proposal) : Json();
  return text(out);
}

}  // namespace

const CommandSpec& TrimCommand::spec() const {
  static const CommandSpec spec{
      "trim",
      "The best added resistors for a pair that misreads, and what happens when one of them fails.",
      "",
      "",
      0,
      0,
      withPairOptions(withPrintOptions(
          {{"--series",
            "E24",
            "preferred values to choose from: E6, E12, E24, E48 or E96",
            false,
            {"E6", "E12", "E24", "E48", "E96"}},
           {"--drawer", "OHMS,…", "only these values, what the shop stocks", true},
           {"--network", "PARTS",
            "judge this one: 'series 10', 'parallel 200', 'parallel 200 series 10' or 'series 10 parallel "
            "200'; the first sits at the sender"},
           {"--feed-to-sender", "", "look at a resistor from feed to sender post too; it wants a fuse"}})),
      "ohmkin trim --catalog demo.ohmkin --gauge A --sender C --series E24"};
  return spec;
}

Expected<Exit> TrimCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto pairAsked = pairQuestion(arguments, *units);
  if (!pairAsked) return tl::make_unexpected(pairAsked.error());
  workflow::TrimQuestion question;
  question.pair = *pairAsked;
  question.feedToSender = arguments.has("--feed-to-sender");
  if (arguments.has("--network")) {
    const auto network = networkFrom(arguments.one("--network"));
    if (!network) return tl::make_unexpected(network.error());
    question.chosen = *network;
  }
  if (arguments.has("--series")) {
    const auto series = pairing::parseSeries(arguments.one("--series"), "--series");
    if (!series) return tl::make_unexpected(series.error());
    question.series = *series;
  }
  auto drawer = drawerValues(arguments);
  if (!drawer) return tl::make_unexpected(drawer.error());
  question.drawer = std::move(*drawer);
  const auto request = printRequest(arguments, *units);
  if (!request) return tl::make_unexpected(request.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  const auto answer = workflow::trim(*catalogue, question, {{}, *units});
  if (!answer) return tl::make_unexpected(answer.error());
  if (request->wanted()) {
    const auto pages = workflow::trimSheet(*answer, request->options);
    if (!pages) return tl::make_unexpected(pages.error());
    if (const auto done = deliver(*request, *pages, streams); !done) return tl::make_unexpected(done.error());
  }
  if (arguments.has("--json")) {
    streams.out << trimJson(*answer);
  } else {
    streams.out << pairText(answer->asItIs, *units)
                << (answer->proposal ? proposalText(*answer->proposal, *units)
                                     : "\nNo resistor makes this pair read better.\n");
  }
  return answer->proposal ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
