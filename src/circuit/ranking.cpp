#include <circuit/ranking.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::circuit {
namespace {

constexpr double kNegligible = 1e-5;  ///< a case of less than this, of the likeliest, does not move the next test
constexpr double kNoBits = 0.005;
constexpr double kSameAsGood = 0.15;

/// −x·log2 x, 0 at 0.
double surprise(double x) { return x > 0 ? -x * std::log2(x) : 0; }

/// Σ over outcomes of P(o)·H(repair | o) in bits, from joint weights repair by outcome.
double leftOver(const std::vector<double>& joint, std::size_t repairs, std::size_t outcomes) {
  double bits = 0;
  for (std::size_t o = 0; o < outcomes; ++o) {
    double sum = 0;
    for (std::size_t r = 0; r < repairs; ++r) {
      sum += joint[r * outcomes + o];
      bits += surprise(joint[r * outcomes + o]);
    }
    bits -= surprise(sum);
  }
  return bits;
}

}  // namespace

Gain::Gain(const Predictions& predictions, const Posterior& posterior)
    : predictions_(predictions), repairs_(predictions.faults().repairs.size()) {
  const double most = *std::max_element(posterior.cases.begin(), posterior.cases.end());
  const auto after = casesAfter(predictions, posterior.tried);
  std::vector<double> now(repairs_, 0);
  for (std::size_t c = 0; c < posterior.cases.size(); ++c) {
    if (posterior.cases[c] < kNegligible * most) continue;
    const Case& what = predictions.cases()[c];
    const auto repairOf = [&](std::size_t fault) {
      return predictions.faults().repairIndex(predictions.faults().faults[fault]);
    };
    auto left = leftOf(predictions.faults(), what, posterior.tried);
    if (left.empty()) left = what.faults;
    // Of two faults either may be found first.
    const double weight = posterior.cases[c] / static_cast<double>(left.size());
    live_.push_back({after[c], weight, repairOf(left.front()), repairOf(left.back()), left.size() == 2});
    now[live_.back().repair] += weight;
    if (live_.back().pair) now[live_.back().second] += weight;
  }
  now_ = leftOver(now, repairs_, 1);
}

double Gain::ofTest(std::size_t test) const {
  const std::size_t outcomes = predictions_.tests().tests[test].outcomes.size();
  std::vector<double> joint(repairs_ * outcomes, 0);
  for (const Live& live : live_) {
    const auto p = predictions_.outcomes(test, live.index);
    for (std::size_t o = 0; o < outcomes; ++o) {
      joint[live.repair * outcomes + o] += live.weight * p[o];
      if (live.pair) joint[live.second * outcomes + o] += live.weight * p[o];
    }
  }
  return std::max(0.0, now_ - leftOver(joint, repairs_, outcomes));
}

double Gain::ofBoth(std::size_t test, std::size_t then) const {
  const std::size_t first = predictions_.tests().tests[test].outcomes.size();
  const std::size_t second = predictions_.tests().tests[then].outcomes.size();
  const std::size_t outcomes = first * second;
  std::vector<double> joint(repairs_ * outcomes, 0);
  for (const Live& live : live_) {
    const auto p = predictions_.outcomes(test, live.index);
    const auto q = predictions_.outcomes(then, live.index);
    double* row = &joint[live.repair * outcomes];
    double* other = &joint[live.second * outcomes];
    for (std::size_t o = 0; o < first; ++o) {
      const double weight = live.weight * p[o];
      for (std::size_t u = 0; u < second; ++u) {
        row[o * second + u] += weight * q[u];
        if (live.pair) other[o * second + u] += weight * q[u];
      }
    }
  }
  return std::max(0.0, now_ - leftOver(joint, repairs_, outcomes));
}

double Gain::lossAfter(std::size_t test) const {
  const std::size_t outcomes = predictions_.tests().tests[test].outcomes.size();
  std::vector<double> right(repairs_ * outcomes, 0);
  std::vector<double> all(outcomes, 0);
  for (const Live& live : live_) {
    const auto p = predictions_.outcomes(test, live.index);
    const double whole = live.pair ? 2 * live.weight : live.weight;
    for (std::size_t o = 0; o < outcomes; ++o) {
      all[o] += whole * p[o];
      if (!live.pair) right[live.repair * outcomes + o] += whole * p[o];
    }
  }
  double loss = 0;
  for (std::size_t o = 0; o < outcomes; ++o) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t r = 0; r < repairs_; ++r)
      least =
          std::min(least, (all[o] - right[r * outcomes + o]) * (predictions_.faults().repairs[r].minutes + kComeback));
    loss += least;
  }
  return loss;
}

namespace {

/// Where what is suspected and a good circuit do the same, that is the reason; otherwise it is known already.
std::string whyNot(const Predictions& predictions, const Posterior& posterior, std::size_t test) {
  double unlike = 0;
  for (std::size_t c = 0; c < posterior.cases.size(); ++c)
    unlike += posterior.cases[c] * predictions.unlikeHealthy(test, c);
  if (unlike < kSameAsGood)
    return fmt::format("It tells nothing: a good circuit and what is suspected both show \"{}\".",
                       predictions.tests().tests[test].words[likeliest(predictions.healthy(test))]);
  return "It tells nothing new: what it would show follows from what was seen.";
}

class Bill {
 public:
  Bill(const Predictions& predictions, std::span<const Answer> answers, std::span<const std::string> paid)
      : tests_(predictions.tests()), paid_(paid.begin(), paid.end()) {
    for (const Answer& answer : answers) paid_.push_back(tests_.tests[answer.test].setup);
  }
  [[nodiscard]] double setup(std::size_t test) const {
    const std::string& code = tests_.tests[test].setup;
    return std::find(paid_.begin(), paid_.end(), code) == paid_.end() ? tests_.setupMinutes(code) : 0;
  }
  [[nodiscard]] double of(std::size_t test) const { return tests_.tests[test].minutes + setup(test); }
  [[nodiscard]] bool share(std::size_t test, std::size_t then) const {
    return setup(test) > 0 && tests_.tests[test].setup == tests_.tests[then].setup;
  }
  /// Of two that share a set-up.
  [[nodiscard]] double of(std::size_t test, std::size_t then) const { return of(test) + tests_.tests[then].minutes; }

 private:
  const TestBook& tests_;
  std::vector<std::string> paid_;
};

bool readsHot(Symptom symptom) { return symptom == Symptom::pegged || symptom == Symptom::high; }

/// Two tests behind a set-up that is not paid yet pay for it together.
void lookAhead(const Gain& gain, const Bill& bill, std::vector<TestValue>& values) {
  for (std::size_t a = 0; a < values.size(); ++a) {
    for (std::size_t b = a + 1; b < values.size(); ++b) {
      if (!bill.share(values[a].test, values[b].test)) continue;
      const double rate = gain.ofBoth(values[a].test, values[b].test) / bill.of(values[a].test, values[b].test);
      for (const auto& [one, other] : {std::pair{a, b}, {b, a}}) {
        // The better of the two comes first; the other would only borrow its worth.
        if (rate <= values[one].perMinute || values[one].bits < values[other].bits) continue;
        values[one].perMinute = rate;
        values[one].then = values[other].test;
      }
    }
  }
}

}  // namespace

Expected<std::vector<TestValue>> rank(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                                      std::span<const std::string> paid, std::span<const std::size_t> tried) {
  const auto posterior = weigh(predictions, symptom, answers, tried);
  if (!posterior) return tl::make_unexpected(posterior.error());
  const Gain gain(predictions, *posterior);
  const Bill bill(predictions, answers, paid);
  std::vector<TestValue> values;
  for (std::size_t t = 0; t < predictions.tests().tests.size(); ++t) {
    if (std::any_of(answers.begin(), answers.end(), [&](const Answer& a) { return a.test == t; })) continue;
    TestValue value;
    value.test = t;
    value.bits = gain.ofTest(t);
    value.minutes = bill.of(t);
    value.perMinute = value.bits / value.minutes;
    value.lossAfter = gain.lossAfter(t);
    if (value.bits < kNoBits) value.why = whyNot(predictions, *posterior, t);
    values.push_back(std::move(value));
  }
  lookAhead(gain, bill, values);
  std::stable_sort(values.begin(), values.end(),
                   [](const TestValue& a, const TestValue& b) { return a.perMinute > b.perMinute; });
  const auto coolant = predictions.tests().testWith("coolant");
  if (readsHot(symptom) && coolant) {
    const auto found =
        std::find_if(values.begin(), values.end(), [&](const TestValue& v) { return v.test == *coolant; });
    if (found != values.end()) std::rotate(values.begin(), found, found + 1);
  }
  return values;
}

}  // namespace ohmkin::circuit
