#include <circuit/diagnosis.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmkin::circuit {
namespace {

constexpr double kMismatch = 0.1;  // an answer less likely than this does not fit
constexpr double kWorthNaming = 0.01;
constexpr double kWorthAsking = 0.01;  // bits

Expected<std::vector<Answer>> lastOfEach(const Predictions& predictions, std::span<const Answer> answers) {
  std::vector<Answer> last;
  for (const Answer& answer : answers) {
    if (answer.test >= predictions.tests().tests.size())
      return refuse("test-unknown", "answer", fmt::format("test {}", answer.test), "a test of the book");
    const TradeTest& test = predictions.tests().tests[answer.test];
    if (answer.outcome && *answer.outcome >= test.outcomes.size())
      return refuse("outcome-unknown", test.code, fmt::format("outcome {}", *answer.outcome), "an outcome of the test");
    std::erase_if(last, [&](const Answer& a) { return a.test == answer.test; });
    last.push_back(answer);
  }
  return last;
}

/// Answers the likeliest case would rather not have given.
std::vector<Finding> contradictions(const Predictions& predictions, const Posterior& posterior,
                                    const std::vector<Answer>& answers) {
  std::vector<Finding> findings;
  const auto best = static_cast<std::size_t>(std::max_element(posterior.cases.begin(), posterior.cases.end()) -
                                             posterior.cases.begin());
  for (const Answer& answer : answers) {
    const std::span tried(posterior.tried);
    const std::size_t seenIn = casesAfter(predictions, tried.first(std::min(answer.afterTried, tried.size())))[best];
    if (!answer.outcome || predictions.outcomes(answer.test, seenIn)[*answer.outcome] >= kMismatch) continue;
    const TradeTest& test = predictions.tests().tests[answer.test];
    findings.push_back({"answer-does-not-fit", Severity::caution,
                        fmt::format("What was seen does not agree: \"{}\" at \"{}\" does not fit the rest. Look again.",
                                    test.words[*answer.outcome], test.title),
                        test.code, "the circuit, simulated"});
  }
  return findings;
}

/// A case that the repairs tried cure all of is there because one of them was made wrongly.
std::vector<std::size_t> stillThere(const Predictions& predictions, const Case& what,
                                    std::span<const std::size_t> tried) {
  std::vector<std::size_t> left = leftOf(predictions.faults(), what, tried);
  return left.empty() ? what.faults : left;
}

std::vector<Suspect> suspectsOf(const Predictions& predictions, const Posterior& posterior) {
  std::vector<Suspect> suspects;
  for (std::size_t f = 0; f < predictions.faults().faults.size(); ++f) suspects.push_back({f, 0});
  for (std::size_t c = 0; c < posterior.cases.size(); ++c)
    for (const std::size_t f : stillThere(predictions, predictions.cases()[c], posterior.tried))
      suspects[f].probability += posterior.cases[c];
  std::stable_sort(suspects.begin(), suspects.end(),
                   [](const Suspect& a, const Suspect& b) { return a.probability > b.probability; });
  return suspects;
}

}  // namespace

std::vector<std::size_t> leftOf(const FaultBook& book, const Case& what, std::span<const std::size_t> tried) {
  std::vector<std::size_t> left;
  for (const std::size_t f : what.faults)
    if (std::find(tried.begin(), tried.end(), book.repairIndex(book.faults[f])) == tried.end()) left.push_back(f);
  return left;
}

std::vector<std::size_t> casesAfter(const Predictions& predictions, std::span<const std::size_t> tried) {
  const auto& cases = predictions.cases();
  std::vector<std::size_t> after(cases.size());
  std::iota(after.begin(), after.end(), std::size_t{0});
  for (std::size_t c = 0; c < cases.size() && !tried.empty(); ++c) {
    if (cases[c].faults.size() != 2) continue;
    const auto left = leftOf(predictions.faults(), cases[c], tried);
    if (left.size() != 1) continue;
    const double severity = cases[c].severities[left[0] == cases[c].faults[0] ? 0 : 1];
    for (std::size_t s = 0; s < cases.size() && cases[s].faults.size() == 1; ++s)
      if (cases[s].faults[0] == left[0] && cases[s].severities[0] == severity) after[c] = s;
  }
  return after;
}

namespace {

void multiply(const Predictions& predictions, Posterior& posterior, const std::vector<Answer>& answers) {
  for (const Answer& answer : answers) {
    if (!answer.outcome) continue;
    const std::span tried(posterior.tried);
    const auto seenIn = casesAfter(predictions, tried.first(std::min(answer.afterTried, tried.size())));
    double sum = 0;
    for (std::size_t c = 0; c < posterior.cases.size(); ++c)
      sum += posterior.cases[c] *= predictions.outcomes(answer.test, seenIn[c])[*answer.outcome];
    for (double& p : posterior.cases) p /= sum;
  }
}

/// Two at once that none of the repairs tried has cured; otherwise the repair that is left.
void sortOut(const Predictions& predictions, Posterior& posterior) {
  const FaultBook& book = predictions.faults();
  posterior.repairs.assign(book.repairs.size(), 0);
  for (std::size_t c = 0; c < posterior.cases.size(); ++c) {
    const auto left = stillThere(predictions, predictions.cases()[c], posterior.tried);
    if (left.size() == 2) posterior.twoFaults += posterior.cases[c];
    else posterior.repairs[book.repairIndex(book.faults[left[0]])] += posterior.cases[c];
  }
}

}  // namespace

Expected<Posterior> weigh(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                          std::span<const std::size_t> tried) {
  const auto last = lastOfEach(predictions, answers);
  if (!last) return tl::make_unexpected(last.error());
  Posterior posterior;
  posterior.tried.assign(tried.begin(), tried.end());
  for (const std::size_t repair : tried)
    if (repair >= predictions.faults().repairs.size())
      return refuse("repair-unknown", "repairs tried", fmt::format("repair {}", repair), "a repair of the book");
  for (const Case& c : predictions.cases())
    posterior.cases.push_back(c.prior[static_cast<std::size_t>(symptom)] *
                              (leftOf(predictions.faults(), c, tried).empty() ? kBotched : 1));
  const double all = std::accumulate(posterior.cases.begin(), posterior.cases.end(), 0.0);
  for (double& p : posterior.cases) p /= all;
  multiply(predictions, posterior, *last);
  posterior.faults = suspectsOf(predictions, posterior);
  sortOut(predictions, posterior);
  posterior.findings = contradictions(predictions, posterior, *last);
  return posterior;
}

namespace {

/// Minutes beyond those the right repair takes: where it does not help, its own and a comeback.
double lossOf(const Predictions& predictions, const Posterior& posterior, std::size_t repair) {
  return (1 - posterior.repairs[repair]) * (predictions.faults().repairs[repair].minutes + kComeback);
}

std::size_t cheapestRepair(const Predictions& predictions, const Posterior& posterior) {
  std::size_t best = 0;
  for (std::size_t r = 1; r < posterior.repairs.size(); ++r)
    if (lossOf(predictions, posterior, r) < lossOf(predictions, posterior, best)) best = r;
  return best;
}

void nameFaults(const Predictions& predictions, const Posterior& posterior, Conclusion& conclusion) {
  for (const Suspect& suspect : posterior.faults)
    if (predictions.faults().repairIndex(predictions.faults().faults[suspect.fault]) == conclusion.repair &&
        (conclusion.faults.empty() || suspect.probability > kWorthNaming))
      conclusion.faults.push_back(suspect.fault);
  for (const Suspect& suspect : posterior.faults) {
    if (suspect.probability < kWorthNaming) break;
    const bool cured =
        std::find(conclusion.faults.begin(), conclusion.faults.end(), suspect.fault) != conclusion.faults.end();
    if (!cured && alike(predictions, conclusion.faults.front(), suspect.fault))
      conclusion.indistinguishable.push_back(suspect.fault);
  }
}

/// Two at once: the likeliest pair.
std::vector<std::size_t> likeliestPair(const Predictions& predictions, const Posterior& posterior) {
  if (posterior.twoFaults <= 0.5) return {};
  std::size_t best = posterior.cases.size();
  for (std::size_t c = 0; c < posterior.cases.size(); ++c)
    if (leftOf(predictions.faults(), predictions.cases()[c], posterior.tried).size() == 2 &&
        (best == posterior.cases.size() || posterior.cases[c] > posterior.cases[best]))
      best = c;
  return best == posterior.cases.size() ? std::vector<std::size_t>{} : predictions.cases()[best].faults;
}

std::string sentenceOf(const Predictions& predictions, const Conclusion& conclusion) {
  const FaultBook& book = predictions.faults();
  if (conclusion.next) return predictions.tests().tests[conclusion.next->test].title;
  if (conclusion.both.size() == 2) {
    const Fault& one = book.faults[conclusion.both[0]];
    const Fault& two = book.faults[conclusion.both[1]];
    return fmt::format("Most likely two things at once: {}, and {}. {} {} Then look again.", one.name, two.name,
                       book.repairs[book.repairIndex(one)].sentence, book.repairs[book.repairIndex(two)].sentence);
  }
  const std::string& repair = book.repairs[conclusion.repair].sentence;
  const std::string& fault = book.faults[conclusion.faults.front()].name;
  if (conclusion.settled) return fmt::format("Most likely {}. {}", fault, repair);
  return fmt::format("No test left tells more. Most likely {}, but it is not sure. {}", fault, repair);
}

/// Of what is proposed now: the test, or where none is left the repair.
void addCautions(const Predictions& predictions, Conclusion& conclusion) {
  const std::string& caution = conclusion.next ? predictions.tests().tests[conclusion.next->test].hazard
                                               : predictions.faults().repairs[conclusion.repair].caution;
  if (!caution.empty()) conclusion.cautions.push_back(caution);
}

bool hangsOnOne(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                std::span<const std::size_t> tried, std::size_t repair) {
  for (std::size_t i = 0; i < answers.size(); ++i) {
    if (!answers[i].outcome) continue;
    std::vector<Answer> others(answers.begin(), answers.end());
    std::erase_if(others, [&](const Answer& a) { return a.test == answers[i].test; });
    const auto without = weigh(predictions, symptom, others, tried);
    if (without && without->repairs[repair] < kWithoutOne) return true;
  }
  return false;
}

}  // namespace

Expected<Conclusion> conclude(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                              std::span<const std::string> paid, std::span<const std::size_t> tried) {
  const auto posterior = weigh(predictions, symptom, answers, tried);
  if (!posterior) return tl::make_unexpected(posterior.error());
  const auto ranked = rank(predictions, symptom, answers, paid, tried);
  if (!ranked) return tl::make_unexpected(ranked.error());
  Conclusion conclusion;
  conclusion.repair = cheapestRepair(predictions, *posterior);
  conclusion.probability = posterior->repairs[conclusion.repair];
  conclusion.expectedLoss = lossOf(predictions, *posterior, conclusion.repair);
  const bool worthAsking =
      std::any_of(ranked->begin(), ranked->end(), [](const TestValue& v) { return v.bits > kWorthAsking; });
  const bool cheaperToAsk = std::any_of(ranked->begin(), ranked->end(), [&](const TestValue& v) {
    return v.minutes + v.lossAfter < conclusion.expectedLoss;
  });
  conclusion.settled = conclusion.probability >= kSureEnough && !(worthAsking && cheaperToAsk);
  if (conclusion.settled && worthAsking)
    conclusion.settled = !hangsOnOne(predictions, symptom, answers, tried, conclusion.repair);
  if (!conclusion.settled && worthAsking) conclusion.next = ranked->front();
  nameFaults(predictions, *posterior, conclusion);
  addCautions(predictions, conclusion);
  conclusion.both = likeliestPair(predictions, *posterior);
  conclusion.sentence = sentenceOf(predictions, conclusion);
  return conclusion;
}

}  // namespace ohmkin::circuit
