#include <catalog/gauges.h>
#include <catalog/senders.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/find_fault.h>
#include <workflow/job_work.h>
#include <workflow/sides.h>
#include <algorithm>
#include <array>

namespace ohmkin::workflow {
namespace {

/// Where the needle goes with the key off, as the catalogue has it of the gauge.
std::optional<double> restPlaceOf(const catalog::Catalogue& catalogue, const std::string& gauge) {
  const auto records = catalog::gaugesNamed(catalogue, gauge);
  if (records.empty()) return std::nullopt;
  if (records.front().keyOff == catalog::KeyOff::cold) return 0;
  if (records.front().keyOff == catalog::KeyOff::hot) return 1;
  return std::nullopt;
}

/// The torque of the part in question, with where it comes from.
std::string torqueOf(const catalog::Catalogue& catalogue, const std::string& sender, const DisplayUnits& units) {
  const auto parts = catalog::sendersNumbered(catalogue, sender);
  if (parts.empty() || !parts.front().torqueLow || !parts.front().torqueHigh) return {};
  return fmt::format("Torque of {}: {} to {} ({}).", parts.front().id.text, print(*parts.front().torqueLow, units),
                     print(*parts.front().torqueHigh, units), catalog::cite(parts.front().source));
}

bool screwsASender(const std::string& repair) {
  return repair == "new-sender" || repair == "right-sender" || repair == "clean-thread";
}

Refusal unknownWord(const std::string& where, const std::string& word, std::string_view expected,
                    const std::vector<std::string>& known) {
  return {"answer-unknown", where, fmt::format("'{}'", word),
          fmt::format("{}{}", expected, perhaps(nearMisses(word, known)))};
}

}  // namespace

Expected<FaultFinder> FaultFinder::make(const catalog::Catalogue& catalogue, const FaultQuestion& question,
                                        const DisplayUnits& units) {
  auto gauge = findGauge(catalogue, question.gauge, question.movement);
  if (!gauge) return tl::make_unexpected(gauge.error());
  FaultFinder finder;
  finder.gaugeName_ = gauge->name;
  finder.senderName_ = gauge->family.name;
  circuit::CircuitFacts facts{.gauge = gauge->gauge, .sender = gauge->curve.curve};
  if (!question.sender.empty()) {
    auto sender = findSender(catalogue, question.sender);
    if (!sender) return tl::make_unexpected(sender.error());
    finder.senderName_ = sender->name;
    facts.sender = sender->curve.curve;
    finder.torque_ = torqueOf(catalogue, question.sender, units);
    if (sender->family.id != gauge->family.id)
      finder.assumed_.push_back({"sender-of-another-family", Severity::warning,
                                 fmt::format("The sender is of family {}, the gauge was built for {}: it misreads with "
                                             "nothing else wrong.",
                                             sender->family.name, gauge->family.name),
                                 question.sender, sender->curve.source});
  }
  facts.running = question.running.value_or(facts.running);
  facts.supply = question.supply.value_or(facts.supply);
  facts.feedShunt = question.feedShunt;
  facts.groundShunt = question.groundShunt;
  facts.restPlace = restPlaceOf(catalogue, question.gauge);
  auto circuit = circuit::GaugeCircuit::make(facts);
  if (!circuit) return tl::make_unexpected(circuit.error());
  auto faults = circuit::usualFaults();
  if (!faults) return tl::make_unexpected(faults.error());
  std::vector<circuit::JobCount> jobs = shopJobs(catalogue);
  jobs.insert(jobs.end(), question.jobs.begin(), question.jobs.end());
  faults = circuit::learned(std::move(*faults), jobs);
  if (!faults) return tl::make_unexpected(faults.error());
  auto tests = circuit::usualTests(*circuit);
  if (!tests) return tl::make_unexpected(tests.error());
  auto predictions = circuit::Predictions::make(*circuit, std::move(*faults), std::move(*tests));
  if (!predictions) return tl::make_unexpected(predictions.error());
  finder.assumed_.insert(finder.assumed_.end(), circuit->findings().begin(), circuit->findings().end());
  finder.assumed_.push_back({"priors-from-memory", Severity::note,
                             "How often each fault occurs, and the minutes, are a judgement, not a record.", "",
                             kFromMemory});
  finder.circuit_ = std::make_shared<const circuit::GaugeCircuit>(std::move(*circuit));
  finder.predictions_ = std::make_shared<const circuit::Predictions>(std::move(*predictions));
  return finder;
}

Expected<FaultAnswer> FaultFinder::answer(circuit::Symptom symptom, std::span<const circuit::Answer> seen,
                                          std::span<const std::string> paid, std::span<const std::size_t> tried) const {
  auto posterior = circuit::weigh(*predictions_, symptom, seen, tried);
  if (!posterior) return tl::make_unexpected(posterior.error());
  auto tests = circuit::rank(*predictions_, symptom, seen, paid, tried);
  if (!tests) return tl::make_unexpected(tests.error());
  auto conclusion = circuit::conclude(*predictions_, symptom, seen, paid, tried);
  if (!conclusion) return tl::make_unexpected(conclusion.error());
  FaultAnswer answer{std::move(*posterior), std::move(*tests), std::move(*conclusion), {}, {}};
  if (screwsASender(predictions_->faults().repairs[answer.conclusion.repair].code)) answer.torque = torque_;
  answer.findings = answer.posterior.findings;
  answer.findings.insert(answer.findings.end(), assumed_.begin(), assumed_.end());
  return answer;
}

Expected<circuit::Answer> FaultFinder::read(const std::string& saw, const std::string& where) const {
  const auto at = saw.find('=');
  if (at == std::string::npos)
    return refuse("answer-unreadable", where, fmt::format("'{}'", saw), "TEST=RESULT, for example unplug=stays");
  const circuit::TestBook& book = predictions_->tests();
  const auto test = book.testWith(saw.substr(0, at));
  if (!test) {
    std::vector<std::string> known;
    known.reserve(book.tests.size());
    for (const circuit::TradeTest& t : book.tests) known.push_back(t.code);
    return tl::make_unexpected(unknownWord(where, saw.substr(0, at), "a test of this circuit", known));
  }
  const std::string outcome = saw.substr(at + 1);
  if (outcome == "unsure") return circuit::Answer{*test, std::nullopt};
  const auto& outcomes = book.tests[*test].outcomes;
  const auto found = std::find(outcomes.begin(), outcomes.end(), outcome);
  if (found == outcomes.end()) {
    std::string all;
    for (const std::string& o : outcomes) all += o + ", ";
    return tl::make_unexpected(Refusal{"answer-unknown", where, fmt::format("'{}'", outcome), all + "or unsure"});
  }
  return circuit::Answer{*test, static_cast<std::size_t>(found - outcomes.begin())};
}

Expected<circuit::WirePlan> FaultFinder::wiring(const circuit::WireLengths& lengths) const {
  // The most it draws: lead grounded, a shunt on its posts drawing beside the coil.
  const auto ohmsOf = [&](circuit::Part part) { return circuit_->healthy().ohms[static_cast<std::size_t>(part)]; };
  const double volts =
      circuit_->regulated() ? circuit_->benchVolts() : std::max(circuit_->benchVolts(), circuit::kChargingVolts);
  const double amperes = volts / ohmsOf(circuit::Part::feedCoil) + volts / ohmsOf(circuit::Part::feedShunt);
  return circuit::directWiring(ohmkin::amperes(amperes), circuit_->regulated(), lengths);
}

std::string_view likelihoodWords(double probability) {
  struct Step {
    double from;
    std::string_view words;
  };
  constexpr std::array kSteps{Step{0.85, "very likely"}, Step{0.4, "likely"}, Step{0.1, "possible"},
                              Step{0.02, "unlikely"}, Step{0, "very unlikely"}};
  return std::find_if(kSteps.begin(), kSteps.end() - 1, [&](const Step& s) { return probability >= s.from; })->words;
}

}  // namespace ohmkin::workflow
