#include <cli/common_options.h>
#include <cli/fault_command.h>
#include <cli/fault_words.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <quantity/parse.h>
#include <algorithm>
#include <iostream>

namespace ohmkin::cli {
namespace {

struct Search {
  workflow::FaultFinder finder;
  circuit::Symptom symptom = circuit::Symptom::any;
  std::vector<circuit::Answer> seen;
  std::vector<std::string> paid;
};

Expected<circuit::Symptom> symptomNamed(const std::string& code, const char* option) {
  const auto symptom = circuit::symptomOf(code);
  if (!symptom) return refuse("symptom-unknown", option, "'" + code + "'", "low, pegged, high, erratic, lamps or any");
  return *symptom;
}

/// "lead-open:low": a job of the shop's own whose cause was found, and what was complained of.
Expected<std::vector<circuit::JobCount>> jobsGiven(const Arguments& arguments) {
  std::vector<circuit::JobCount> jobs;
  for (const std::string& word : arguments.all("--found")) {
    const auto at = word.find(':');
    const auto symptom = symptomNamed(at == std::string::npos ? "any" : word.substr(at + 1), "--found");
    if (!symptom) return tl::make_unexpected(symptom.error());
    jobs.push_back({word.substr(0, at), *symptom, 1});
  }
  return jobs;
}

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

Expected<workflow::FaultQuestion> faultQuestion(const Arguments& arguments, const DisplayUnits& units) {
  workflow::FaultQuestion question;
  question.gauge = arguments.one("--gauge");
  question.sender = arguments.one("--sender");
  if (question.gauge.empty())
    return refuse("option-missing", "--gauge", "nothing", "a gauge or a resistance family of the catalogue");
  if (arguments.has("--running")) {
    const auto at = parseTemperature(arguments.one("--running"), units.temperature, "--running");
    if (!at) return tl::make_unexpected(at.error());
    question.running = *at;
  }
  if (arguments.has("--supply")) {
    const auto supply = parseNumber(arguments.one("--supply"), "--supply");
    if (!supply) return tl::make_unexpected(supply.error());
    question.supply = volts(*supply);
  }
  for (const auto& [option, shunt] :
       {std::pair{"--feed-shunt", &question.feedShunt}, {"--ground-shunt", &question.groundShunt}}) {
    if (!arguments.has(option)) continue;
    const auto read = parseOhms(arguments.one(option), option);
    if (!read) return tl::make_unexpected(read.error());
    *shunt = *read;
  }
  auto jobs = jobsGiven(arguments);
  if (!jobs) return tl::make_unexpected(jobs.error());
  question.jobs = std::move(*jobs);
  return question;
}

Expected<std::vector<std::string>> paidSetups(const Arguments& arguments, const workflow::FaultFinder& finder) {
  std::vector<std::string> paid = arguments.all("--paid");
  const auto& setups = finder.predictions().tests().setups;
  for (const std::string& code : paid)
    if (std::none_of(setups.begin(), setups.end(), [&](const circuit::Setup& s) { return s.code == code; }))
      return refuse("setup-unknown", "--paid", "'" + code + "'", "hood, dash-out or sender-out");
  return paid;
}

Expected<Search> searchGiven(const Arguments& arguments) {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto question = faultQuestion(arguments, *units);
  if (!question) return tl::make_unexpected(question.error());
  const auto symptom = symptomNamed(arguments.one("--symptom", "any"), "--symptom");
  if (!symptom) return tl::make_unexpected(symptom.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  auto finder = workflow::FaultFinder::make(*catalogue, *question, *units);
  if (!finder) return tl::make_unexpected(finder.error());
  auto paid = paidSetups(arguments, *finder);
  if (!paid) return tl::make_unexpected(paid.error());
  Search search{std::move(*finder), *symptom, {}, std::move(*paid)};
  for (const std::string& saw : arguments.all("--saw")) {
    const auto answer = search.finder.read(saw, "--saw");
    if (!answer) return tl::make_unexpected(answer.error());
    search.seen.push_back(*answer);
  }
  return search;
}

/// One line of the conversation: an outcome's code or the whole TEST=RESULT; a blank line goes back.
Expected<void> take(Search& search, const std::string& line, std::size_t asked) {
  if (line.empty()) {
    if (!search.seen.empty()) search.seen.pop_back();
    return {};
  }
  const bool whole = line.find('=') != std::string::npos;
  const auto& code = search.finder.predictions().tests().tests[asked].code;
  const auto answer = search.finder.read(whole ? line : code + "=" + line, "answer");
  if (!answer) return tl::make_unexpected(answer.error());
  search.seen.push_back(*answer);
  return {};
}

/// Asks until it is settled, nothing is left to ask, or the input ends.
Expected<Exit> converse(Search search, Streams streams) {
  for (;;) {
    const auto answer = search.finder.answer(search.symptom, search.seen, search.paid);
    if (!answer) return tl::make_unexpected(answer.error());
    streams.out << faultText(search.finder, search.symptom, *answer);
    if (!answer->conclusion.next) return Exit::answer;
    streams.out << "\nResult, TEST=RESULT for another test, a blank line to go back: " << std::flush;
    std::string line;
    if (!std::getline(std::cin, line)) return Exit::noAnswer;
    streams.out << "\n";
    if (const auto taken = take(search, line, answer->conclusion.next->test); !taken)
      streams.err << taken.error().sentence() << "\n";
  }
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
      withCommonOptions(
          {{"--gauge", "GAUGE", "the gauge, or the family it was built for"},
           {"--sender", "PART", "the sender, or its family; otherwise one of the gauge's family"},
           {"--symptom", "WORD", "low, pegged, high, erratic or lamps (moves with them)"},
           {"--saw", "TEST=RESULT", "what a test showed; unsure for not sure", true},
           {"--paid", "SETUP", "hood, dash-out or sender-out: done already", true},
           {"--ask", "", "go on asking, answers from standard input"},
           {"--predictions", "", "what every test would show under every fault"},
           {"--wiring", "", "wires and fuse for wiring the gauge past the car's harness"},
           {"--feed-length", "METRES", "of the feed, for --wiring; otherwise 1.5"},
           {"--lead-length", "METRES", "of the lead, for --wiring; otherwise 3"},
           {"--ground-length", "METRES", "of the ground wire, for --wiring; otherwise 1.5"},
           {"--found", "CAUSE:SYMPTOM", "a job of your own whose cause was found: it moves the likelihoods", true},
           {"--running", "T", "where the warm engine stands; otherwise 88 °C"},
           {"--supply", "VOLTS", "of the battery, engine off; otherwise 12.6"},
           {"--feed-shunt", "OHMS", "resistor on the gauge from feed to sender post"},
           {"--ground-shunt", "OHMS", "resistor on the gauge from sender to ground post"}}),
      "ohmkin fault --catalog demo.ohmkin --gauge GA-1 --symptom low --saw unplug=stays"};
  return spec;
}

Expected<Exit> FaultCommand::run(const Arguments& arguments, Streams streams) const {
  auto search = searchGiven(arguments);
  if (!search) return tl::make_unexpected(search.error());
  const bool asJson = arguments.has("--json");
  if (arguments.has("--predictions")) {
    streams.out << (asJson ? predictionsJson(search->finder) : predictionsText(search->finder));
    return Exit::answer;
  }
  if (arguments.has("--wiring")) {
    const auto lengths = lengthsGiven(arguments);
    if (!lengths) return tl::make_unexpected(lengths.error());
    const auto plan = search->finder.wiring(*lengths);
    if (!plan) return tl::make_unexpected(plan.error());
    streams.out << (asJson ? wiringJson(*plan) : wiringText(*plan));
    return Exit::answer;
  }
  if (arguments.has("--ask") && !asJson) return converse(std::move(*search), streams);
  const auto answer = search->finder.answer(search->symptom, search->seen, search->paid);
  if (!answer) return tl::make_unexpected(answer.error());
  streams.out << (asJson ? faultJson(search->finder, search->symptom, search->seen, *answer)
                         : faultText(search->finder, search->symptom, *answer));
  return answer->conclusion.settled || answer->conclusion.next ? Exit::answer : Exit::noAnswer;
}

}  // namespace ohmkin::cli
