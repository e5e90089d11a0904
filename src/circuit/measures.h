#pragma once
#include <circuit/tests.h>
#include <deque>

/// How a test is looked at. Not for other rooms.
namespace ohmkin::circuit {

/// What is measured under a condition, before it is parted into outcomes: a number in the measure's unit, or for a
/// needle nothing turns the places where it may have stayed.
struct Shown {
  struct Value {
    double value = 0;
    double weight = 1;
  };
  std::vector<Value> values;
  double last = 0;  ///< probability of the outcome the measure adds: "stays", "pulsing", "level-low"
};
/// A circuit with what is wrong with it, and what was solved for the tests so far: many begin alike.
class Moments {
 public:
  Moments(const GaugeCircuit& circuit, const Condition& condition) : circuit_(circuit), condition_(condition) {}

  struct Moment {
    std::vector<Step> steps;
    bool bench = false;
    bool reversed = false;
    Condition condition;
    Solution solution;
  };
  /// Solved once for the same steps. Refuses as solve() does.
  Expected<const Moment*> at(const TradeTest& test, const std::vector<Step>& steps);
  /// The network after the steps, unsolved.
  [[nodiscard]] Network networkAt(const std::vector<Step>& steps) const;

  [[nodiscard]] const GaugeCircuit& circuit() const { return circuit_; }
  [[nodiscard]] const Condition& condition() const { return condition_; }

 private:
  const GaugeCircuit& circuit_;
  const Condition& condition_;
  std::deque<Moment> solved_;
};

Expected<Shown> shown(Moments& moments, const TradeTest& test);
/// predict() for many tests of one condition.
Expected<std::vector<double>> predict(Moments& moments, const TradeTest& test);

/// Whether the measure has an outcome besides those the limits part.
bool addsOutcome(Measure measure);
/// Ohms and ratios are read with an error in proportion, so they are parted by their logarithms.
bool byLogarithm(Measure measure);

}  // namespace ohmkin::circuit
