#include <cli/fault_words.h>
#include <cli/json_values.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <cmath>

namespace ohmkin::cli {
namespace {

constexpr std::size_t kSuspects = 6;
constexpr std::size_t kBar = 20;

std::string bar(double probability) {
  std::string out;
  for (std::size_t i = 0; i < kBar; ++i) out += static_cast<double>(i) + 0.5 < probability * kBar ? "█" : "·";
  return out;
}

const circuit::TradeTest& testOf(const workflow::FaultFinder& finder, std::size_t test) {
  return finder.predictions().tests().tests[test];
}

std::string outcomesText(const circuit::TradeTest& test) {
  std::string text;
  for (std::size_t i = 0; i < test.outcomes.size(); ++i)
    text += fmt::format("    {}={:<12} {}\n", test.code, test.outcomes[i], test.words[i]);
  return text + fmt::format("    {}={:<12} not sure\n", test.code, "unsure");
}

std::string nextText(const workflow::FaultFinder& finder, const circuit::TestValue& next) {
  const circuit::TradeTest& test = testOf(finder, next.test);
  std::string text = "\n" + wrapped("→ " + test.title, 2, 0);
  text += fmt::format("  {:g} min{}{}\n", next.minutes,
                      next.minutes > test.minutes ? fmt::format(", set-up ({}) counted in", test.setup) : "",
                      test.tools.empty() ? "" : "; " + test.tools);
  std::string parts;
  for (const circuit::Part part : test.examines) parts += (parts.empty() ? "" : ", ") + std::string(partName(part));
  if (!parts.empty()) text += wrapped("examines " + parts, 4, 2);
  text += outcomesText(test);
  if (next.then) text += wrapped("On the same set-up, after it: " + testOf(finder, *next.then).title, 4, 2);
  return text;
}

Json suspectsJson(const workflow::FaultFinder& finder, const workflow::FaultAnswer& answer) {
  Json suspects = Json::array();
  for (const circuit::Suspect& s : answer.posterior.faults) {
    const circuit::Fault& fault = finder.predictions().faults().faults[s.fault];
    suspects.push_back({{"fault", fault.code},
                        {"name", fault.name},
                        {"part", circuit::partCode(fault.part)},
                        {"probability", s.probability},
                        {"words", workflow::likelihoodWords(s.probability)},
                        {"repair", fault.repair}});
  }
  return suspects;
}

Json testsJson(const workflow::FaultFinder& finder, const std::vector<circuit::TestValue>& values) {
  Json tests = Json::array();
  for (const circuit::TestValue& v : values) {
    const circuit::TradeTest& test = testOf(finder, v.test);
    Json outcomes = Json::array();
    for (std::size_t i = 0; i < test.outcomes.size(); ++i)
      outcomes.push_back({{"result", test.outcomes[i]}, {"words", test.words[i]}});
    Json examines = Json::array();
    for (const circuit::Part part : test.examines) examines.push_back(circuit::partCode(part));
    tests.push_back({{"test", test.code},
                     {"title", test.title},
                     {"tools", test.tools},
                     {"setup", test.setup},
                     {"minutes", v.minutes},
                     {"bits", v.bits},
                     {"bits_per_minute", v.perMinute},
                     {"then", v.then ? Json(testOf(finder, *v.then).code) : Json()},
                     {"hazard", test.hazard},
                     {"why_no_weight", v.why},
                     {"examines", std::move(examines)},
                     {"results", std::move(outcomes)}});
  }
  return tests;
}

std::vector<std::string> faultCodes(const workflow::FaultFinder& finder, const std::vector<std::size_t>& faults) {
  std::vector<std::string> codes;
  codes.reserve(faults.size());
  for (const std::size_t f : faults) codes.push_back(finder.predictions().faults().faults[f].code);
  return codes;
}

/// The single faults come first among the cases.
template <class Each>
void eachSingle(const circuit::Predictions& predictions, Each each) {
  for (std::size_t c = 0; c < predictions.cases().size() && predictions.cases()[c].faults.size() == 1; ++c)
    each(c, predictions.faults().faults[predictions.cases()[c].faults.front()], predictions.cases()[c].severities[0]);
}

}  // namespace

std::string faultText(const workflow::FaultFinder& finder, circuit::Symptom symptom,
                      const workflow::FaultAnswer& answer) {
  std::string text = fmt::format("Gauge   {}\nSender  {}\nNeedle  {}\n\n", finder.gaugeName(), finder.senderName(),
                                 circuit::symptomName(symptom));
  for (std::size_t i = 0; i < std::min(kSuspects, answer.posterior.faults.size()); ++i) {
    const circuit::Suspect& s = answer.posterior.faults[i];
    text += fmt::format("{} {:<13} {}\n", bar(s.probability), workflow::likelihoodWords(s.probability),
                        finder.predictions().faults().faults[s.fault].name);
  }
  if (answer.posterior.twoFaults > 0.1)
    text +=
        wrapped(fmt::format("Two faults at once: {}.", workflow::likelihoodWords(answer.posterior.twoFaults)), 0, 0);
  text += "\n";
  for (const Finding& finding : answer.posterior.findings) text += wrapped("! " + finding.sentence, 2, 0);
  for (const std::string& caution : answer.conclusion.cautions) text += wrapped("! " + caution, 2, 0);
  if (answer.conclusion.next) text += nextText(finder, *answer.conclusion.next);
  else {
    text += "\n" + wrapped(answer.conclusion.sentence, 0, 0);
    if (!answer.torque.empty()) text += wrapped(answer.torque, 0, 0);
  }
  const bool ended = !answer.conclusion.next;
  for (const std::size_t f : ended ? answer.conclusion.indistinguishable : std::vector<std::size_t>{})
    text += wrapped(fmt::format("No test here tells it from this: {}.", finder.predictions().faults().faults[f].name),
                    2, 0);
  text += "\n";
  for (const Finding& finding : answer.findings)
    if (finding.code != "answer-does-not-fit") text += wrapped("- " + finding.sentence, 2, 0);
  return text;
}

std::string faultJson(const workflow::FaultFinder& finder, circuit::Symptom symptom,
                      std::span<const circuit::Answer> seen, const workflow::FaultAnswer& answer) {
  const circuit::Repair& repair = finder.predictions().faults().repairs[answer.conclusion.repair];
  Json out = document("ohmkin.fault", 1);
  out["gauge"] = finder.gaugeName();
  out["sender"] = finder.senderName();
  out["symptom"] = circuit::symptomCode(symptom);
  out["seen"] = Json::array();
  for (const circuit::Answer& a : seen)
    out["seen"].push_back({{"test", testOf(finder, a.test).code},
                           {"result", a.outcome ? testOf(finder, a.test).outcomes[*a.outcome] : "unsure"}});
  out["settled"] = answer.conclusion.settled;
  out["sentence"] = answer.conclusion.sentence;
  out["next"] = answer.conclusion.next ? Json(testOf(finder, answer.conclusion.next->test).code) : Json();
  out["repair"] = {{"repair", repair.code},
                   {"sentence", repair.sentence},
                   {"caution", repair.caution},
                   {"torque", answer.torque},
                   {"probability", answer.conclusion.probability},
                   {"minutes", repair.minutes},
                   {"expected_loss_minutes", answer.conclusion.expectedLoss},
                   {"cures", faultCodes(finder, answer.conclusion.faults)},
                   {"indistinguishable", faultCodes(finder, answer.conclusion.indistinguishable)}};
  out["two_faults"] = answer.posterior.twoFaults;
  out["suspects"] = suspectsJson(finder, answer);
  out["tests"] = testsJson(finder, answer.tests);
  out["cautions"] = answer.conclusion.cautions;
  out["findings"] = json(answer.findings);
  return text(out);
}

std::string predictionsText(const workflow::FaultFinder& finder) {
  const circuit::Predictions& p = finder.predictions();
  std::string text;
  for (std::size_t t = 0; t < p.tests().tests.size(); ++t) {
    const circuit::TradeTest& test = p.tests().tests[t];
    const std::size_t good = circuit::likeliest(p.healthy(t));
    text += wrapped(test.title, 2, 0) + fmt::format("  good: {}\n", test.words[good]);
    for (std::size_t o = 0; o < test.outcomes.size(); ++o) {
      std::string faults;
      eachSingle(p, [&](std::size_t c, const circuit::Fault& fault, double) {
        if (o != good && circuit::likeliest(p.outcomes(t, c)) == o && faults.find(fault.code) == std::string::npos)
          faults += (faults.empty() ? "" : ", ") + fault.code;
      });
      if (!faults.empty()) text += wrapped(fmt::format("{}: {}", test.words[o], faults), 6, 4);
    }
  }
  return text;
}

std::string predictionsJson(const workflow::FaultFinder& finder) {
  const circuit::Predictions& p = finder.predictions();
  Json out = document("ohmkin.fault-predictions", 1);
  out["gauge"] = finder.gaugeName();
  out["sender"] = finder.senderName();
  out["tests"] = Json::array();
  for (std::size_t t = 0; t < p.tests().tests.size(); ++t) {
    Json rows = Json::array();
    eachSingle(p, [&](std::size_t c, const circuit::Fault& fault, double severity) {
      const auto outcomes = p.outcomes(t, c);
      rows.push_back({{"fault", fault.code},
                      {"severity", std::isinf(severity) ? Json("open") : Json(severity)},
                      {"probabilities", std::vector<double>(outcomes.begin(), outcomes.end())}});
    });
    out["tests"].push_back({{"test", p.tests().tests[t].code},
                            {"results", p.tests().tests[t].outcomes},
                            {"good", p.healthy(t)},
                            {"faults", std::move(rows)}});
  }
  return text(out);
}

std::string wiringText(const circuit::WirePlan& plan) {
  std::string text = fmt::format("Fuse  {:g} A, at the supply's end of the feed\n", inAmperes(plan.fuse));
  for (const circuit::Wire& w : plan.wires)
    text += fmt::format("{:<7} {} gauge, {:g} m, drops {:.3f} V at {:.2f} A\n", w.name, w.awg, w.length.value(),
                        inVolts(w.drop), inAmperes(w.current)) +
            wrapped(fmt::format("from {} to {}. {}", w.from, w.to, w.note), 8, 8);
  for (const Finding& finding : plan.findings)
    text += wrapped((finding.severity == Severity::note ? "- " : "! ") + finding.sentence, 2, 0);
  return text;
}

std::string wiringJson(const circuit::WirePlan& plan) {
  Json out = document("ohmkin.fault-wiring", 1);
  out["fuse_a"] = inAmperes(plan.fuse);
  out["wires"] = Json::array();
  for (const circuit::Wire& w : plan.wires)
    out["wires"].push_back({{"name", w.name},
                            {"from", w.from},
                            {"to", w.to},
                            {"awg", w.awg},
                            {"length_mm", inMillimetres(w.length)},
                            {"current_a", inAmperes(w.current)},
                            {"drop_v", inVolts(w.drop)},
                            {"note", w.note}});
  out["findings"] = json(plan.findings);
  return text(out);
}

}  // namespace ohmkin::cli
