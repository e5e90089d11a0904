#include <measure/curve_plot.h>
#include <measure/file_words.h>
#include <measure/reading_rows.h>
#include <measure/reading_table.h>
#include <QSignalSpy>
#include <QTest>
#include "demo.h"
#include "typing.h"

using namespace ohmkin;
using namespace ohmkin::measure;

/// The table as it is typed, and what its cells say.
class TestBenchRows : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  [[nodiscard]] RowsRead read(const std::vector<RowText>& rows, const SetUpSaid& setUp = {},
                              TemperatureUnit bare = TemperatureUnit::celsius) const {
    const auto catalogue = catalog::Catalogue::open(demo_.file().toStdString(), catalog::Access::readOnly);
    return readRows(catalogue, rows, setUp, bare);
  }
  static RowText row(const QString& bath, const QString& ohms) { return {{bath, ohms}}; }

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void aRowIsReadAsItIsTyped() {
    RowText typed = row("60.5", "1.2k");
    typed.cells[swappedColumn] = "1190";
    typed.cells[runColumn] = "c";
    typed.cells[steadyColumn] = "1.5";
    typed.cells[hexColumn] = "yes";
    typed.cells[stirredColumn] = "n";
    const RowsRead got = read({typed});
    QVERIFY(got.troubles.empty());
    QCOMPARE(got.readings.size(), std::size_t(1));
    const workflow::HandReading& reading = got.readings.front();
    QVERIFY(reading.bath.kind == catalog::BathKind::thermometer);
    QCOMPARE(inCelsius(*reading.bath.shown), 60.5);
    QCOMPARE(inOhms(*reading.shown), 1200.0);
    QCOMPARE(inOhms(*reading.swapped), 1190.0);
    QVERIFY(reading.direction == bench::Direction::cooling);
    QCOMPARE(*reading.practice.perMinute, 0.015);
    QVERIFY(reading.practice.immersedPastHex == std::optional(true));
    QVERIFY(reading.practice.stirred == std::optional(false));
    QVERIFY(reading.practice.probesSwapped == std::optional(true));
  }

  void bareTemperaturesAreInThePersonsUnit() {
    const RowsRead got = read({row("212", "57"), row("100 C", "57")}, {}, TemperatureUnit::fahrenheit);
    QCOMPARE(got.readings.size(), std::size_t(2));
    // 212 °F is 100 °C: the scale's definition
    for (const auto& reading : got.readings) QVERIFY(std::abs(inCelsius(*reading.bath.shown) - 100) < 1e-9);
  }

  void bathsAreSaidInWords() {
    SetUpSaid setUp;
    setUp.altitude = "5000 ft";
    setUp.barometer = "29.92 inHg";
    setUp.reduced = bench::Reduced::toSeaLevel;
    const RowsRead got = read({row("ice", "1640"), row("cubes", "1640"), row("Boil", "57")}, setUp);
    QVERIFY(got.troubles.empty());
    QCOMPARE(got.readings.size(), std::size_t(3));
    QVERIFY(got.readings[0].bath.kind == catalog::BathKind::crushedIce);
    QVERIFY(got.readings[1].bath.kind == catalog::BathKind::iceCubes);
    const workflow::BathSaid& boil = got.readings[2].bath;
    QVERIFY(boil.kind == catalog::BathKind::boilingWater);
    QVERIFY(boil.reduced == bench::Reduced::toSeaLevel);
    QCOMPARE(inMillimetres(*boil.altitude), 1524000.0);  // 0.3048 m, exact by definition
    // NIST SP 811 (2008), appendix B.8: conventional inch of mercury, 3.386 389 kPa
    QVERIFY(std::abs(inKilopascals(*boil.barometer) - 101.3207) < 1e-3);
  }

  void overloadIsNoNumberAndAnUnfinishedRowNoComplaint() {
    const RowsRead got = read({row("40", "OL"), row("60", ""), row("", "200")});
    QVERIFY(got.troubles.empty());
    QCOMPARE(got.readings.size(), std::size_t(1));
    QVERIFY(!got.readings.front().shown);
    QCOMPARE(got.rows, std::vector<int>{0});
  }

  void whatIsWrongIsSaidOfItsCell_data() {
    QTest::addColumn<QString>("bath");
    QTest::addColumn<QString>("ohms");
    QTest::addColumn<QString>("run");
    QTest::addColumn<int>("column");
    QTest::newRow("no bath") << "puddle"
                             << "200"
                             << "" << int(bathColumn);
    QTest::newRow("below absolute zero") << "-300"
                                         << "200"
                                         << "" << int(bathColumn);
    QTest::newRow("letters") << "40"
                             << "7oo"
                             << "" << int(ohmsColumn);
    QTest::newRow("nothing") << "40"
                             << "0"
                             << "" << int(ohmsColumn);
    QTest::newRow("no run") << "40"
                            << "318"
                            << "q" << int(runColumn);
  }
  void whatIsWrongIsSaidOfItsCell() {
    QFETCH(QString, bath);
    QFETCH(QString, ohms);
    QFETCH(QString, run);
    QFETCH(int, column);
    RowText wrong = row(bath, ohms);
    wrong.cells[runColumn] = run;
    const RowsRead got = read({row("20", "720"), wrong});
    QCOMPARE(got.readings.size(), std::size_t(1));
    QCOMPARE(got.troubles.size(), std::size_t(1));
    QCOMPARE(got.troubles.front().row, 1);
    QCOMPARE(got.troubles.front().column, column);
    QVERIFY(!got.troubles.front().sentence.isEmpty());
  }

  void enterGoesFromBathToOhmsToTheNextRow() {
    ReadingTable table;
    table.show();
    table.takeKeyboard();
    QSignalSpy changed(&table, &ReadingTable::changed);
    typeInto(table, {"20", "720", "ice", "1640"});
    const auto rows = table.rows();
    QCOMPARE(rows.size(), std::size_t(2));
    QCOMPARE(rows[0].cells[bathColumn], QString("20"));
    QCOMPARE(rows[0].cells[ohmsColumn], QString("720"));
    QCOMPARE(rows[1].cells[bathColumn], QString("ice"));
    QCOMPARE(rows[1].cells[ohmsColumn], QString("1640"));
    QCOMPARE(table.currentRow(), 2);
    QCOMPARE(table.currentColumn(), int(bathColumn));
    QVERIFY(changed.count() >= 4);
  }

  void anEmptyRowAlwaysFollows() {
    ReadingTable table;
    std::vector<RowText> many(40, row("20", "720"));
    table.setRows(many);
    QCOMPARE(table.rows().size(), std::size_t(40));
    QVERIFY(table.rowCount() > 40);
  }

  void aBlockFromASpreadsheetFillsRows() {
    ReadingTable table;
    table.setCurrentCell(0, 0);
    table.pasteText("Temp\tOhms\n20,5\t731\n30,1\t485\n\n");
    const auto rows = table.rows();
    QCOMPARE(rows.size(), std::size_t(2));
    QCOMPARE(rows[1].cells[bathColumn], QString("30,1"));
    QCOMPARE(rows[1].cells[ohmsColumn], QString("485"));
    const RowsRead got = read(rows);
    QVERIFY(got.troubles.empty());
    QCOMPARE(inCelsius(*got.readings[0].bath.shown), 20.5);
  }

  void spaceTicksAndDeleteEmpties() {
    ReadingTable table;
    table.show();
    table.setRows({row("20", "720")});
    table.setCurrentCell(0, stirredColumn);
    QTest::keyClick(&table, Qt::Key_Space);
    QVERIFY(saysYes(table.rows()[0].cells[stirredColumn]));
    QTest::keyClick(&table, Qt::Key_Space);
    QCOMPARE(table.rows()[0].cells[stirredColumn], QString("no"));
    table.setCurrentCell(0, ohmsColumn);
    QTest::keyClick(&table, Qt::Key_Delete);
    QVERIFY(table.rows()[0].cells[ohmsColumn].isEmpty());
  }

  void aWrongCellSaysWhyToWhoDoesNotSeeIt() {
    ReadingTable table;
    table.setRows({row("20", "7oo")});
    table.setTroubles({{0, ohmsColumn, "found '7oo'"}});
    QVERIFY(table.wrong(0, ohmsColumn));
    QVERIFY(!table.wrong(0, bathColumn));
    QVERIFY(table.item(0, ohmsColumn)->data(Qt::AccessibleDescriptionRole).toString().contains("7oo"));
  }

  void ohmTicksStandAtRoundNumbers() {
    const std::vector<double> wide = ohmTicks(10, 1000);
    QCOMPARE(wide, (std::vector<double>{10, 20, 50, 100, 200, 500, 1000}));
    QVERIFY(ohmTicks(90, 250).size() >= 3);
    QVERIFY(ohmTicks(0, 100).empty());
  }

  void answersOfAFileAreSaidInWords() {
    QCOMPARE(answerWords("temperature=2:F"), QString("column 2 is the temperature, °F"));
    QCOMPARE(answerWords("decimal=comma"), QString("decimal: comma"));
  }
};

QTEST_MAIN(TestBenchRows)
#include "tst_bench_rows.moc"
