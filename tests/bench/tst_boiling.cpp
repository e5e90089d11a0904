#include "reference_table.h"

#include <bench/boiling.h>
#include <rapidcheck.h>
#include <QTest>
#include <limits>

using namespace ohmkin;
using namespace ohmkin::bench;

/// Against IAPWS R7-97(2012) Tables 35 and 36 and the ISO 2533:1975 table; values and provenance in tests/data.
class TestBoiling : public QObject {
  Q_OBJECT
 private slots:
  void saturation_meets_the_six_verification_values_of_if97() {
    const ohmkin::test::ReferenceTable table("iapws-if97-saturation.csv");
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      const std::string& kind = table.text(i, "kind");
      if (kind == "coef" || table.blank(i, "published_value")) continue;
      const double input = table.number(i, "input");
      const double published = table.number(i, "published_value");
      const double computed = kind == "psat_of_T_K" ? saturationPressure(kelvin(input))->value() * 1e-6
                                                    : inKelvin(*saturationTemperature(kilopascals(input * 1e3)));
      // Nine printed digits: half a unit in the last is at most 5e-9 of the value.
      QVERIFY2(std::abs(computed / published - 1) < 5e-9,
               qPrintable(QString("%1 at %2").arg(computed, 0, 'g', 12).arg(input)));
      ++seen;
    }
    QCOMPARE(seen, 6);
  }

  void standard_pressure_meets_the_rows_of_iso_2533() {
    const ohmkin::test::ReferenceTable table("iso2533-atmosphere.csv");
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "altitude_kind") != "geopotential") continue;
      const auto pressure = standardPressure(millimetres(table.number(i, "altitude_m") * 1e3));
      QVERIFY(std::abs(pressure->value() - table.number(i, "pressure_pa_published")) <= 0.0501);  // printed to 0.1 Pa
      const auto boiling = boilingAtAltitude(millimetres(table.number(i, "altitude_m") * 1e3));
      QVERIFY(std::abs(inKelvin(*boiling) - table.number(i, "boiling_k")) < 6e-5);  // computed there, four decimals
      ++seen;
    }
    QCOMPARE(seen, 7);
  }

  void geometric_altitude_changes_the_boiling_point_by_less_than_five_millikelvin() {
    const ohmkin::test::ReferenceTable table("iso2533-atmosphere.csv");
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "altitude_kind") != "geometric") continue;
      const auto taken = boilingAtAltitude(millimetres(table.number(i, "altitude_m") * 1e3));
      QVERIFY(std::abs(inKelvin(*taken) - table.number(i, "boiling_k")) < 0.005);
    }
  }

  void water_under_the_standard_atmosphere_boils_just_below_100_celsius() {
    // Computed row of tests/data/iapws-if97-saturation.csv: 373.1243 K on ITS-90, not 100 °C.
    QVERIFY(std::abs(inKelvin(*boilingUnderCap(kilopascals(0))) - 373.1243) < 1e-4);
  }

  void a_cap_raises_the_boiling_point_to_that_of_the_summed_pressure() {
    // IF97 Table 36 at 1 MPa: 453.035632 K.
    const auto capped = boilingUnderCap(kilopascals(900), kilopascals(100));
    QVERIFY(std::abs(inKelvin(*capped) - 453.035632) < 1e-6);
  }

  void both_directions_agree() {
    rc::check("saturationTemperature inverts saturationPressure", [] {
      const double t = 273.15 + 373.9 * *rc::gen::inRange(0, 1000001) * 1e-6;
      RC_ASSERT(std::abs(inKelvin(*saturationTemperature(*saturationPressure(kelvin(t)))) - t) < 1e-6);
    });
  }

  void outside_the_ranges_is_refused_in_words_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("found");
    const auto row = [](const char* name, const auto& result) {
      QTest::newRow(name) << QString::fromStdString(result ? "answered" : result.error().code)
                          << QString::fromStdString(result ? "" : result.error().sentence());
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    row("no-saturation: ice", saturationPressure(celsius(-1)));
    row("no-saturation: above the critical point", saturationPressure(kelvin(648)));
    row("no-saturation: not a number", saturationPressure(kelvin(nan)));
    row("no-saturation: near vacuum", saturationTemperature(kilopascals(0.5)));
    row("no-saturation: above the critical pressure", saturationTemperature(kilopascals(23000)));
    row("altitude-out-of-range: stratosphere", standardPressure(millimetres(12e6)));
    row("altitude-out-of-range: deep mine", boilingAtAltitude(millimetres(-3e6)));
    row("cap-below-ambient: suction", boilingUnderCap(kilopascals(-1)));
    row("ambient-pressure: none", boilingUnderCap(kilopascals(100), kilopascals(0)));
  }
  void outside_the_ranges_is_refused_in_words() {
    QFETCH(QString, code);
    QFETCH(QString, found);
    QVERIFY(QString(QTest::currentDataTag()).startsWith(code + ":"));
    QVERIFY(found.contains("expected"));
  }
};

QTEST_APPLESS_MAIN(TestBoiling)
#include "tst_boiling.moc"
