#include "reference_table.h"

#include <quantity/parse.h>
#include <quantity/quantity.h>
#include <QTest>

using namespace ohmkin;

/// Against NIST SP 811 (2008) Appendix B.8; values and provenance in tests/data/units.csv.
class TestUnits : public QObject {
  Q_OBJECT
 private slots:
  void torque_factors_are_those_of_sp811() {
    const test::ReferenceTable units("units.csv");
    int seen = 0;
    for (std::size_t i = 0; i < units.size(); ++i) {
      const std::string& from = units.text(i, "from");
      if (from != "lbf_ft" && from != "lbf_in") continue;
      const auto torque = parseTorque(from == "lbf_ft" ? "1 lbf·ft" : "1 lbf·in");
      QCOMPARE(inNewtonMetres(*torque), units.number(i, "value"));
      ++seen;
    }
    QCOMPARE(seen, 2);
  }

  void fahrenheit_is_that_of_sp811() {
    const test::ReferenceTable units("units.csv");
    int seen = 0;
    for (std::size_t i = 0; i < units.size(); ++i) {
      if (units.text(i, "kind") != "degF_to_degC") continue;
      const double given = units.number(i, "from");
      const double expected = units.number(i, "to");
      QVERIFY(std::abs(inCelsius(fahrenheit(given)) - expected) < 1e-9);
      ++seen;
    }
    QVERIFY(seen >= 6);
  }

  void twenty_pound_feet_are_27_1_newton_metres() {
    QVERIFY(std::abs(inNewtonMetres(*parseTorque("20 lbf·ft")) - 27.1) <
            0.05);  // common practice, no source; arithmetic by SP 811
  }

  void a_difference_is_not_a_point() {
    QCOMPARE(inKelvin(celsius(100) - celsius(20)), 80.0);
    QCOMPARE(inCelsius(celsius(100) + kelvins(5)), 105.0);
  }
};

QTEST_APPLESS_MAIN(TestUnits)
#include "tst_units.moc"
