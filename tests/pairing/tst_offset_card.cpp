#include <pairing/offset_card.h>
#include <QTest>
#include <cmath>
#include "invented_pairs.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

class OffsetCardTest : public QObject {
  Q_OBJECT
 private slots:
  void cardAndErrorTableNeverDiffer() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto sender = betaThrough(700, 50);
    const auto card = offsetCard(gauge, sender, {}, celsius(91));
    QVERIFY(card);
    for (const CardRow& row : card->rows) {
      const double shown = gauge.shownKelvin(sender.lnOhms(inKelvin(row.trueTemperature)));
      QVERIFY(std::abs(inKelvin(row.indicated.shown) - shown) < 1e-9);
      QVERIFY(std::abs(inKelvin(row.error) - (shown - inKelvin(row.trueTemperature))) < 1e-9);
      QVERIFY(row.uncertainty > kelvins(0));
    }
  }

  void rowsStandAtRoundTemperaturesOfTheUnit() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto celsiusCard = offsetCard(gauge, betaThrough(700, 50), {}, std::nullopt);
    QCOMPARE(inCelsius(celsiusCard->rows.front().trueTemperature), 40.0);
    QCOMPARE(celsiusCard->rows.size(), std::size_t(16));  // 40, 45 … 115
    DisplayUnits units;
    units.temperature = TemperatureUnit::fahrenheit;
    const auto fahrenheitCard = offsetCard(gauge, betaThrough(700, 50), {}, std::nullopt, {}, units);
    QVERIFY(std::abs(inFahrenheit(fahrenheitCard->rows[0].trueTemperature) - 110) < 1e-9);
    QVERIFY(std::abs(inFahrenheit(fahrenheitCard->rows[1].trueTemperature) - 120) < 1e-9);
  }

  void driverIsToldWhereTheNeedleStandsWarmedUp() {
    const auto family = betaThrough(900, 70);
    const auto own = offsetCard(gaugeFor(family), family, {}, celsius(91));
    QCOMPARE(QString::fromStdString(own->driverLine),
             QString::fromUtf8("Warmed up with the 91 °C thermostat the needle stands at 91 °C."));
    const auto dead = offsetCard(gaugeFor(family), betaThrough(9000, 900), {}, celsius(91));
    QCOMPARE(QString::fromStdString(dead->driverLine),
             QString::fromUtf8("Warmed up with the 91 °C thermostat the needle lies below the first mark."));
  }

  void thermostatOffTheCurveIsRefused() {
    const auto family = betaThrough(900, 70);
    const auto card = offsetCard(gaugeFor(family), family, {}, celsius(150));
    QVERIFY(!card);
    QCOMPARE(QString::fromStdString(card.error().code), QString("thermostat-off-curve"));
  }

  // The re-marked dial is true by construction: the needle of this sender stands at each new mark.
  void needleOfThisSenderStandsAtEachNewMark_data() {
    QTest::addColumn<bool>("movement");
    QTest::newRow("movement unknown") << false;
    QTest::newRow("crossed coil") << true;
  }
  void needleOfThisSenderStandsAtEachNewMark() {
    QFETCH(bool, movement);
    const auto family = betaThrough(900, 70);
    const auto sender = betaThrough(760, 66);
    const auto gauge = movement ? coilGaugeFor(family) : gaugeFor(family);
    const auto remarked = remarkedDial(gauge, sender, {});
    QVERIFY(remarked);
    QCOMPARE(inCelsius(remarked->dial.hotMark()), 115.0);
    QVERIFY(remarked->dial.marks().size() >= 6);
    for (const gauge::Mark& mark : remarked->dial.marks()) {
      const gauge::Reading reading = gauge.indicated(*sender.resistance(*mark.at));
      QVERIFY2(std::abs(reading.needle.degrees - mark.angle.degrees) < 1e-6, mark.text.c_str());
    }
  }

  void marksTheNeedleCannotReachAreLeftOutAndNamed() {
    const auto remarked = remarkedDial(gaugeFor(betaThrough(900, 70)), betaThrough(2500, 80), {});
    QVERIFY(remarked);
    QVERIFY(!remarked->leftOut.empty());
    QCOMPARE(inCelsius(remarked->leftOut.front()), 40.0);
  }

  void senderThatPutsTheHotMarkOnTheStopIsRefused() {
    const auto remarked = remarkedDial(gaugeFor(betaThrough(900, 70)), betaThrough(60, 10), {});
    QVERIFY(!remarked);
    QCOMPARE(QString::fromStdString(remarked.error().code), QString("hot-mark-on-stop"));
  }
};

QTEST_APPLESS_MAIN(OffsetCardTest)
#include "tst_offset_card.moc"
