#pragma once
#include <circuit/tests.h>

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
Expected<Shown> shown(const GaugeCircuit& circuit, const TradeTest& test, const Condition& condition);

/// Whether the measure has an outcome besides those the limits part.
bool addsOutcome(Measure measure);
/// Ohms and ratios are read with an error in proportion, so they are parted by their logarithms.
bool byLogarithm(Measure measure);

}  // namespace ohmkin::circuit
