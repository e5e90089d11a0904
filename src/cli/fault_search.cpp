#include <cli/common_options.h>
#include <cli/fault_search.h>
#include <cli/movement_option.h>
#include <quantity/parse.h>
#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>

namespace ohmkin::cli {
namespace {

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
  return question;
}

/// None where no file was named or it is not there yet.
Expected<std::optional<workflow::FaultSession>> sessionKept(const std::string& file) {
  std::error_code ignored;
  if (file.empty() || !std::filesystem::exists(file, ignored)) return std::nullopt;
  const auto text = contentsOf(file);
  if (!text) return refuse("file-missing", "--session", "'" + file + "'", "a file that can be read");
  auto session = workflow::readFaultDocument(*text, file);
  if (!session) return tl::make_unexpected(session.error());
  return std::move(*session);
}

Expected<workflow::FaultSession> begun(const Arguments& arguments, const DisplayUnits& units) {
  auto kept = sessionKept(arguments.one("--session"));
  if (!kept) return tl::make_unexpected(kept.error());
  if (!*kept) {
    auto question = faultQuestion(arguments, units);
    if (!question) return tl::make_unexpected(question.error());
    return workflow::FaultSession{std::move(*question), std::nullopt, {}, {}, {}, {}, {}};
  }
  constexpr std::array kSaid{"--gauge", "--sender", "--running", "--supply", "--feed-shunt", "--ground-shunt"};
  for (const char* option : kSaid)
    if (arguments.has(option))
      return refuse("said-already", option, "'" + arguments.one(option) + "'",
                    "it only where the session begins; " + arguments.one("--session") + " has gone on from there");
  return std::move(**kept);
}

/// What the options add to what is kept.
Expected<void> addOptions(const Arguments& arguments, FaultSearch& search) {
  workflow::FaultSession& session = search.session;
  const auto addNew = [](std::vector<std::string>& to, const std::vector<std::string>& words) {
    for (const std::string& word : words)
      if (std::find(to.begin(), to.end(), word) == to.end()) to.push_back(word);
  };
  const auto& setups = search.finder.predictions().tests().setups;
  for (const std::string& code : arguments.all("--paid"))
    if (std::none_of(setups.begin(), setups.end(), [&](const circuit::Setup& s) { return s.code == code; }))
      return refuse("setup-unknown", "--paid", "'" + code + "'", "hood, dash-out or sender-out");
  addNew(session.paid, arguments.all("--paid"));
  for (const std::string& saw : arguments.all("--saw"))
    if (auto taken = answer(search, saw, "--saw"); !taken) return taken;
  addNew(session.tried, arguments.all("--tried"));
  if (const auto tried = workflow::triedOf(search.finder, session, "--tried"); !tried)
    return tl::make_unexpected(tried.error());
  return {};
}

}  // namespace

Expected<FaultSearch> faultSearch(const Arguments& arguments) {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  auto session = begun(arguments, *units);
  if (!session) return tl::make_unexpected(session.error());
  if (arguments.has("--symptom")) {
    const auto symptom = symptomNamed(arguments.one("--symptom"), "--symptom");
    if (!symptom) return tl::make_unexpected(symptom.error());
    session->symptom = *symptom;
  }
  auto movement = measuredMovement(arguments);
  if (!movement) return tl::make_unexpected(movement.error());
  auto jobs = jobsGiven(arguments);
  if (!jobs) return tl::make_unexpected(jobs.error());
  session->question.movement = std::move(*movement);
  session->question.jobs = std::move(*jobs);
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  auto finder = workflow::FaultFinder::make(*catalogue, session->question, *units);
  if (!finder) return tl::make_unexpected(finder.error());
  FaultSearch search{std::move(*finder), std::move(*session), arguments.one("--session")};
  if (const auto added = addOptions(arguments, search); !added) return tl::make_unexpected(added.error());
  return search;
}

Expected<void> answer(FaultSearch& search, const std::string& saw, const std::string& where) {
  const auto read = search.finder.read(saw, where);
  if (!read) return tl::make_unexpected(read.error());
  const circuit::TradeTest& test = search.finder.predictions().tests().tests[read->test];
  const std::string outcome = read->outcome ? test.outcomes[*read->outcome] : "";
  auto& seen = search.session.seen;
  std::erase_if(seen, [&](const auto& s) { return s.test == test.code; });
  seen.push_back({test.code, outcome, search.session.tried.size()});
  return {};
}

Expected<void> keep(const FaultSearch& search) {
  if (search.file.empty()) return {};
  const std::filesystem::path target(search.file);
  const std::filesystem::path fresh(search.file + ".new");
  std::error_code failed;
  {
    std::ofstream file(fresh, std::ios::binary | std::ios::trunc);
    file << workflow::faultDocument(search.session);
    if (!file.flush())
      return refuse("session-not-saved", "--session", "'" + search.file + "'", "a place that can be written");
  }
  std::filesystem::rename(fresh, target, failed);
  if (failed) return refuse("session-not-saved", "--session", "'" + search.file + "'", "a place that can be written");
  return {};
}

}  // namespace ohmkin::cli
