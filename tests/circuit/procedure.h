#pragma once
#include <map>

#include "invented_circuits.h"

/// The procedure carried to its end, with answers made up; by the next best test or down the book's list.
namespace ohmkin::test {

struct Run {
  double minutes = 0;  ///< set-ups counted once
  int tests = 0;
  std::size_t repair = 0;
  bool settled = false;
};

class Procedure {
 public:
  Procedure(const circuit::Predictions& predictions, bool listed) : predictions_(predictions), listed_(listed) {}

  /// `answers`: what each test of the book would be answered with.
  Run run(circuit::Symptom symptom, const std::vector<std::size_t>& answers) {
    Run run;
    std::vector<circuit::Answer> seen;
    std::vector<std::string> paid;
    for (;;) {
      const circuit::Conclusion& now = concluded(symptom, seen);
      run.repair = now.repair;
      run.settled = now.settled;
      if (!now.next) return run;
      const std::size_t next = listed_ ? seen.size() : now.next->test;
      const circuit::TradeTest& test = predictions_.tests().tests[next];
      run.minutes += test.minutes;
      if (std::find(paid.begin(), paid.end(), test.setup) == paid.end()) {
        run.minutes += predictions_.tests().setupMinutes(test.setup);
        paid.push_back(test.setup);
      }
      ++run.tests;
      seen.push_back({next, answers[next]});
    }
  }

 private:
  const circuit::Conclusion& concluded(circuit::Symptom symptom, const std::vector<circuit::Answer>& seen) {
    std::string key(1, static_cast<char>(symptom));
    for (const circuit::Answer& a : seen) key += {static_cast<char>(a.test), static_cast<char>(*a.outcome)};
    const auto known = known_.find(key);
    if (known != known_.end()) return known->second;
    return known_.emplace(key, *circuit::conclude(predictions_, symptom, seen)).first->second;
  }

  const circuit::Predictions& predictions_;
  bool listed_;
  std::map<std::string, circuit::Conclusion> known_;
};

inline std::vector<std::size_t> likeliestAnswers(const circuit::Predictions& predictions, std::size_t ofCase) {
  std::vector<std::size_t> answers;
  for (std::size_t t = 0; t < predictions.tests().tests.size(); ++t)
    answers.push_back(circuit::likeliest(predictions.outcomes(t, ofCase)));
  return answers;
}

}  // namespace ohmkin::test
