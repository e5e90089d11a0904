#include <bench/meter.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include "said.h"

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

const LeadZero kNone{ohms(0), ohms(0)};

}  // namespace

/// Worked by hand after JCGM 100:2008, 4.3.7 (limits as rectangular, a/√3) and 5.1.2 (quadrature).
class TestMeter : public QObject {
  Q_OBJECT
 private slots:
  void a_reading_carries_percent_counts_resolution_and_leads() {
    // 200 Ω range, 0.8 % + 5 counts of 0.1 Ω, 50.0 shown: limit 0.9, 0.51962 standard; half a count 0.02887; leads
    // 0.12. √(0.51962² + 0.02887² + 0.12²) = 0.53408.
    const auto reading = read(usualDigitalMeter(), ohms(50), kLeadsNotZeroed);
    QVERIFY(reading.has_value());
    QVERIFY(std::abs(inOhms(reading->ohms) - 49.8) < 1e-12);
    QVERIFY(std::abs(inOhms(reading->u) - 0.53408) < 1e-5);
    QVERIFY(std::abs(reading->uLnOhms() - 0.53408 / 49.8) < 1e-6);
  }

  void the_lowest_range_that_shows_it_is_taken() {
    // 250 Ω on 2 kΩ: 0.8 % + 3 Ω = 5 limit, 2.88675; half a count 0.28868; together 2.90115.
    QVERIFY(std::abs(inOhms(read(usualDigitalMeter(), ohms(250), kNone)->u) - 2.90115) < 1e-5);
    QCOMPARE(inOhms(usualDigitalMeter().rangeFor(ohms(200))->fullScale), 200.0);
    QVERIFY(!usualDigitalMeter().rangeFor(ohms(20001)));
  }

  void a_digital_meter_hardly_warms_a_sender_and_a_cell_does() {
    // 1 mA through 100 Ω: 0.1 mW / 0.15 W/K.
    QVERIFY(std::abs(inKelvin(*read(usualDigitalMeter(), ohms(100), kNone)->selfHeating) - 1e-4 / 0.15) < 1e-12);
    // 1.5 V behind 20 Ω into 20 Ω: 28.125 mW / 0.15 W/K = 0.1875 K; in air 2.8 K.
    const auto warm = read(usualMovingCoilMeter(), ohms(20), kNone);
    QVERIFY(std::abs(inKelvin(*warm->selfHeating) - 0.1875) < 1e-12);
    QVERIFY(said::has(warm->findings, "self-heating"));
    const auto air = read(usualMovingCoilMeter(), ohms(20), kNone, Surroundings::stillAir);
    QVERIFY(std::abs(inKelvin(*air->selfHeating) - 2.8125) < 1e-12);
  }

  void what_is_not_known_of_a_meter_is_said() {
    const auto meter = Meter::make("old", {{ohms(1000), ohms(1), 0.01, 2, {}}});
    const auto reading = read(*meter, ohms(400), kNone);
    QVERIFY(!reading->selfHeating);
    QVERIFY(said::has(reading->findings, "self-heating-not-known"));
  }

  void leads_and_doubt_are_said_where_they_count() {
    QVERIFY(said::has(read(usualDigitalMeter(), ohms(10), kLeadsNotZeroed)->findings, "leads-count"));
    QVERIFY(said::has(read(usualDigitalMeter(), ohms(10), kLeadsNotZeroed)->findings, "meter-doubt"));
    QVERIFY(!said::has(read(usualDigitalMeter(), ohms(150), kLeadsNotZeroed)->findings, "leads-count"));
  }

  void overload_is_a_finding_and_never_a_number() {
    QCOMPARE(QString::fromStdString(overload(usualDigitalMeter(), 0)->code), QString("overload-range"));
    QCOMPARE(QString::fromStdString(overload(usualDigitalMeter())->code), QString("overload-open"));
    QCOMPARE(QString::fromStdString(overload(usualDigitalMeter(), 2)->code), QString("overload-open"));
    QCOMPARE(said::codeOf(overload(usualDigitalMeter(), 3)), QString("meter-range"));
  }

  void ranges_come_in_any_order() {
    const auto meter = Meter::make("m", {{ohms(2000), ohms(1), 0.01, 2, {}}, {ohms(200), ohms(0.1), 0.01, 2, {}}});
    QCOMPARE(inOhms(meter->ranges().front().fullScale), 200.0);
  }

  void more_counts_never_make_a_reading_surer() {
    rc::check("u grows with counts, share and leads", [] {
      const auto r = ohms(*rc::gen::inRange(1, 2000) * 0.1);
      const double counts = *rc::gen::inRange(0, 20);
      const double share = *rc::gen::inRange(0, 50) * 1e-3;
      const auto meterOf = [](double c, double s) { return *Meter::make("m", {{ohms(200), ohms(0.1), s, c, {}}}); };
      const auto u = [&](double c, double s, double lead) {
        return inOhms(read(meterOf(c, s), r, {ohms(0), ohms(lead)})->u);
      };
      RC_ASSERT(u(counts + 1, share, 0) > u(counts, share, 0));
      RC_ASSERT(u(counts, share + 0.001, 0) > u(counts, share, 0));
      RC_ASSERT(u(counts, share, 0.1) > u(counts, share, 0));
    });
  }

  void nonsense_is_refused_in_words() {
    QCOMPARE(said::codeOf(Meter::make("m", {})), QString("meter-without-ranges"));
    QCOMPARE(said::codeOf(Meter::make("m", {{ohms(0), ohms(1), 0, 0, {}}})), QString("meter-range"));
    QCOMPARE(said::codeOf(Meter::make("m", {{ohms(10), ohms(11), 0, 0, {}}})), QString("meter-range"));
    QCOMPARE(said::codeOf(Meter::make("m", {{ohms(10), ohms(1), 1, 0, {}}})), QString("meter-range"));
    QCOMPARE(said::codeOf(Meter::make("m", {{ohms(10), ohms(1), 0, 0, SteadyCurrent{milliamperes(0)}}})),
             QString("meter-range"));
    QCOMPARE(said::codeOf(read(usualDigitalMeter(), ohms(0), kNone)), QString("reading-ohms"));
    QCOMPARE(said::codeOf(read(usualDigitalMeter(), ohms(1e6), kNone)), QString("reading-above-meter"));
    QCOMPARE(said::codeOf(read(usualDigitalMeter(), ohms(0.1), kLeadsNotZeroed)), QString("leads-leave-nothing"));
    QCOMPARE(said::codeOf(read(usualDigitalMeter(), ohms(10), {ohms(-1), ohms(0)})), QString("leads-out-of-range"));
  }
};

QTEST_APPLESS_MAIN(TestMeter)
#include "tst_meter.moc"
