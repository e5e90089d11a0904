#include <circuit/wires.h>
#include <QTest>
#include <cmath>

#include "reference_table.h"

using namespace ohmkin;
using namespace ohmkin::circuit;

class TestWires : public QObject {
  Q_OBJECT
 private slots:
  /// Source: tests/data/awg-copper.csv (a published wire table). 11 and 21 gauge are printed to three digits only.
  void diameters_and_ohms_meet_the_published_table() {
    const test::ReferenceTable table("awg-copper.csv");
    int gauges = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "kind") != "awg") continue;
      const int awg = std::stoi(table.text(i, "key"));
      QVERIFY(std::abs(inMillimetres(*diameterOf(awg)) / 25.4 - table.number(i, "v1")) < 1.5e-5);
      const double published = table.number(i, "v6");
      const double found = inOhms(*ohmsOf(awg, millimetres(304800)));
      const double printed = awg == 11 || awg == 21 ? 0.004 : 0.0005;
      QVERIFY2(std::abs(found / published - 1) < printed,
               qPrintable(QString("%1: %2 %3").arg(awg).arg(found).arg(published)));
      ++gauges;
    }
    QCOMPARE(gauges, 13);
  }

  void a_drop_is_ohms_times_amperes_and_grows_with_temperature() {
    const Length length = millimetres(3000);
    const double drop = inVolts(*dropOf(18, length, amperes(2)));
    QVERIFY(std::abs(drop - 2 * inOhms(*ohmsOf(18, length))) < 1e-15);
    QVERIFY(std::abs(inVolts(*dropOf(18, length, amperes(2), celsius(70))) / drop - (1 + 0.00393 * 50)) < 1e-12);
  }

  void the_thinnest_wire_that_does_is_chosen() {
    QCOMPARE(*wireFor(millimetres(1500), amperes(0.2), volts(0.1)), 20);
    const int awg = *wireFor(millimetres(5000), amperes(3), volts(0.2));
    QVERIFY(*dropOf(awg, millimetres(5000), amperes(3)) <= volts(0.2));
    QVERIFY(*dropOf(awg + 2, millimetres(5000), amperes(3)) > volts(0.2));
    QVERIFY(!wireFor(millimetres(50000), amperes(20), volts(0.1)).has_value());
  }

  /// Common practice, no source: a fuse a quarter above the current.
  void a_fuse_is_the_next_above_a_quarter_more() {
    QCOMPARE(inAmperes(*fuseFor(amperes(0.2))), 1.0);
    QCOMPARE(inAmperes(*fuseFor(amperes(2))), 3.0);
    QVERIFY(!fuseFor(amperes(9)).has_value());
    QVERIFY(!fuseFor(amperes(-1)).has_value());
  }

  void a_regulated_gauge_keeps_its_regulator_in_the_plan() {
    const auto plan = directWiring(amperes(0.4), true);
    QCOMPARE(plan->wires.size(), std::size_t{3});
    QVERIFY(plan->wires[0].to.find("regulator") != std::string::npos);
    QVERIFY(std::any_of(plan->findings.begin(), plan->findings.end(),
                        [](const Finding& f) { return f.code == "keep-the-regulator"; }));
    for (const Wire& wire : plan->wires) QVERIFY(wire.drop <= volts(0.1));
  }

  void what_is_out_of_range_is_refused() {
    QVERIFY(!diameterOf(3).has_value());
    QVERIFY(!diameterOf(41).has_value());
    QVERIFY(!ohmsOf(18, millimetres(-1)).has_value());
    QVERIFY(!directWiring(amperes(12), false).has_value());
  }
};

QTEST_APPLESS_MAIN(TestWires)
#include "tst_wires.moc"
