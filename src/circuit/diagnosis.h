#pragma once
#include <circuit/tests.h>
#include <span>

/// From what was seen to what is the matter, and to the next best test.
namespace ohmkin::circuit {

class Moments;

/// One thing that may be the matter: a fault with a severity, or two faults at once.
struct Case {
  std::vector<std::size_t> faults;  ///< one or two, in FaultBook's order
  std::vector<double> severities;
  std::array<double, kSymptoms> prior{};  ///< for each symptom; sums to 1 over all cases
};

/// Every case and what every test would show under it; made once for a circuit.
class Predictions {
 public:
  /// `pairs`: how often a second fault sits beside the first, 0 … 0.5. From memory, no source.
  static Expected<Predictions> make(const GaugeCircuit& circuit, FaultBook faults, TestBook tests, double pairs = 0.04);

  [[nodiscard]] const FaultBook& faults() const { return faults_; }
  [[nodiscard]] const TestBook& tests() const { return tests_; }
  [[nodiscard]] const std::vector<Case>& cases() const { return cases_; }
  /// Of each outcome of a test under a case, kMisread included.
  [[nodiscard]] std::span<const double> outcomes(std::size_t test, std::size_t ofCase) const;
  /// Of each outcome where nothing is wrong.
  [[nodiscard]] const std::vector<double>& healthy(std::size_t test) const { return healthy_[test]; }
  /// How far a case's outcomes are from those of a good circuit: half the sum of the differences, 0 … 1.
  [[nodiscard]] double unlikeHealthy(std::size_t test, std::size_t ofCase) const;
  [[nodiscard]] bool regulated() const { return regulated_; }

 private:
  [[nodiscard]] Expected<void> addRow(Moments& moments, std::vector<std::vector<double>>& tests) const;
  void settleExamines();
  FaultBook faults_;
  TestBook tests_;
  std::vector<Case> cases_;
  std::vector<std::vector<double>> table_;  ///< of each test, cases by outcomes
  std::vector<std::vector<double>> healthy_;
  bool regulated_ = false;
};

/// What was seen; none: looked at, but not sure. A later answer to the same test replaces the earlier one.
struct Answer {
  std::size_t test = 0;
  std::optional<std::size_t> outcome;
  std::size_t afterTried = 0;  ///< how many of the repairs tried were made before it
};

struct Suspect {
  std::size_t fault = 0;
  double probability = 0;  ///< that it is there, alone or beside another
};

struct Posterior {
  std::vector<double> cases;       ///< sums to 1
  std::vector<Suspect> faults;     ///< most likely first
  std::vector<double> repairs;     ///< of each repair of the book: that it alone puts things right
  double twoFaults = 0;            ///< that there are two
  std::vector<Finding> findings;   ///< answers that contradict one another or fit nothing well
  std::vector<std::size_t> tried;  ///< repairs of the book that were made and did not help
};
/// A repair that did not help was made wrongly so often. From memory, no source.
inline constexpr double kBotched = 0.03;
/// `tried`: repairs of the book that were made and did not help, in their order. What a repair cures alone is ruled out
/// as far as repairs are made well; of two faults the other is left, and what was seen after it shows that one alone.
/// Refuses an answer to a test or an outcome that is not there, and a repair that is not.
Expected<Posterior> weigh(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                          std::span<const std::size_t> tried = {});
/// The faults of a case that the repairs tried leave; none where they cure it all.
std::vector<std::size_t> leftOf(const FaultBook& book, const Case& what, std::span<const std::size_t> tried);
/// Of every case, the one whose outcomes are seen after the repairs: for two faults of which one is cured, the other
/// alone, with the severity it had.
std::vector<std::size_t> casesAfter(const Predictions& predictions, std::span<const std::size_t> tried);

struct TestValue {
  std::size_t test = 0;
  double lossAfter = 0;  ///< Conclusion::expectedLoss as it is expected to be after it
  double bits = 0;       ///< expected information about the repair
  double minutes = 0;    ///< with the set-up where it is not paid yet
  double perMinute = 0;  ///< bits, looking ahead: with the best second test on the same set-up where that is better
  std::optional<std::size_t> then;  ///< that second test
  std::string why;                  ///< empty, or why it has no weight: "a good one does the same"
};

/// Every test not yet answered, best first. `paid`: set-ups already made; those of answered tests count as paid. Where
/// it reads hot and the coolant has not been looked at, that test comes before any other.
Expected<std::vector<TestValue>> rank(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                                      std::span<const std::string> paid = {}, std::span<const std::size_t> tried = {});

/// What a repair that did not help costs besides its own minutes: the comeback. From memory, no source.
inline constexpr double kComeback = 60;
/// A repair is proposed as certain enough only above this.
inline constexpr double kSureEnough = 0.85;

/// Where the repair would be less likely than this without one of the answers, the conclusion hangs on that answer,
/// which may be wrong: another test is asked first. A judgement, no source.
inline constexpr double kWithoutOne = 0.4;

struct Conclusion {
  bool settled = false;           ///< one repair is clearly the cheapest by expected cost
  std::size_t repair = 0;         ///< of the book: the cheapest
  double probability = 0;         ///< that it puts things right
  double expectedLoss = 0;        ///< minutes of its work and of a comeback, weighed by how likely it does not help
  std::optional<TestValue> next;  ///< none where settled or nothing is left to ask
  std::string sentence;           ///< what to do
  std::vector<std::string> cautions;
  std::vector<std::size_t> both;    ///< the likeliest two faults, where two at once are likelier than one; else empty
  std::vector<std::size_t> faults;  ///< those the repair cures, most likely first
  /// Other faults that every test left, and every answer, leaves as likely as before.
  std::vector<std::size_t> indistinguishable;
};
Expected<Conclusion> conclude(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                              std::span<const std::string> paid = {}, std::span<const std::size_t> tried = {});

/// The outcome of the highest probability; the first of equals.
std::size_t likeliest(std::span<const double> outcomes);

/// Whether no test of the book tells the two apart: for some severity of each, every test has the same most likely
/// outcome.
bool alike(const Predictions& predictions, std::size_t fault, std::size_t other);

}  // namespace ohmkin::circuit
