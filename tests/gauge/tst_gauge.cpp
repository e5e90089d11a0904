#include "invented_gauges.h"

#include <rapidcheck.h>
#include <QTest>
#include <limits>

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
constexpr Angle kLowStop{-60};
constexpr Angle kHighStop{47};

std::vector<Mark> marksOf(const Movement& movement) { return test::trueMarks(movement, test::inventedFamily()); }

Gauge coilGauge() {
  return *Gauge::make(marksOf(test::inventedCoil()), kLowStop, kHighStop, test::inventedCoil(), test::inventedFamily());
}

Gauge unknownGauge() {
  return *Gauge::make(marksOf(test::inventedCoil()), kLowStop, kHighStop, std::nullopt, test::inventedFamily());
}

Gauge cAndHGauge(double b = 3300) {
  const curve::Curve family = test::inventedFamily(b);
  const auto marks = test::withoutTemperatures(test::trueMarks(test::inventedCoil(), family));
  return *Gauge::make(marks, kLowStop, kHighStop, test::inventedCoil(), family);
}

Gauge bimetalGauge() {
  const auto marks = test::trueMarks(test::inventedBimetal(), test::inventedLowFamily());
  return *Gauge::make(marks, {-60}, {60}, test::inventedBimetal(), test::inventedLowFamily());
}

std::vector<Gauge> allKinds() {
  return {coilGauge(), unknownGauge(), cAndHGauge(), bimetalGauge(),
          *Gauge::make(marksOf(test::inventedBench()), {-60}, {60}, test::inventedBench(), test::inventedFamily())};
}

double copperDrift(const Gauge& gauge, double at, double warmer) {
  const Ohms sender = *gauge.family().resistance(celsius(at));
  return inKelvin(gauge.indicated(sender, {.cluster = celsius(20 + warmer)}).shown - gauge.indicated(sender).shown);
}

}  // namespace

class TestGauge : public QObject {
  Q_OBJECT
 private slots:
  void with_its_own_family_every_gauge_is_true_at_its_marks() {
    for (const Gauge& gauge : allKinds())
      for (const double t : {40.0, 80.0, 120.0}) {
        const Reading reading = gauge.indicated(*gauge.family().resistance(celsius(t)));
        QVERIFY(std::abs(inCelsius(reading.shown) - t) < 1e-6);
        QVERIFY(reading.where == Where::onTheMarks);
        QVERIFY(!reading.extrapolated);
      }
  }

  void an_unknown_movement_is_taken_to_be_true_between_the_marks_too() {
    const Gauge gauge = unknownGauge();
    QVERIFY(gauge.readByFamily());
    QVERIFY(std::abs(inCelsius(gauge.indicated(*gauge.family().resistance(celsius(91))).shown) - 91) < 1e-9);
    QVERIFY(std::abs(inOhms(*gauge.ohmsAt(celsius(91))) - inOhms(*gauge.family().resistance(celsius(91)))) < 1e-9);
  }

  // Common practice, no source.
  void lead_grounded_is_past_hot_and_lead_open_at_the_cold_end() {
    for (const Gauge& gauge : allKinds()) {
      const Reading grounded = gauge.indicated(ohms(0));
      const Reading open = gauge.indicated(ohms(kOpen));
      QVERIFY(grounded.where == Where::pastTheMarks);
      QVERIFY(open.where == Where::belowTheMarks);
      QVERIFY(grounded.needle > gauge.dial().angleOf(gauge.hotMark()));
      QVERIFY(open.needle < gauge.dial().angleOf(gauge.dial().marked().low));
      QVERIFY(grounded.needle <= gauge.dial().highStop() && open.needle >= gauge.dial().lowStop());
      QVERIFY(std::isfinite(inKelvin(grounded.shown)) && std::isfinite(inKelvin(open.shown)));
      QVERIFY(grounded.shown > gauge.hotMark() && open.shown < gauge.dial().marked().low);
    }
  }

  void off_the_marks_has_a_number_that_is_said_to_be_continued() {
    const Gauge gauge = unknownGauge();
    const Reading hot = gauge.indicated(*gauge.family().resistance(celsius(140)));
    QVERIFY(std::abs(inCelsius(hot.shown) - 140) < 1e-9);
    QVERIFY(hot.where == Where::pastTheMarks && hot.extrapolated);
    const Reading cold = gauge.indicated(*gauge.family().resistance(celsius(30)));
    QVERIFY(cold.where == Where::belowTheMarks && !cold.extrapolated);  // the family is established from 20 °C
  }

  void the_bare_numbers_are_those_of_the_reading() {
    const std::vector<Gauge> gauges = allKinds();
    rc::check("shownKelvin is indicated", [&] {
      const Gauge& gauge = gauges[*rc::gen::inRange<std::size_t>(0, gauges.size())];
      const double ln = *rc::gen::inRange(0, 9000) * 1e-3;
      const double shown = gauge.shownKelvin(ln);
      // A dial without numbers goes through the needle and back: rounding of the angle, worth more where the needle
      // hardly moves.
      RC_ASSERT(std::abs(shown - inKelvin(gauge.indicated(ohms(std::exp(ln))).shown)) < 1e-8);
      RC_ASSERT(std::abs(shown - gauge.shownAtOhms(std::exp(ln))) < 1e-8);
    });
  }

  void the_slope_is_that_of_the_reading() {
    const std::vector<Gauge> gauges = allKinds();
    rc::check("shownSlope is the derivative", [&] {
      const Gauge& gauge = gauges[*rc::gen::inRange<std::size_t>(0, gauges.size())];
      const double ln = *rc::gen::inRange(500, 8000) * 1e-3;
      const double step = 1e-5;
      const double left = (gauge.shownKelvin(ln) - gauge.shownKelvin(ln - step)) / step;
      const double right = (gauge.shownKelvin(ln + step) - gauge.shownKelvin(ln)) / step;
      // At a mark the scale has a corner: the slope is one of the two sides'.
      const double tolerance = 1e-3 * (1 + std::abs(left));
      RC_ASSERT(gauge.shownSlope(ln) > std::min(left, right) - tolerance &&
                gauge.shownSlope(ln) < std::max(left, right) + tolerance);
    });
  }

  void more_ohms_always_show_colder() {
    for (const Gauge& gauge : allKinds()) {
      double before = gauge.shownAtOhms(0);
      for (double r = 0.2; r < 1e5; r *= 1.3) {
        const double shown = gauge.shownAtOhms(r);
        QVERIFY(shown < before);
        before = shown;
      }
    }
  }

  void ohms_at_a_mark_put_the_needle_on_it() {
    for (const Gauge& gauge : allKinds())
      for (const double t : {45.0, 85.0, 118.0})
        QVERIFY(std::abs(inCelsius(gauge.indicated(*gauge.ohmsAt(celsius(t))).shown) - t) < 1e-6);
  }

  void no_ohms_take_a_needle_to_a_temperature_beyond_its_sweep() {
    QVERIFY(!coilGauge().ohmsAt(celsius(300)));
    QVERIFY(!unknownGauge().ohmsAt(celsius(800)));
  }

  // Copper of 0.39 %/K (IACS, NBS Circular 31) behind a B-parameter sender (IEC 60539-1): d shown = 0.0039·T²/B for
  // each kelvin.
  void warm_coils_read_hot_by_the_copper_of_their_wire_data() {
    QTest::addColumn<double>("at");
    QTest::addColumn<double>("b");
    QTest::newRow("60 °C") << 60.0 << 3300.0;
    QTest::newRow("100 °C") << 100.0 << 3300.0;
    QTest::newRow("100 °C, a flat family") << 100.0 << 2600.0;
  }
  void warm_coils_read_hot_by_the_copper_of_their_wire() {
    QFETCH(double, at);
    QFETCH(double, b);
    const double kelvin = at + kZeroCelsius;
    const double expected = 0.0039 * kelvin * kelvin / b;
    QVERIFY(std::abs(copperDrift(cAndHGauge(b), at, 0.1) / 0.1 / expected - 1) < 0.02);
  }

  // Worked by hand for B = 2700 K at 200 °F: +30 K of cluster +10 °F, −40 K of cluster −15 °F.
  void a_hot_and_a_cold_dash_move_the_needle_as_worked_by_hand() {
    const Gauge gauge = cAndHGauge(2700);
    const double at = inCelsius(fahrenheit(200));
    QVERIFY(std::abs(copperDrift(gauge, at, 30) * 1.8 - 10) < 1);
    QVERIFY(std::abs(copperDrift(gauge, at, -40) * 1.8 + 15) < 1);
  }

  void c_and_h_mean_what_the_family_makes_of_them() {
    const Gauge gauge = cAndHGauge();
    QVERIFY(gauge.readByFamily());
    QVERIFY(std::abs(inCelsius(gauge.hotMark()) - 120) < 1e-6);
    QVERIFY(std::abs(inCelsius(gauge.dial().marked().low) - 40) < 1e-6);
    QVERIFY(!gauge.dial().marks()[1].at);  // bare ticks get none
    for (const double t : {45.0, 77.0, 119.0}) {
      const Reading reading = gauge.indicated(*gauge.family().resistance(celsius(t)));
      QVERIFY(std::abs(inCelsius(reading.shown) - t) < 1e-6);
      QVERIFY(std::abs((gauge.dial().angleOf(celsius(t)) - reading.needle).degrees) < 0.01);
    }
  }

  void a_hot_mark_alone_without_its_number_is_enough_for_the_family_to_be_asked() {
    std::vector<Mark> marks = marksOf(test::inventedCoil());
    marks.back().at.reset();
    const auto gauge = Gauge::make(marks, kLowStop, kHighStop, test::inventedCoil(), test::inventedFamily());
    QVERIFY(gauge.has_value());
    QVERIFY(std::abs(inCelsius(gauge->hotMark()) - 120) < 1e-6);
  }

  void a_rising_family_has_its_grounded_end_cold() {
    const auto family =
        curve::Curve::make(curve::Polynomial{ohms(100), {3.9083e-3, -5.775e-7}, 0}, {celsius(0), celsius(150)});
    const CrossedCoil coil{{-60}, {100}, ohms(120), {}, {}, {}};
    const auto gauge = Gauge::make(test::trueMarks(coil, *family), {-70}, {50}, coil, *family);
    QVERIFY(gauge.has_value());
    QVERIFY(gauge->indicated(ohms(0)).where == Where::belowTheMarks);
    QVERIFY(gauge->indicated(ohms(kOpen)).where == Where::pastTheMarks);
    const auto unknown = Gauge::make(test::trueMarks(coil, *family), {-70}, {50}, std::nullopt, *family);
    QVERIFY(unknown->indicated(ohms(0)).where == Where::belowTheMarks);
    QVERIFY(std::isfinite(inKelvin(unknown->indicated(ohms(kOpen)).shown)));
  }

  void the_regulator_lost_takes_a_bimetal_past_hot() {
    const Gauge gauge = bimetalGauge();
    const Reading reading =
        gauge.indicated(*gauge.family().resistance(celsius(100)), {.supply = volts(14), .regulatorWorks = false});
    QVERIFY(reading.where == Where::pastTheMarks);
    QCOMPARE(reading.needle.degrees, 60.0);
  }

  void what_cannot_be_read_is_refused_data() {
    QTest::addColumn<QString>("said");
    QTest::addColumn<QString>("code");
    const auto row = [](const char* name, const char* code, const Expected<Gauge>& gauge) {
      QTest::newRow(name) << QString::fromStdString(gauge ? "taken"
                                                          : gauge.error().code + ": " + gauge.error().sentence())
                          << code;
    };
    const curve::Curve family = test::inventedFamily();
    const Movement coil = test::inventedCoil();
    const auto marks = marksOf(coil);
    const auto bare = test::withoutTemperatures(marks);
    row("C and H on an unknown movement", "dial-without-numbers",
        Gauge::make(bare, kLowStop, kHighStop, std::nullopt, family));
    row("a movement out of range", "movement-out-of-range",
        Gauge::make(marks, kLowStop, kHighStop, CrossedCoil{{0}, {0}, ohms(1), {}, {}, {}}, family));
    row("the same without numbers", "movement-out-of-range",
        Gauge::make(bare, kLowStop, kHighStop, CrossedCoil{{0}, {0}, ohms(1), {}, {}, {}}, family));
    row("a movement that turns against the dial", "movement-against-dial",
        Gauge::make(marks, kLowStop, kHighStop, CrossedCoil{{-45}, {95}, ohms(96), {}, {}, {}}, family));
    row("the same without numbers", "movement-against-dial",
        Gauge::make(bare, kLowStop, kHighStop, CrossedCoil{{-50}, {100}, ohms(96), {}, {}, {}}, family));
    auto far = bare;
    far.back().angle = {70};
    row("a mark the needle never reaches", "mark-never-reached", Gauge::make(far, kLowStop, {80}, coil, family));
    auto contradicted = bare;
    contradicted.back().at = celsius(150);
    row("a number the family contradicts", "mark-contradicts-family",
        Gauge::make(contradicted, kLowStop, kHighStop, coil, family));
    // 1 + a·t + b·t² turns back at 60 °C.
    const auto bent = curve::Curve::make(curve::Polynomial{ohms(100), {0.012, -1e-4}, 0}, {celsius(0), celsius(50)});
    row("a family that turns back before the hot mark", "family-does-not-cover-dial",
        Gauge::make(marks, kLowStop, kHighStop, std::nullopt, *bent));
  }
  void what_cannot_be_read_is_refused() {
    QFETCH(QString, said);
    QFETCH(QString, code);
    QVERIFY2(said.startsWith(code + ": ") && said.contains("expected"), qPrintable(said));
  }
};

QTEST_APPLESS_MAIN(TestGauge)
#include "tst_gauge.moc"
