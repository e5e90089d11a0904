#include <bench/guidance.h>
#include <bench/reading.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <limits>
#include "said.h"

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

const BathReference kBath{celsius(80), kelvins(0.3), "thermometer", {}};
const MeterReading kMeter{ohms(200), ohms(2), kelvins(0), {}};
const Practice kGood{0.002, true, true, true};

Reading at(double celsiusAt) { return {celsius(celsiusAt), kelvins(0.3), ohms(100), 0.01, {}}; }

}  // namespace

class TestReading : public QObject {
  Q_OBJECT
 private slots:
  void good_practice_adds_the_bath_s_own_unrest_only() {
    const auto taken = take(kBath, kMeter, kGood, Direction::cooling);
    QVERIFY(taken->findings.empty());
    QVERIFY(std::abs(inKelvin(taken->reading.u) - std::hypot(0.3, 0.1)) < 1e-12);
    QCOMPARE(taken->reading.uLnOhms, 0.01);
    const curve::Sample sample = sampleOf(taken->reading);
    QCOMPARE(sample.direction, Direction::cooling);
    QCOMPARE(sample.uKelvin, inKelvin(taken->reading.u));
    QCOMPARE(sample.uLnOhms, 0.01);
  }

  void bad_practice_is_said_and_costs_certainty_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<double>("perMinute");
    QTest::addColumn<bool>("immersed");
    QTest::addColumn<bool>("stirred");
    QTest::addColumn<bool>("swapped");
    QTest::addColumn<bool>("costs");
    QTest::newRow("still moving") << "dwell-too-short" << 0.02 << true << true << true << true;
    QTest::newRow("dry hex") << "hex-dry" << 0.0 << false << true << true << true;
    QTest::newRow("layered") << "not-stirred" << 0.0 << true << false << true << true;
    QTest::newRow("one way round") << "probes-not-swapped" << 0.0 << true << true << false << false;
  }
  void bad_practice_is_said_and_costs_certainty() {
    QFETCH(QString, code);
    QFETCH(double, perMinute);
    QFETCH(bool, immersed);
    QFETCH(bool, stirred);
    QFETCH(bool, swapped);
    QFETCH(bool, costs);
    const auto good = take(kBath, kMeter, kGood);
    const auto taken = take(kBath, kMeter, {perMinute, immersed, stirred, swapped});
    QCOMPARE(taken->findings.size(), std::size_t{1});
    QVERIFY(said::has(taken->findings, qPrintable(code)));
    const bool less = taken->reading.u > good->reading.u || taken->reading.uLnOhms > good->reading.uLnOhms;
    QCOMPARE(less, costs);
  }

  void half_a_percent_a_minute_is_the_limit() {
    QVERIFY(practiceFindings({0.005, true, true, true}).empty());
    QVERIFY(said::has(practiceFindings({0.0051, true, true, true}), "dwell-too-short"));
  }

  void what_was_not_looked_at_is_asked_for_and_not_held_against() {
    const auto findings = practiceFindings({});
    QCOMPARE(findings.size(), std::size_t{4});
    for (const Finding& finding : findings) {
      QCOMPARE(finding.severity, Severity::note);
      QVERIFY(finding.code.ends_with("-open"));
    }
  }

  void self_heating_counts_as_limits() {
    MeterReading warm = kMeter;
    warm.selfHeating = kelvins(0.6);
    QVERIFY(std::abs(inKelvin(take(kBath, warm, kGood)->reading.u) - std::sqrt(0.09 + 0.01 + 0.12)) < 1e-12);
  }

  void swapped_probes_are_averaged_and_a_voltage_is_noticed() {
    const auto calm = averageSwapped(ohms(100), ohms(100.6));
    QVERIFY(std::abs(inOhms(calm->mean) - 100.3) < 1e-12);
    QVERIFY(calm->findings.empty());
    QVERIFY(said::has(averageSwapped(ohms(95), ohms(105))->findings, "probes-differ"));
    QCOMPARE(said::codeOf(averageSwapped(ohms(0), ohms(1))), QString("reading-ohms"));
  }

  void ice_and_boiling_water_are_two_points_and_the_hot_end_is_an_extrapolation() {
    const auto reach = reachOf(std::vector{at(0), at(99)}, {celsius(0), celsius(120)});
    QCOMPARE(QString::fromStdString(reach->code), QString("hot-end-extrapolated"));
    QVERIFY(reach->sentence.find("two points") != std::string::npos);
    QVERIFY(reach->sentence.find("extrapolation") != std::string::npos);
  }

  void reach_is_silent_only_where_three_baths_hold_the_span() {
    const TemperatureSpan wanted{celsius(20), celsius(95)};
    QVERIFY(!reachOf(std::vector{at(20), at(60), at(95)}, wanted));
    QCOMPARE(QString::fromStdString(reachOf(std::vector{at(20), at(94.5), at(95)}, wanted)->code),
             QString("too-few-baths"));
    QCOMPARE(QString::fromStdString(reachOf(std::vector{at(40), at(60), at(95)}, wanted)->code),
             QString("cold-end-extrapolated"));
    QCOMPARE(QString::fromStdString(reachOf({}, wanted)->code), QString("reach-none"));
  }

  void cautions_come_with_every_bath_and_local_codes_come_first() {
    for (const BathKind kind : {BathKind::ice, BathKind::boilingWater, BathKind::heatedWater})
      QCOMPARE(QString::fromStdString(cautions(kind).front().code), QString("local-codes-first"));
    for (const char* code : {"hot-water-and-steam", "no-sealed-vessel", "open-flame", "coolant-is-poison"}) {
      QVERIFY(said::has(cautions(BathKind::heatedWater), code));
      QVERIFY(said::has(cautions(BathKind::boilingWater), code));
    }
  }

  void numbers_that_are_none_are_refused() {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    QCOMPARE(said::codeOf(take({kelvin(nan), kelvins(0.1), "", {}}, kMeter, kGood)), QString("reading-temperature"));
    QCOMPARE(said::codeOf(take(kBath, {ohms(nan), ohms(1), {}, {}}, kGood)), QString("reading-ohms"));
    QCOMPARE(said::codeOf(take(kBath, kMeter, {nan, true, true, true})), QString("reading-drift"));
  }
};

QTEST_APPLESS_MAIN(TestReading)
#include "tst_reading.moc"
