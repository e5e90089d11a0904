#include <pairing/error_table.h>
#include <pairing/limits.h>
#include <QTest>
#include <cmath>
#include <limits>
#include "invented_pairs.h"
#include "scipy_table.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

TrimNetwork networkOf(const ReferenceTable& table, std::size_t row) {
  const std::string& topology = table.text(row, "topology");
  const Ohms s = ohms(table.number(row, "s"));
  const Ohms p = ohms(table.number(row, "p"));
  if (topology == "series") return TrimNetwork::series(s);
  if (topology == "parallel") return TrimNetwork::parallel(p);
  if (topology == "parallel then series") return TrimNetwork::parallelThenSeries(p, s);
  if (topology == "series then parallel") return TrimNetwork::seriesThenParallel(s, p);
  return {};
}

PairOptions onlySenderTolerance(double tolerance) {
  PairOptions options;
  options.inputs = {tolerance, 0, 0, kelvins(0), kelvins(0), volts(0)};
  return options;
}

}  // namespace

class ErrorTableTest : public QObject {
  Q_OBJECT
 private slots:
  // tests/data/pairing-errors-scipy.csv: SciPy, generator beside this file.
  void worstErrorsAndLatenessAgreeWithScipyToAMicrokelvin() {
    const ReferenceTable table("pairing-errors-scipy.csv");
    std::size_t lateSeen = 0;
    for (std::size_t row = 0; row < table.size(); ++row) {
      const auto found =
          errorTable(gaugeOf(table, row), senderOf(table, row), networkOf(table, row), bandOf(table, row));
      QVERIFY2(found, found ? "" : found.error().sentence().c_str());
      const QByteArray where = "row " + QByteArray::number(int(row));
      QVERIFY2(std::abs(inKelvin(found->low.error) - table.number(row, "low")) < 1e-6, where);
      QVERIFY2(std::abs(inKelvin(found->high.error) - table.number(row, "high")) < 1e-6, where);
      if (table.text(row, "late") == "nan") continue;
      const auto* reaches = std::get_if<Reaches>(&found->hot);
      QVERIFY2(reaches != nullptr, where);
      QVERIFY2(std::abs(inKelvin(reaches->late) - table.number(row, "late")) < 1e-6, where);
      ++lateSeen;
    }
    QVERIFY(lateSeen > table.size() / 2);
  }

  void ownFamilyReadsTrueAndOnTimeWhereTheMovementIsNotKnown() {
    const auto family = betaThrough(900, 70).withBow(0.03);
    PairOptions options;
    options.sameFamily = true;
    const auto table = errorTable(gaugeFor(family), family, {}, band(80, 115), options);
    QVERIFY(table);
    for (const ErrorRow& row : table->rows) {
      QVERIFY(std::abs(inKelvin(row.error)) < 1e-9);
      QVERIFY(std::abs(inKelvin(row.uncertainty.mismatch)) < 1e-9);  // one curve on both sides: not knowing it cancels
    }
    QCOMPARE(table->hotSign, HotSign::onTime);
    QVERIFY(table->movementAssumed);
  }

  void ownFamilyNeedNotReadTrueBehindAPrintedDial() {
    const auto family = betaThrough(900, 70);
    const auto table = errorTable(coilGaugeFor(family), family, {}, band(70, 115));
    QVERIFY(table);
    QVERIFY(std::abs(inKelvin(table->worst.error)) > 0.05);        // a linear scale between marks is not the movement's
    QVERIFY(std::abs(inKelvin(table->rows.back().error)) < 1e-6);  // but right at the mark it was printed for
    QVERIFY(!table->movementAssumed);
  }

  // By hand from IEC 60539-1: dT = T²/B · dR/R; a half-width a has the standard uncertainty a/√3 (JCGM 100, 4.3.7), k
  // = 2.
  void toleranceOfTheSenderIsPropagatedAsByHand() {
    const auto family = betaThrough(900, 70);
    const double b = std::get<curve::Beta>(family.model()).b;
    const auto table = errorTable(gaugeFor(family), family, {}, band(80, 115), onlySenderTolerance(0.08));
    QVERIFY(table);
    for (const ErrorRow& row : table->rows) {
      const double t = inKelvin(row.trueTemperature);
      const double byHand = 2 * 0.08 / std::sqrt(3.0) * t * t / b;
      QVERIFY(std::abs(inKelvin(row.uncertainty.shared) - byHand) < 1e-6);
    }
    QVERIFY(!table->senderToleranceAssumed);
    QVERIFY(errorTable(gaugeFor(family), family, {}, band(80, 115))->senderToleranceAssumed);
  }

  // Copper, 0.39 %/K (NBS Handbook 100): a warmer cluster moves the needle by 0.0039·T²/B kelvin a kelvin.
  void clusterTemperatureActsThroughTheCopper() {
    const auto family = betaThrough(900, 70);
    const double b = std::get<curve::Beta>(family.model()).b;
    PairOptions options = onlySenderTolerance(0);
    options.inputs.cluster = kelvins(10);
    const auto unknown = errorTable(gaugeFor(family), family, {}, band(80, 115), options);
    const auto coil = errorTable(coilGaugeFor(family), family, {}, band(80, 115), options);
    QVERIFY(unknown && coil);
    const double t = inKelvin(unknown->rows.back().trueTemperature);
    const double byHand = 2 * 10 / std::sqrt(3.0) * 0.0039 * t * t / b;
    QVERIFY(std::abs(inKelvin(unknown->rows.back().uncertainty.shared) - byHand) < 1e-6);
    QVERIFY(std::abs(inKelvin(coil->rows[30].uncertainty.shared) - byHand) <
            0.3 * byHand);  // its dial is not quite the family's
  }

  void supplyActsOnABimetalWithoutItsRegulatorOnly() {
    const auto family = betaThrough(900, 70);
    const gauge::Bimetal bimetal{{-45}, {60}, ohms(60), volts(5)};
    const auto mark = [&](gauge::MarkKind kind, double c) {
      return gauge::Mark{kind, "", celsius(c), gauge::deflection(bimetal, *family.resistance(celsius(c)))};
    };
    const auto dial =
        gauge::Dial::make({mark(gauge::MarkKind::cold, 40), mark(gauge::MarkKind::hot, 115)}, {-50}, {70});
    const auto gauge = gauge::Gauge::withMovement(dial.value(), bimetal, family).value();
    PairOptions options = onlySenderTolerance(0);
    options.inputs.supply = volts(1.5);
    QVERIFY(inKelvin(errorTable(gauge, family, {}, band(80, 115), options)->rows[10].uncertainty.shared) < 1e-9);
    options.conditions.regulatorWorks = false;
    const auto stuck = errorTable(gauge, family, {}, band(80, 115), options);
    QVERIFY(inKelvin(stuck->rows[10].uncertainty.shared) > 1);
    QVERIFY(inKelvin(stuck->rows[10].error) > 20);  // V² law: reads hot
  }

  void resistorToleranceCountsAsMismatch() {
    const auto family = betaThrough(900, 70);
    PairOptions options = onlySenderTolerance(0);
    options.inputs.resistorTolerance = 0.05;
    const auto bare = errorTable(gaugeFor(family), betaThrough(1500, 60), {}, band(80, 115), options);
    const auto trimmedPair =
        errorTable(gaugeFor(family), betaThrough(1500, 60), TrimNetwork::parallel(ohms(470)), band(80, 115), options);
    QVERIFY(inKelvin(bare->rows[5].uncertainty.mismatch) < 1e-12);
    QVERIFY(inKelvin(trimmedPair->rows[5].uncertainty.mismatch) > 0.1);
  }

  void hotMarkBeyondTheEstablishedCurveIsFoundAndSaidToBeContinued() {
    const auto stated =
        curve::fromTwoPoints({ohms(1400), ohms(75), {celsius(40), celsius(40)}, {celsius(110), celsius(110)}}).value();
    const auto table = errorTable(gaugeFor(betaThrough(900, 70)), stated, {}, band(80, 115));
    QVERIFY(table);
    QVERIFY(table->partial());
    QCOMPARE(inCelsius(table->covered.high), 110.0);
    const auto* reaches = std::get_if<Reaches>(&table->hot);
    QVERIFY(reaches != nullptr && reaches->extrapolated && inCelsius(reaches->at) > 110);
    PairOptions options;
    options.reach = kelvins(0);
    QVERIFY(std::holds_alternative<NeverReaches>(
        errorTable(gaugeFor(betaThrough(900, 70)), stated, {}, band(80, 115), options)->hot));
  }

  void needleThatNeverReachesTheMarkIsAValueAndLate() {
    const auto table = errorTable(gaugeFor(betaThrough(900, 70)), betaThrough(3000, 400), {}, band(80, 115));
    QVERIFY(table);
    const auto* never = std::get_if<NeverReaches>(&table->hot);
    QVERIFY(never != nullptr);
    QVERIFY(inKelvin(never->atLeastLate) > 20);
    QCOMPARE(table->hotSign, HotSign::late);
  }

  void needleThatStartsPastTheMarkIsAValueAndEarly() {
    const auto table = errorTable(gaugeFor(betaThrough(900, 70)), betaThrough(8, 2), {}, band(80, 115));
    QVERIFY(table);
    QVERIFY(std::holds_alternative<PastAlready>(table->hot));
    QCOMPARE(table->hotSign, HotSign::early);
  }

  void senderThatTurnsTheOtherWayIsSaidToBeBackwards() {
    const auto table = errorTable(gaugeFor(betaThrough(900, 70)), risingThrough(70, 900), {}, band(80, 115));
    QVERIFY(table);
    QVERIFY(table->backwards);
    QCOMPARE(table->hotSign, HotSign::late);
  }

  void aReadingOffTheMarksIsSaidToBeOffTheMarks() {
    const auto table = errorTable(gaugeFor(betaThrough(900, 70)), betaThrough(5000, 100), {}, band(45, 115));
    QVERIFY(table);
    QCOMPARE(table->rows.front().indicated.where, gauge::Where::belowTheMarks);
  }

  void badInputIsRefused_data() {
    QTest::addColumn<double>("low");
    QTest::addColumn<double>("high");
    QTest::addColumn<int>("rows");
    QTest::addColumn<double>("tolerance");
    QTest::addColumn<QString>("code");
    const double nan = std::numeric_limits<double>::quiet_NaN();
    QTest::newRow("band reversed") << 115.0 << 80.0 << 60 << 0.1 << "band-reversed";
    QTest::newRow("band empty") << 90.0 << 90.0 << 60 << 0.1 << "band-reversed";
    QTest::newRow("band not a number") << nan << 115.0 << 60 << 0.1 << "band-reversed";
    QTest::newRow("band off the curve") << 150.0 << 180.0 << 60 << 0.1 << "band-off-curve";
    QTest::newRow("one row") << 80.0 << 115.0 << 1 << 0.1 << "rows-too-few";
    QTest::newRow("tolerance below nothing") << 80.0 << 115.0 << 60 << -0.1 << "tolerance-out-of-range";
    QTest::newRow("tolerance not a number") << 80.0 << 115.0 << 60 << nan << "tolerance-out-of-range";
  }
  void badInputIsRefused() {
    QFETCH(double, low);
    QFETCH(double, high);
    QFETCH(int, rows);
    QFETCH(double, tolerance);
    QFETCH(QString, code);
    const auto family = betaThrough(900, 70);
    PairOptions options;
    options.rows = static_cast<std::size_t>(rows);
    options.inputs.senderTolerance = tolerance;
    const auto table = errorTable(gaugeFor(family), family, {}, band(low, high), options);
    QVERIFY(!table);
    QCOMPARE(QString::fromStdString(table.error().code), code);
    QVERIFY(!table.error().expected.empty());
  }

  void bandReachesFromBelowTheThermostatToTheHotMark() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto usual = defaultBand(gauge, celsius(91));
    QVERIFY(usual);
    QVERIFY(std::abs(inCelsius(usual->low) - 80) < 1e-9 && std::abs(inCelsius(usual->high) - 115) < 1e-9);
    QVERIFY(!defaultBand(gauge, celsius(120)));
  }

  void limitsOutOfRangeAreRefused() {
    QVERIFY(checked(Limits{}));
    QVERIFY(!checked(Limits{kelvins(-1), kelvins(6), kelvins(8), 2}));
    QVERIFY(!checked(Limits{kelvins(3), kelvins(6), kelvins(8), 0.5}));
  }
};

QTEST_APPLESS_MAIN(ErrorTableTest)
#include "tst_error_table.moc"
