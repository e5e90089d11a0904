#include "reference_table.h"

#include <bench/bath.h>
#include <bench/boiling.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include "said.h"

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

Length metres(double m) { return millimetres(m * 1e3); }
BoilingWater at(double altitude, double kPa, Reduced reduced) {
  BoilingWater water;
  water.altitude = metres(altitude);
  water.barometer = Barometer{kilopascals(kPa), reduced};
  return water;
}

}  // namespace

class TestBath : public QObject {
  Q_OBJECT
 private slots:
  void altitude_alone_is_the_standard_atmosphere_and_carries_the_weather() {
    const ohmkin::test::ReferenceTable table("iso2533-atmosphere.csv");
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "altitude_kind") != "geopotential") continue;
      BoilingWater water;
      water.altitude = metres(table.number(i, "altitude_m"));
      const auto bath = boilingPoint(water);
      QVERIFY(std::abs(inKelvin(bath->at) - table.number(i, "boiling_k")) < 6e-5);
      // ±0.8 K rectangular, 0.1 K superheat, 30 m of 3.3 mK: √(0.46188² + 0.1² + 0.099²) = 0.48284.
      QVERIFY(std::abs(inKelvin(bath->u) - 0.48284) < 1e-5);
      QVERIFY(said::has(bath->findings, "weather-not-known"));
      ++seen;
    }
    QCOMPARE(seen, 7);
  }

  void a_barometer_at_the_bath_is_taken_as_it_is() {
    const auto bath = boilingPoint(at(1600, 83.5, Reduced::no));
    QVERIFY(std::abs(inKelvin(bath->at) - inKelvin(*saturationTemperature(kilopascals(83.5)))) < 1e-9);
    QVERIFY(inKelvin(bath->u) < 0.12);  // 0.1 kPa is 0.03 K there
  }

  void a_reduced_pressure_is_reduced_back() {
    // The altimeter-setting formula of aviation, from memory: p = (q^0.190263 − 8.417286e-5·h)^(1/0.190263), hPa and m.
    for (const double h : {0.0, 300.0, 1600.0, 2800.0}) {
      for (const double q : {990.0, 1013.25, 1035.0}) {
        const double station = std::pow(std::pow(q, 0.190263) - 8.417286e-5 * h, 1 / 0.190263);
        const auto bath = boilingPoint(at(h, q / 10, Reduced::toSeaLevel));
        const auto expected = saturationTemperature(kilopascals(station / 10));
        QVERIFY2(std::abs(inKelvin(bath->at) - inKelvin(*expected)) < 0.001, qPrintable(QString::number(h)));
      }
    }
  }

  void reduction_costs_certainty_with_altitude() {
    const double low = inKelvin(boilingPoint(at(0, 101, Reduced::toSeaLevel))->u);
    const double high = inKelvin(boilingPoint(at(2500, 101, Reduced::toSeaLevel))->u);
    QVERIFY(high > low);
    QVERIFY(high < 0.3);
  }

  void weather_that_cannot_be_settles_whether_it_was_reduced() {
    // 1600 m: the standard atmosphere has 83.5 kPa there.
    const auto reduced = boilingPoint(at(1600, 101.5, Reduced::notKnown));
    QVERIFY(said::has(reduced->findings, "barometer-taken"));
    QVERIFY(std::abs(inKelvin(reduced->at) - inKelvin(boilingPoint(at(1600, 101.5, Reduced::toSeaLevel))->at)) < 1e-9);
    const auto plain = boilingPoint(at(1600, 83, Reduced::notKnown));
    QVERIFY(std::abs(inKelvin(plain->at) - inKelvin(boilingPoint(at(1600, 83, Reduced::no))->at)) < 1e-9);
  }

  void where_it_is_open_the_refusal_is_the_question() {
    QCOMPARE(said::codeOf(boilingPoint(at(200, 100, Reduced::notKnown))), QString("barometer-reduced-question"));
    BoilingWater water;
    water.barometer = Barometer{kilopascals(100)};
    QCOMPARE(said::codeOf(boilingPoint(water)), QString("barometer-reduced-question"));
    QVERIFY(boilingPoint(water).error().sentence().find("reduced to sea level") != std::string::npos);
  }

  void higher_pressure_boils_hotter() {
    rc::check("boiling rises with the barometer, reduced or not", [] {
      const double h = *rc::gen::inRange(0, 3000);
      const double p = *rc::gen::inRange(600, 1050) * 0.1;
      for (const Reduced r : {Reduced::no, Reduced::toSeaLevel})
        RC_ASSERT(boilingPoint(at(h, p + 0.5, r))->at > boilingPoint(at(h, p, r))->at);
    });
  }

  void ice_and_thermometers_have_their_uncertainty() {
    QCOMPARE(inCelsius(icePoint(Ice::crushedPure).at), 0.0);
    QVERIFY(icePoint(Ice::tapCubes).u > icePoint(Ice::crushedPure).u);
    const auto limits = referenceThermometer(celsius(80), kelvins(0.5), Stated::limits);
    QVERIFY(std::abs(inKelvin(limits->u) - 0.288675) < 1e-6);  // 0.5/√3, JCGM 100:2008, 4.3.7
    const auto certified = referenceThermometer(celsius(80), kelvins(0.1), Stated::standardUncertainty);
    QCOMPARE(inKelvin(certified->u), 0.1);
  }

  void what_gives_no_reference_is_refused() {
    BoilingWater water;
    QCOMPARE(said::codeOf(boilingPoint(water)), QString("boiling-without-pressure"));
    water.altitude = metres(100);
    water.plain = false;
    QCOMPARE(said::codeOf(boilingPoint(water)), QString("water-not-plain"));
    water = {};
    water.barometer = Barometer{kilopascals(100), Reduced::toSeaLevel};
    QCOMPARE(said::codeOf(boilingPoint(water)), QString("altitude-missing"));
    QCOMPARE(said::codeOf(boilingPoint(at(100, -3, Reduced::no))), QString("barometer-out-of-range"));
    QCOMPARE(said::codeOf(boilingPoint(at(2e4, 100, Reduced::toSeaLevel))), QString("altitude-out-of-range"));
    QCOMPARE(said::codeOf(referenceThermometer(celsius(80), kelvins(0), Stated::limits)),
             QString("thermometer-accuracy"));
  }
};

QTEST_APPLESS_MAIN(TestBath)
#include "tst_bath.moc"
