#include <quantity/decimal_mark.h>
#include <quantity/parse.h>
#include <quantity/percent.h>
#include <quantity/print.h>
#include <QTest>

using namespace ohmkin;

class TestPrint : public QObject {
  Q_OBJECT
  const DisplayUnits si_;
  const DisplayUnits us_{TemperatureUnit::fahrenheit, TorqueUnit::poundFoot};
 private slots:
  void temperatures_and_differences_carry_their_own_signs() {
    QCOMPARE(print(celsius(95), si_), std::string("95 °C"));
    QCOMPARE(print(celsius(95), us_), std::string("203 °F"));
    QCOMPARE(print(celsius(-12.4), si_), std::string("−12 °C"));
    QCOMPARE(printDifference(kelvins(-7.2), si_), std::string("−7 K"));
    QCOMPARE(printDifference(kelvins(1), us_, 1), std::string("+1.8 F°"));
    QCOMPARE(printDifference(kelvins(-0.2), si_), std::string("0 K"));
    QCOMPARE(printAmount(kelvins(-11), si_), std::string("11 K"));
  }
  void ohms_keep_three_digits_and_nominal_values_lose_their_zeros() {
    QCOMPARE(print(ohms(51)), std::string("51.0 Ω"));
    QCOMPARE(print(ohms(1365)), std::string("1.36 kΩ"));
    QCOMPARE(print(ohms(480.2)), std::string("480 Ω"));
    QCOMPARE(print(ohms(4.703)), std::string("4.70 Ω"));
    QCOMPARE(printNominal(ohms(510)), std::string("510 Ω"));
    QCOMPARE(printNominal(ohms(1200)), std::string("1.2 kΩ"));
    QCOMPARE(printNominal(ohms(4.7)), std::string("4.7 Ω"));
  }
  void percent_has_a_true_minus_and_nothing_has_no_sign() {
    QCOMPARE(signedPercent(-0.412, 0), std::string("−41 %"));
    QCOMPARE(signedPercent(0.0346, 1), std::string("+3.5 %"));
    QCOMPARE(signedPercent(-0.0004, 1), std::string("0.0 %"));
  }
  void torque_in_either_unit() {
    QCOMPARE(print(newtonMetres(15), si_), std::string("15 N·m"));
    QCOMPARE(print(newtonMetres(15), us_), std::string("11 lbf·ft"));
  }
  void lengths() {
    QCOMPARE(print(millimetres(2400)), std::string("2.4 m"));
    QCOMPARE(print(millimetres(11)), std::string("11 mm"));
  }
  void a_reader_of_decimal_commas_gets_them_and_can_type_them_back() {
    writeDecimalsWith(DecimalMark::comma);
    const std::string ohmsShown = print(ohms(4.703));
    const std::string nominal = printNominal(ohms(4700));
    const std::string whole = printNominal(ohms(510));
    const std::string zero = printDifference(kelvins(-0.02), si_, 1);
    const std::string difference = printDifference(kelvins(1), us_, 1);
    const std::string percent = signedPercent(-0.0004, 1);
    writeDecimalsWith(DecimalMark::point);
    QCOMPARE(ohmsShown, std::string("4,70 Ω"));
    QCOMPARE(nominal, std::string("4,7 kΩ"));
    QCOMPARE(whole, std::string("510 Ω"));
    QCOMPARE(zero, std::string("0,0 K"));
    QCOMPARE(difference, std::string("+1,8 F°"));
    QCOMPARE(percent, std::string("0,0 %"));
    QCOMPARE(inOhms(*parseOhms(nominal, "")), 4700.0);
  }
  void units_are_chosen_by_name() {
    QCOMPARE(*parseDisplayUnits("F,lbf-ft"), us_);
    QCOMPARE(*parseDisplayUnits(""), si_);
    QCOMPARE(parseDisplayUnits("R", "--units").error().code, std::string("units-unknown"));
  }
};

QTEST_APPLESS_MAIN(TestPrint)
#include "tst_print.moc"
