#pragma once
#include <curve/curve.h>
#include <gauge/gauge.h>
#include "reference_table.h"

/// Rows of pairing-errors-scipy.csv and pairing-trims-scipy.csv as gauges and senders.
namespace ohmkin::test {

inline gauge::Gauge gaugeOf(const ReferenceTable& table, std::size_t row) {
  using gauge::MarkKind;
  const auto n = [&](const char* column) { return table.number(row, column); };
  const auto family =
      curve::Curve::make(curve::Beta{ohms(n("g1")), kelvin(n("g2")), n("g3")}, {kelvin(280), kelvin(430)}).value();
  auto dial = gauge::Dial::make({{MarkKind::cold, "C", kelvin(n("t1")), {n("a1")}},
                                 {MarkKind::tick, "", kelvin(n("t2")), {n("a2")}},
                                 {MarkKind::hot, "H", kelvin(n("t3")), {n("a3")}}},
                                {-100}, {100});
  if (table.text(row, "gauge") == "family") return gauge::Gauge::trueForFamily(dial.value(), family).value();
  return gauge::Gauge::withMovement(dial.value(),
                                    gauge::CrossedCoil{{n("grounded")}, {n("sweep")}, ohms(n("half")), {}, {}}, family)
      .value();
}

inline curve::Curve senderOf(const ReferenceTable& table, std::size_t row) {
  const auto n = [&](const char* column) { return table.number(row, column); };
  const std::string& kind = table.text(row, "sender");
  const auto over = [](curve::Model model) {
    return curve::Curve::make(std::move(model), {kelvin(300), kelvin(420)}).value();
  };
  if (kind == "exponential") return over(curve::Exponential{n("c1"), n("c2"), n("c3")});
  if (kind == "sh") return over(curve::SteinhartHart{{n("c1"), n("c2"), n("c3"), 0}, 3});
  return over(curve::Beta{ohms(n("c1")), kelvin(n("c2")), n("c3")});
}

inline TemperatureSpan bandOf(const ReferenceTable& table, std::size_t row) {
  return {kelvin(table.number(row, "band_low")), kelvin(table.number(row, "band_high"))};
}

}  // namespace ohmkin::test
