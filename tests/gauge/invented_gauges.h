#pragma once
#include <gauge/gauge.h>

/// Gauges invented for the tests; none of them is anybody's.
namespace ohmkin::test {

/// Cold to the left, hot to the right: −45° with the lead open, 50° grounded, 96 Ω half way.
inline gauge::CrossedCoil inventedCoil() { return {{50}, {-95}, ohms(96), ohms(90), ohms(160), {}}; }
inline gauge::Bimetal inventedBimetal() { return {{-40}, {48}, ohms(13), volts(5)}; }
inline gauge::BenchPoints inventedBench() {
  return {ohms(80), {{0.05, {44}}, {0.2, {30}}, {0.45, {4}}, {0.7, {-21}}, {0.9, {-36}}}};
}

/// Falling, B-parameter form: 700 Ω at 20 °C.
inline curve::Curve inventedFamily(double b = 3300) {
  return *curve::Curve::make(curve::Beta{ohms(700), celsius(20), b}, {celsius(20), celsius(125)});
}

/// Few ohms, as a bimetal's sender has: 150 Ω at 20 °C.
inline curve::Curve inventedLowFamily() {
  return *curve::Curve::make(curve::Beta{ohms(150), celsius(20), 3300}, {celsius(20), celsius(125)});
}

/// A dial printed so that the movement tells the truth of its family at every mark.
inline std::vector<gauge::Mark> trueMarks(const gauge::Movement& movement, const curve::Curve& family) {
  std::vector<gauge::Mark> marks;
  for (const double t : {40.0, 60.0, 80.0, 100.0, 120.0}) {
    const auto kind = t > 110 ? gauge::MarkKind::hot : gauge::MarkKind::numbered;
    marks.push_back(
        {kind, std::to_string(static_cast<int>(t)), celsius(t), deflection(movement, *family.resistance(celsius(t)))});
  }
  return marks;
}

inline std::vector<gauge::Mark> withoutTemperatures(std::vector<gauge::Mark> marks) {
  for (gauge::Mark& mark : marks) {
    mark.at.reset();
    mark.text.clear();
    if (mark.kind == gauge::MarkKind::numbered) mark.kind = gauge::MarkKind::tick;
  }
  marks.front().kind = gauge::MarkKind::cold;
  marks.front().text = "C";
  marks.back().text = "H";
  return marks;
}

}  // namespace ohmkin::test
