#include <curve/two_point.h>
#include <pairing/verdict.h>
#include <QTest>
#include "invented_pairs.h"

/// Facts of the trade: common practice, no source. Families are stated as cold/hot ohms: 350/51 Ω (light trucks
/// 1967–73), 350/46 Ω (1974–78), 1365/55 Ω (1979–91), the temperatures not stated. They serve as check values here and
/// nowhere else.
using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

curve::Curve statedAtTheSameTwo(double cold, double hot) {
  return curve::fromTwoPoints({ohms(cold), ohms(hot), {celsius(38), celsius(38)}, {celsius(116), celsius(116)}})
      .value();
}

curve::Curve notStated(double cold, double hot) {
  return curve::fromTwoPoints({ohms(cold), ohms(hot), band(20, 40), band(104, 127)}).value();
}

gauge::Gauge early() { return gaugeFor(statedAtTheSameTwo(350, 51), 116); }
gauge::Gauge late() { return gaugeFor(statedAtTheSameTwo(1365, 55), 116); }

}  // namespace

class TradeFactsTest : public QObject {
  Q_OBJECT
 private slots:
  void highColdLateSenderOnAnEarlyGaugeReadsLowBetweenTheTwoTemperatures() {
    const auto table = errorTable(early(), statedAtTheSameTwo(1365, 55), {}, band(38, 116));
    QVERIFY(table);
    for (const ErrorRow& row : table->rows) QVERIFY(row.error < kelvins(0));
  }

  void earlySenderOnALateGaugeReadsHighBetweenTheTwoTemperatures() {
    const auto table = errorTable(late(), statedAtTheSameTwo(350, 51), {}, band(38, 116));
    QVERIFY(table);
    for (const ErrorRow& row : table->rows) QVERIFY(row.error > kelvins(0));
  }

  void whereTheTemperaturesAreNotStatedTheSignAtTheHotMarkIsNotSettled_data() {
    QTest::addColumn<double>("gaugeCold");
    QTest::addColumn<double>("gaugeHot");
    QTest::addColumn<double>("cold");
    QTest::addColumn<double>("hot");
    QTest::newRow("late sender, early gauge") << 350.0 << 51.0 << 1365.0 << 55.0;
    QTest::newRow("early sender, late gauge") << 1365.0 << 55.0 << 350.0 << 51.0;
    QTest::newRow("middle sender, early gauge") << 350.0 << 51.0 << 350.0 << 46.0;
  }
  void whereTheTemperaturesAreNotStatedTheSignAtTheHotMarkIsNotSettled() {
    QFETCH(double, gaugeCold);
    QFETCH(double, gaugeHot);
    QFETCH(double, cold);
    QFETCH(double, hot);
    const auto table = errorTable(gaugeFor(notStated(gaugeCold, gaugeHot)), notStated(cold, hot), {}, band(80, 115));
    QVERIFY(table);
    QCOMPARE(table->hotSign, HotSign::notSettled);
    Circumstances about;
    about.temperaturesStated = false;
    const Verdict verdict = judge(*table, std::nullopt, {}, about);
    QCOMPARE(verdict.electrical, Electrical::undecided);
    QVERIFY(verdict.takeReadingAt.has_value());
  }

  void resistanceFallsAsTemperatureRises() {
    for (const auto& [cold, hot] : {std::pair{350.0, 51.0}, {350.0, 46.0}, {1365.0, 55.0}}) {
      QVERIFY(statedAtTheSameTwo(cold, hot).falls());
      QVERIFY(notStated(cold, hot).falls());
    }
  }

  void leadGroundedGoesPastHotAndLeadOpenLiesAtTheColdEnd() {
    for (const gauge::Gauge& gauge : {early(), late()}) {
      QCOMPARE(gauge.indicated(ohms(0)).where, gauge::Where::pastTheMarks);
      QCOMPARE(gauge.indicated(ohms(INFINITY)).where, gauge::Where::belowTheMarks);
    }
  }

  // "A good gauge may still be 5 to 10 % out": of its marked span, and no candidate's verdict hangs on it.
  void goodGaugeMayBeFiveToTenPercentOut() {
    const auto family = statedAtTheSameTwo(350, 51);
    for (const double part : {0.05, 0.10}) {
      PairOptions options;
      options.sameFamily = true;
      options.inputs = {0.0, 0, part, kelvins(0), kelvins(0), volts(0)};
      const auto table = errorTable(early(), family, {}, band(80, 116), options);
      const double halfWidth = part * (116 - 40);
      QVERIFY(std::abs(inKelvin(table->worst.uncertainty.shared) - 2 * halfWidth / std::sqrt(3.0)) < 1e-9);
      QCOMPARE(judge(*table, std::nullopt, {}, {}).electrical, Electrical::sameFamily);
    }
    QVERIFY(Inputs{}.gaugeTolerance >= 0.05 && Inputs{}.gaugeTolerance <= 0.10);
  }
};

QTEST_APPLESS_MAIN(TradeFactsTest)
#include "tst_trade_facts.moc"
