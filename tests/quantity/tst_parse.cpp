#include <quantity/barometer.h>
#include <quantity/parse.h>
#include <rapidcheck.h>
#include <QTest>
#include <limits>

using namespace ohmkin;

class TestParse : public QObject {
  Q_OBJECT
 private slots:
  void pressuresAndAltitudesWithoutAUnitAreNotGuessed() {
    QVERIFY(!parseBarometer("1013"));
    QVERIFY(!parseAltitude("1600"));
    QVERIFY(!parseBarometer("-3 hPa"));
    QCOMPARE(inKilopascals(*parseBarometer("1013,25 hPa")), 101.325);
    QCOMPARE(inMillimetres(*parseAltitude("5000ft")), 1524000.0);  // 0.3048 m, exact by definition
    // NIST SP 811 (2008), appendix B.8: conventional millimetre and inch of mercury, 133.3224 Pa and 3.386 389 kPa
    QVERIFY(std::abs(inKilopascals(*parseBarometer("760 mmHg")) - 101.3250) < 1e-4);
    QVERIFY(std::abs(inKilopascals(*parseBarometer("29.92 inHg")) - 101.3208) < 1e-4);
  }
  void reads_ohms_as_people_write_them_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<double>("expected");
    QTest::newRow("bare") << "51" << 51.0;
    QTest::newRow("decimal comma") << "51,5" << 51.5;
    QTest::newRow("unit") << "1365 ohms" << 1365.0;
    QTest::newRow("Greek omega") << "47 Ω" << 47.0;
    QTest::newRow("ohm sign") << "47 Ω" << 47.0;
    QTest::newRow("kilo") << "1.2 kΩ" << 1200.0;
    QTest::newRow("multiplier for the point") << "1k2" << 1200.0;
    QTest::newRow("R for the point") << "4R7" << 4.7;
    QTest::newRow("exponent") << "1e3" << 1000.0;
    QTest::newRow("mega") << "2.2M" << 2.2e6;
  }
  void reads_ohms_as_people_write_them() {
    QFETCH(QString, text);
    QFETCH(double, expected);
    const auto r = parseOhms(text.toStdString());
    QVERIFY2(r, r ? "" : r.error().sentence().c_str());
    QCOMPARE(inOhms(*r), expected);
  }

  void refuses_ohms_that_cannot_be_data() {
    QTest::addColumn<QString>("text");
    for (const char* bad : {"0", "-5", "nan", "inf", "1e999", "", "ohm", "51 C", "1k2k", "1.2k3", "1.2.3", "5 1", "OL"})
      QTest::newRow(bad) << bad;
  }
  void refuses_ohms_that_cannot_be() {
    QFETCH(QString, text);
    const auto r = parseOhms(text.toStdString(), "--reading");
    QVERIFY(!r);
    QCOMPARE(r.error().code, std::string("ohms-unreadable"));
    QVERIFY(r.error().sentence().starts_with("--reading: found '"));
  }

  void takes_the_unit_written_and_else_the_callers() {
    QCOMPARE(inCelsius(*parseTemperature("203F", TemperatureUnit::celsius)), 95.0);
    QCOMPARE(inCelsius(*parseTemperature("95", TemperatureUnit::celsius)), 95.0);
    QCOMPARE(inCelsius(*parseTemperature("95", TemperatureUnit::fahrenheit)), 35.0);
    QCOMPARE(inCelsius(*parseTemperature("−40 °F", TemperatureUnit::celsius)), -40.0);
    QCOMPARE(inKelvin(*parseTemperature("300 K", TemperatureUnit::celsius)), 300.0);
  }

  void refuses_temperatures_below_absolute_zero_and_beyond_any_sender() {
    for (const char* bad : {"-274", "-460F", "1001", "nan", "", "hot", "95X"})
      QVERIFY2(!parseTemperature(bad, TemperatureUnit::celsius), bad);
  }

  void refuses_a_reversed_band() {
    QVERIFY(parseBand("80:120", TemperatureUnit::celsius));
    QCOMPARE(parseBand("120:80", TemperatureUnit::celsius, "--band").error().code, std::string("band-reversed"));
    QCOMPARE(parseBand("80:80", TemperatureUnit::celsius).error().code, std::string("band-reversed"));
    QCOMPARE(parseBand("80", TemperatureUnit::celsius).error().code, std::string("band-unreadable"));
  }

  void reads_one_reading_of_a_sender() {
    const auto reading = parseReading("68F=480", TemperatureUnit::celsius);
    QVERIFY(reading);
    QCOMPARE(inCelsius(reading->first), 20.0);
    QCOMPARE(inOhms(reading->second), 480.0);
    QVERIFY(!parseReading("68F", TemperatureUnit::celsius));
    QVERIFY(!parseReading("68F=0", TemperatureUnit::celsius));
  }

  void wants_a_unit_for_torque() {
    QVERIFY(!parseTorque("20"));
    QVERIFY(parseTorque("20 lbf·ft"));
    QVERIFY(!parseTorque("-20Nm"));
  }

  void never_takes_noise_for_a_number() {
    rc::check("any bytes are either refused or a positive finite resistance", [](const std::string& text) {
      const auto r = parseOhms(text);
      if (r) RC_ASSERT(inOhms(*r) > 0 && inOhms(*r) < std::numeric_limits<double>::infinity());
    });
  }
};

QTEST_APPLESS_MAIN(TestParse)
#include "tst_parse.moc"
