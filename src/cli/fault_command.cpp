#include <cli/common_options.h>
#include <cli/fault_command.h>
#include <cli/fault_conversation.h>
#include <cli/fault_words.h>
#include <cli/movement_option.h>
#include <cli/print_request.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <quantity/parse.h>
#include <workflow/wiring_sheet.h>
#include <iostream>

namespace ohmkin::cli {
namespace {

Expected<circuit::WireLengths> lengthsGiven(const Arguments& arguments) {
  circuit::WireLengths lengths;
  for (const auto& [option, length] : {std::pair{"--feed-length", &lengths.feed},
                                       {"--lead-length", &lengths.lead},
                                       {"--ground-length", &lengths.ground}}) {
    if (!arguments.has(option)) continue;
    const auto metres = parseNumber(arguments.one(option), option);
    if (!metres) return tl::make_unexpected(metres.error());
    *length = millimetres(1000 * *metres);
  }
  return lengths;
}

/// Only the table of predictions and the wires are printed.
Expected<PrintRequest> sheetWanted(const Arguments& arguments) {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  auto request = printRequest(arguments, *units);
  if (!request) return request;
  if (request->wanted() && !arguments.has("--predictions") && !arguments.has("--wiring"))
    return refuse("nothing-to-print", arguments.has("--svg") ? "--svg" : "--pdf", "a search",
                  "it beside --wiring or --predictions");
  return request;
}

Expected<Exit> predictions(const FaultSearch& search, const PrintRequest& print, bool asJson, Streams streams) {
  if (print.wanted()) {
    const auto done = deliver(print, workflow::predictionsSheet(search.finder, print.options), streams);
    if (!done) return tl::make_unexpected(done.error());
  }
  streams.out << (asJson ? predictionsJson(search.finder) : predictionsText(search.finder));
  return Exit::answer;
}

Expected<Exit> wiring(const FaultSearch& search, const Arguments& arguments, const PrintRequest& print,
                      Streams streams) {
  const auto lengths = lengthsGiven(arguments);
  if (!lengths) return tl::make_unexpected(lengths.error());
  const auto plan = search.finder.wiring(*lengths);
  if (!plan) return tl::make_unexpected(plan.error());
  if (print.wanted()) {
    const auto done = deliver(print, workflow::wiringSheet(search.finder, *plan, print.options), streams);
    if (!done) return tl::make_unexpected(done.error());
  }
  streams.out << (arguments.has("--json") ? wiringJson(*plan) : wiringText(*plan));
  return Exit::answer;
}

}  // namespace

const CommandSpec& FaultCommand::spec() const {
  static const CommandSpec spec{
      "fault",
      "A needle that misreads: what may be wrong, and the next best test.",
      "",
      "",
      0,
      0,
      withCommonOptions(withPrintOptions(
          {{"--gauge", "GAUGE", "the gauge, or the family it was built for", false, {}, Names::gauges},
           {"--sender",
            "PART",
            "the sender, or its family; otherwise one of the gauge's family",
            false,
            {},
            Names::parts},
           movementOption(),
           {"--symptom",
            "WORD",
            "low, pegged, high, erratic or lamps (moves with them)",
            false,
            {"low", "pegged", "high", "erratic", "lamps", "any"}},
           {"--saw", "TEST=RESULT", "what a test showed; unsure for not sure", true},
           {"--paid", "SETUP", "hood, dash-out or sender-out: done already", true, {"hood", "dash-out", "sender-out"}},
           {"--tried", "REPAIR", "a repair that was made and did not help", true},
           {"--ask", "", "go on asking, answers from standard input"},
           {"--session", "FILE", "keeps the search, and goes on with one kept before"},
           {"--predictions", "", "what every test would show under every fault"},
           {"--wiring", "", "wires and fuse for wiring the gauge past the car's harness"},
           {"--feed-length", "METRES", "of the feed, for --wiring; otherwise 1.5"},
           {"--lead-length", "METRES", "of the lead, for --wiring; otherwise 3"},
           {"--ground-length", "METRES", "of the ground wire, for --wiring; otherwise 1.5"},
           {"--found", "CAUSE:SYMPTOM", "a job of your own whose cause was found: it moves the likelihoods", true},
           {"--running", "T", "where the warm engine stands; otherwise 88 °C"},
           {"--supply", "VOLTS", "of the battery, engine off; otherwise 12.6"},
           {"--feed-shunt", "OHMS", "resistor on the gauge from feed to sender post"},
           {"--ground-shunt", "OHMS", "resistor on the gauge from sender to ground post"}})),
      "ohmkin fault --catalog demo.ohmkin --gauge GA-1 --symptom low --saw unplug=stays"};
  return spec;
}

Expected<Exit> FaultCommand::run(const Arguments& arguments, Streams streams) const {
  auto search = faultSearch(arguments);
  if (!search) return tl::make_unexpected(search.error());
  const auto print = sheetWanted(arguments);
  if (!print) return tl::make_unexpected(print.error());
  const bool asJson = arguments.has("--json");
  if (arguments.has("--predictions")) return predictions(*search, *print, asJson, streams);
  if (arguments.has("--wiring")) return wiring(*search, arguments, *print, streams);
  if (arguments.has("--ask") && !asJson) return converse(std::move(*search), std::cin, streams);
  if (const auto kept = keep(*search); !kept) return tl::make_unexpected(kept.error());
  const auto seen = workflow::answersOf(search->finder, search->session, "--saw");
  if (!seen) return tl::make_unexpected(seen.error());
  const auto answer = workflow::answerOf(search->finder, search->session, "--saw");
  if (!answer) return tl::make_unexpected(answer.error());
  const circuit::Symptom symptom = search->session.symptom.value_or(circuit::Symptom::any);
  streams.out << (asJson ? faultJson(search->finder, symptom, *seen, *answer)
                         : faultText(search->finder, symptom, *answer));
  return answer->conclusion.settled || answer->conclusion.next ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
