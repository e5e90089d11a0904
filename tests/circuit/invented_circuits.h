#pragma once
#include <circuit/diagnosis.h>

/// Circuits invented for the tests; none of them is anybody's car.
namespace ohmkin::test {

inline curve::Curve senderOf(double ohmsAt20) {
  return *curve::Curve::make(curve::Beta{ohms(ohmsAt20), celsius(20), 3300}, {celsius(20), celsius(125)});
}

inline gauge::Gauge gaugeOf(const gauge::Movement& movement, const curve::Curve& family, Angle low, Angle high) {
  std::vector<gauge::Mark> marks;
  for (const double t : {40.0, 60.0, 80.0, 100.0, 120.0})
    marks.push_back({t > 110 ? gauge::MarkKind::hot : gauge::MarkKind::numbered, "", celsius(t),
                     deflection(movement, *family.resistance(celsius(t)))});
  return *gauge::Gauge::make(marks, low, high, movement, family);
}

/// Cold to the left: −45° with the lead open, 50° grounded, 96 Ω half way; coils 90 and 160 Ω.
inline circuit::CircuitFacts crossedFacts() {
  const auto family = senderOf(700);
  const gauge::CrossedCoil coil{{50}, {-95}, ohms(96), ohms(90), ohms(160), {}};
  return {.gauge = gaugeOf(coil, family, {-46}, {52}), .sender = family};
}

inline circuit::CircuitFacts shuntedFacts() {
  circuit::CircuitFacts facts = crossedFacts();
  facts.feedShunt = ohms(220);
  facts.groundShunt = ohms(390);
  return facts;
}

inline circuit::CircuitFacts bimetalFacts() {
  const auto family = senderOf(150);
  const gauge::Bimetal bimetal{{-40}, {48}, ohms(13), volts(5)};
  return {.gauge = gaugeOf(bimetal, family, {-42}, {52}), .sender = family};
}

inline circuit::Predictions predictionsOf(const circuit::CircuitFacts& facts) {
  const auto made = circuit::GaugeCircuit::make(facts);
  return *circuit::Predictions::make(*made, *circuit::usualFaults(), *circuit::usualTests(*made));
}

}  // namespace ohmkin::test
