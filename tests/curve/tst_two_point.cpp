#include <curve/two_point.h>

#include <QTest>
#include <cmath>
#include <random>

#include "reference_table.h"

using namespace ohmkin;
using namespace ohmkin::curve;
using ohmkin::test::ReferenceTable;

namespace {

TemperatureSpan exactly(double celsiusDegrees) { return {celsius(celsiusDegrees), celsius(celsiusDegrees)}; }

TwoPoint stated(double cold, double hot, double coldAt, double hotAt) {
  return {ohms(cold), ohms(hot), exactly(coldAt), exactly(hotAt)};
}
TwoPoint unstated(double cold, double hot) {
  return {ohms(cold), ohms(hot), {celsius(20), celsius(40)}, {celsius(104), celsius(127)}};
}

}  // namespace

class TestTwoPoint : public QObject {
  Q_OBJECT

 private slots:
  void theCurvePassesThroughBothPoints() {
    const auto curve = fromTwoPoints(stated(350, 51, 30, 115));
    QVERIFY(curve && curve->falls());
    QVERIFY(std::abs(inOhms(*curve->resistance(celsius(30))) - 350) < 1e-9);
    QVERIFY(std::abs(inOhms(*curve->resistance(celsius(115))) - 51) < 1e-9);
    QVERIFY(!curve->resistance(celsius(29)) && !curve->resistance(celsius(116)));
  }

  void aRisingFamilyWorksToo() {
    const auto curve = fromTwoPoints(stated(30, 75, 20, 120));
    QVERIFY(curve && !curve->falls());
    QVERIFY(std::abs(inCelsius(*curve->temperature(ohms(75))) - 120) < 1e-9);
  }

  // Common practice, no source: families stated cold/hot as 350/51, 350/46 and 1365/55 Ω, resistance falling as
  // temperature rises.
  void familiesOfTheTrade_data() {
    QTest::addColumn<double>("cold");
    QTest::addColumn<double>("hot");
    QTest::newRow("350/51") << 350.0 << 51.0;
    QTest::newRow("350/46") << 350.0 << 46.0;
    QTest::newRow("1365/55") << 1365.0 << 55.0;
  }
  void familiesOfTheTrade() {
    QFETCH(double, cold);
    QFETCH(double, hot);
    const auto known = fromTwoPoints(stated(cold, hot, 30, 115.5));
    const auto open = fromTwoPoints(unstated(cold, hot));
    QVERIFY(known && open && known->falls() && open->falls());
    QVERIFY(open->established() == (TemperatureSpan{celsius(30), celsius(115.5)}));
    for (int t = 30; t <= 115; t += 5) {
      // same line through the middles, much less sure of it: unstated spans are 6 K and 7 K wide at one standard
      // uncertainty
      QVERIFY(std::abs(open->lnOhms(273.15 + t) - known->lnOhms(273.15 + t)) < 1e-12);
      QVERIFY(*open->knowledge(celsius(t)) > 3 * *known->knowledge(celsius(t)));
      const double kelvins = *open->knowledge(celsius(t)) / std::abs(*open->slope(celsius(t)));
      QVERIFY(kelvins > 3 && kelvins < 9);
    }
  }

  // The propagated knowledge against what many draws of the stated numbers really do; the bow is checked apart.
  void knowledgeAgreesWithDrawingTheStatedNumbers() {
    const TwoPoint family{ohms(480), ohms(36), {celsius(22), celsius(32)}, {celsius(108), celsius(118)}};
    const auto curve = fromTwoPoints(family);
    QVERIFY(curve);
    std::mt19937_64 random(7);
    const auto draw = [&](double low, double high) {
      return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (const double t : {27.0, 60.0, 90.0, 113.0}) {
      double sum = 0;
      double squares = 0;
      constexpr int draws = 40'000;
      for (int i = 0; i < draws; ++i) {
        const double tc = 273.15 + draw(22, 32);
        const double th = 273.15 + draw(108, 118);
        const double lc = std::log(draw(475, 485));  // 480: rounded to tens
        const double lh = std::log(draw(35.5, 36.5));
        const double l = lc + (lh - lc) * (1 / (273.15 + t) - 1 / tc) / (1 / th - 1 / tc);
        sum += l, squares += l * l;
      }
      const double deviation = std::sqrt(squares / draws - sum * sum / draws / draws);
      const double x0 = 1 / 300.15;
      const double x1 = 1 / 386.15;
      const double across = (1 / (273.15 + t) - x1) / (x0 - x1);
      const double bow = bowBetween(family) * 4 * across * (1 - across);
      const double ours = std::sqrt(std::pow(*curve->knowledge(celsius(t)), 2) - bow * bow);
      QVERIFY2(std::abs(ours / deviation - 1) < 0.02, qPrintable(QString::number(ours / deviation)));
    }
  }

  // The published table of a general NTC thermistor: our curve through two of its points misses the rest by its bow.
  // One standard uncertainty is about what it misses in the middle, and the expanded one (k = 2) holds it everywhere
  // between.
  void theBowHoldsARealThermistor_data() {
    QTest::addColumn<double>("cold");
    QTest::addColumn<double>("hot");
    QTest::newRow("25 and 85 °C, as B25/85 is stated") << 25.0 << 85.0;
    QTest::newRow("25 and 110 °C") << 25.0 << 110.0;
    QTest::newRow("0 and 100 °C") << 0.0 << 100.0;
    QTest::newRow("40 and 105 °C") << 40.0 << 105.0;
  }
  void theBowHoldsARealThermistor() {
    QFETCH(double, cold);
    QFETCH(double, hot);
    const ReferenceTable table("ntc-rt-table.csv");
    const auto at = [&](double t) {
      for (std::size_t i = 0; i < table.size(); ++i)
        if (table.number(i, "t_degc") == t) return table.number(i, "R_ohm");
      return std::nan("");
    };
    const TwoPoint family = stated(at(cold), at(hot), cold, hot);
    const auto curve = fromTwoPoints(family);
    QVERIFY(curve);
    double worst = 0;
    for (double t = cold + 5; t < hot; t += 5) {
      const double missed = std::abs(std::log(at(t)) - curve->lnOhms(273.15 + t));
      QVERIFY(missed <= 2 * *curve->knowledge(celsius(t)));
      worst = std::max(worst, missed);
    }
    QVERIFY(worst > 0.6 * bowBetween(family) && worst < 1.4 * bowBetween(family));
  }

  // The Pt100 of IEC 60751 through two of its printed values.
  void theBowHoldsARealRisingSender() {
    const TwoPoint family = stated(107.79, 142.29, 20, 110);
    const auto curve = fromTwoPoints(family);
    QVERIFY(curve);
    const ReferenceTable table("iec60751-pt100.csv");
    double worst = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "kind") != "R_of_t_degC") continue;
      const double t = table.number(i, "input");
      if (t <= 20 || t >= 110) continue;
      const double missed = std::abs(std::log(table.number(i, "published_value")) - curve->lnOhms(273.15 + t));
      QVERIFY(missed <= 2 * *curve->knowledge(celsius(t)));
      worst = std::max(worst, missed);
    }
    QVERIFY(worst > 0.8 * bowBetween(family) && worst < 1.2 * bowBetween(family));
  }

  void theStepAStatedNumberWasRoundedTo_data() {
    QTest::addColumn<double>("number");
    QTest::addColumn<double>("half");
    QTest::newRow("51") << 51.0 << 0.5;
    QTest::newRow("350") << 350.0 << 5.0;
    QTest::newRow("1365") << 1365.0 << 0.5;
    QTest::newRow("100") << 100.0 << 5.0;
    QTest::newRow("9.6") << 9.6 << 0.05;
    QTest::newRow("0.22") << 0.22 << 0.005;
    QTest::newRow("1180.4") << 1180.4 << 0.05;
  }
  void theStepAStatedNumberWasRoundedTo() {
    QFETCH(double, number);
    QFETCH(double, half);
    QCOMPARE(halfStepOf(number), half);
  }

  void impossibleFamiliesAreRefused_data() {
    QTest::addColumn<double>("cold");
    QTest::addColumn<double>("hot");
    QTest::addColumn<double>("coldAt");
    QTest::addColumn<double>("hotAt");
    QTest::addColumn<QString>("code");
    QTest::newRow("no ohms") << 0.0 << 51.0 << 30.0 << 115.0 << "two-point-ohms";
    QTest::newRow("not a number") << std::nan("") << 51.0 << 30.0 << 115.0 << "two-point-ohms";
    QTest::newRow("equal ohms") << 51.0 << 51.0 << 30.0 << 115.0 << "two-point-ohms";
    QTest::newRow("cold above hot") << 350.0 << 51.0 << 115.0 << 30.0 << "two-point-temperatures";
    QTest::newRow("below absolute zero") << 350.0 << 51.0 << -300.0 << 30.0 << "two-point-temperatures";
  }
  void impossibleFamiliesAreRefused() {
    QFETCH(double, cold);
    QFETCH(double, hot);
    QFETCH(double, coldAt);
    QFETCH(double, hotAt);
    QFETCH(QString, code);
    const auto curve = fromTwoPoints(stated(cold, hot, coldAt, hotAt));
    QVERIFY(!curve);
    QCOMPARE(QString::fromStdString(curve.error().code), code);
  }
};

QTEST_APPLESS_MAIN(TestTwoPoint)
#include "tst_two_point.moc"
