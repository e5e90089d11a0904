#pragma once
#include <curve/curve.h>
#include <curve/two_point.h>
#include <gauge/gauge.h>
#include <pairing/error_table.h>
#include <random>

/// Gauges and senders made up for the tests; none is a real part.
namespace ohmkin::test {

inline TemperatureSpan band(double low, double high) { return {celsius(low), celsius(high)}; }

/// B-parameter curve through cold and hot ohms at 40 and 115 °C, known exactly, good from 10 to 140 °C.
inline curve::Curve betaThrough(double coldOhms, double hotOhms) {
  const double cold = inKelvin(celsius(40));
  const double hot = inKelvin(celsius(115));
  const double b = std::log(coldOhms / hotOhms) / (1 / cold - 1 / hot);
  return curve::Curve::make(curve::Beta{ohms(coldOhms), celsius(40), b}, band(10, 140)).value();
}

inline curve::Curve risingThrough(double coldOhms, double hotOhms) {
  return curve::Curve::make(curve::Polynomial{ohms(coldOhms), {(hotOhms / coldOhms - 1) / 115}}, band(1, 140)).value();
}

inline gauge::Dial dialTo(double hotCelsius, double coldCelsius = 40) {
  using gauge::MarkKind;
  return gauge::Dial::make({{MarkKind::cold, "C", celsius(coldCelsius), {-45}},
                            {MarkKind::tick, "", celsius((coldCelsius + hotCelsius) / 2), {0}},
                            {MarkKind::hot, "H", celsius(hotCelsius), {45}}},
                           {-52}, {52})
      .value();
}

/// Movement unknown, taken to be true for this family.
inline gauge::Gauge gaugeFor(const curve::Curve& family, double hotCelsius = 115) {
  return gauge::Gauge::trueForFamily(dialTo(hotCelsius), family).value();
}

/// The same two points by way of ten others, bent a little: a measured curve.
inline curve::Curve tableThrough(double coldOhms, double hotOhms) {
  const curve::Curve straight = betaThrough(coldOhms, hotOhms);
  curve::MonotoneTable table;
  for (int c = 10; c <= 140; c += 13)
    table.points.emplace_back(celsius(c), *straight.resistance(celsius(c)) * std::exp(0.04 * std::sin(c / 25.0)));
  return curve::Curve::make(table, {table.points.front().first, table.points.back().first}).value();
}

/// A bimetal behind its regulator whose printed dial is right at its three marks.
inline gauge::Gauge bimetalGaugeFor(const curve::Curve& family, double hotCelsius = 115) {
  using gauge::MarkKind;
  const gauge::Bimetal bimetal{{-50}, {65}, *family.resistance(celsius(100)), volts(5)};
  const auto mark = [&](MarkKind kind, const char* text, double c) {
    return gauge::Mark{kind, text, celsius(c), gauge::deflection(bimetal, *family.resistance(celsius(c)))};
  };
  auto dial = gauge::Dial::make(
      {mark(MarkKind::cold, "C", 40), mark(MarkKind::tick, "", 85), mark(MarkKind::hot, "H", hotCelsius)}, {-55}, {70});
  return gauge::Gauge::withMovement(dial.value(), bimetal, family).value();
}

/// A crossed coil with known coils whose printed dial is right at its three marks.
inline gauge::Gauge coilGaugeFor(const curve::Curve& family, double hotCelsius = 115) {
  using gauge::MarkKind;
  gauge::CrossedCoil coil{{60}, {-130}, *family.resistance(celsius(85)), ohms(70), ohms(130)};
  const auto mark = [&](MarkKind kind, const char* text, double c) {
    return gauge::Mark{kind, text, celsius(c), gauge::deflection(coil, *family.resistance(celsius(c)))};
  };
  auto dial = gauge::Dial::make(
      {mark(MarkKind::cold, "C", 40), mark(MarkKind::tick, "", 85), mark(MarkKind::hot, "H", hotCelsius)}, {-80}, {70});
  return gauge::Gauge::withMovement(dial.value(), coil, family).value();
}

struct RandomPair {
  gauge::Gauge gauge;
  curve::Curve sender;
  TemperatureSpan band;
};

/// Rising pairs, crossed coils, bimetals and measured curves among them.
inline RandomPair randomPair(unsigned number) {
  std::mt19937 generator(number + 1959);
  const auto between = [&](double low, double high) { return std::uniform_real_distribution<>(low, high)(generator); };
  const double hot = between(40, 110);
  const double ratio = between(4, 20);
  const double otherHot = hot * between(0.6, 1.5);
  const double otherCold = std::max(hot * ratio * between(0.5, 2.5), 1.5 * otherHot);
  const TemperatureSpan span = band(between(75, 90), 115);
  const curve::Curve family = betaThrough(hot * ratio, hot);
  const curve::Curve other = betaThrough(otherCold, otherHot);
  switch (number % 7) {
    case 1:
      return {gaugeFor(risingThrough(hot, hot * ratio)), risingThrough(otherHot, otherHot * ratio * 1.1), span};
    case 2:
      return {coilGaugeFor(family), other, span};
    case 3:
      return {bimetalGaugeFor(family), other, span};
    case 4:
      return {gaugeFor(tableThrough(hot * ratio, hot)), other, span};
    case 5:
      return {gaugeFor(family), tableThrough(otherCold, otherHot), span};
    default:
      return {gaugeFor(family), other, span};
  }
}

}  // namespace ohmkin::test
