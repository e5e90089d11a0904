#include <exchange/reading_file.h>
#include <QTest>

using namespace ohmkin;
using exchange::readReadings;

class TestReadingFile : public QObject {
  Q_OBJECT
 private slots:
  void headings_name_the_columns_and_their_units_data() {
    QTest::addColumn<QString>("text");
    QTest::newRow("plain") << "temperature_c,ohms\n20,480\n";
    QTest::newRow("other order, kilohms") << "kOhm,temp_c\n0.48,20\n";
    QTest::newRow("Fahrenheit heading") << "Temperature (°F),Resistance\n68,480\n";
    QTest::newRow("units in the cells") << "t,r\n68F,0.48k\n";
    QTest::newRow("kelvin") << "temp_k,ohms\n293.15,480\n";
    QTest::newRow("byte-order mark and CRLF") << "\xEF\xBB\xBFtemperature_c,ohms\r\n20,480\r\n";
  }
  void headings_name_the_columns_and_their_units() {
    QFETCH(QString, text);
    const auto read = readReadings(text.toStdString(), "r.csv", {TemperatureUnit::celsius, true, ""});
    QVERIFY2(read, read ? "" : read.error().text().c_str());
    QCOMPARE(read->size(), std::size_t{1});
    QVERIFY(std::abs(inCelsius(read->front().at) - 20) < 1e-9);
    QVERIFY(std::abs(inOhms(read->front().ohms) - 480) < 1e-9);
  }
  void the_direction_of_the_run_is_read() {
    const auto read = readReadings("temperature_c,ohms,direction\n20,480,heating\n21,470,cooling\n22,460,\n", "r.csv",
                                   {TemperatureUnit::celsius, true, ""});
    QVERIFY(read);
    QVERIFY(!(*read)[0].cooling && (*read)[1].cooling && !(*read)[2].cooling);
  }
  void every_bad_cell_is_named_by_file_line_and_column() {
    const auto read = readReadings("temperature_c,ohms\n20,480\nwarm,470\n22,OL\n-300,5\n", "r.csv",
                                   {TemperatureUnit::celsius, true, ""});
    QVERIFY(!read);
    const std::string text = read.error().text();
    for (const char* place : {"r.csv:3:1", "r.csv:4", "r.csv:5:1"})
      QVERIFY2(text.find(place) != std::string::npos, text.c_str());
  }
  void a_file_without_the_columns_is_refused() {
    for (const char* bad : {"", "a,b\n1,2\n", "temperature_c\n20\n"})
      QVERIFY2(!readReadings(bad, "r.csv", {TemperatureUnit::celsius, true, ""}), bad);
  }
};

QTEST_APPLESS_MAIN(TestReadingFile)
#include "tst_reading_file.moc"
