#include <catalog/bench_records.h>
#include <measure/bench_page.h>
#include <QSignalSpy>
#include <QTest>
#include "shown_page.h"
#include "typing.h"

using namespace ohmkin;
using namespace ohmkin::measure;

class TestBenchPage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  struct Shown : ShownPage<BenchPage> {
    using ShownPage::ShownPage;
    void open(const QString& file) {
      ShownPage::open(file);
      QVERIFY(page.ready());
    }
    void type(const std::vector<std::pair<QString, QString>>& readings) {
      std::vector<RowText> rows;
      rows.reserve(readings.size());
      for (const auto& [bath, ohms] : readings) rows.push_back({{bath, ohms}});
      page.hand().table().setRows(rows);
    }
    [[nodiscard]] bool answered(std::size_t readings) const {
      return page.hand().answer() != nullptr && page.hand().answer()->readings.size() == readings;
    }
  };

  /// Family A of the demo, its own sheet: 318 Ω at 40 °C, 34.6 Ω at 120 °C; between them the demo's curve.
  static std::vector<std::pair<QString, QString>> readingsOfA() {
    return {{"25", "523"}, {"45", "270"}, {"65", "148"}, {"85", "84"}};
  }

  [[nodiscard]] QString fileOf(const char* name, const QByteArray& text) const {
    QFile file(demo_.path(name));
    if (!file.open(QIODevice::WriteOnly)) return {};
    file.write(text);
    return file.fileName();
  }

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void cautionsStandBeforeAnythingIsTyped() {
    Shown shown(demo_, "cautions.ini");
    shown.open(demo_.file());
    const QString all = shown.page.hand().cautions().cautions().join(' ');
    for (const char* words : {"Local codes", "sealed vessel", "flame", "steam"}) QVERIFY2(all.contains(words), words);
    QTRY_VERIFY(shown.answered(0));
    QTRY_VERIFY(shown.page.hand().view().next().text().contains("Begin at"));
    QVERIFY(shown.page.asText().isEmpty());
  }

  void theAnswerGrowsAsReadingsAreTyped() {
    Shown shown(demo_, "grows.ini");
    shown.open(demo_.file());
    ReadingTable& table = shown.page.hand().table();
    shown.page.takeKeyboard();
    for (const auto& [bath, ohms] : readingsOfA()) typeInto(table, {bath, ohms});
    QTRY_VERIFY(shown.answered(4));
    const AnswerView& view = shown.page.hand().view();
    QCOMPARE(view.plot().picture().readings.size(), std::size_t(4));
    QVERIFY(!view.plot().picture().curve.empty());
    QVERIFY(!view.plot().picture().beyond.empty());
    QVERIFY(!view.plot().accessibleDescription().isEmpty());
    // Beyond what was measured there is no band.
    for (const auto& part : view.plot().picture().beyond)
      for (const PlottedPoint& point : part) QCOMPARE(point.high, 0.0);
    QCOMPARE(view.bars().rows().front().name, QString("Family A"));
    double all = 0;
    bool none = false;
    for (const SuspectRow& row : view.bars().rows()) {
      all += row.chance;
      none = none || row.name == "none of these";
    }
    QVERIFY(none);
    QVERIFY(std::abs(all - 1) < 1e-6);
    QVERIFY(shown.page.asText().contains("Family A"));
    // Nothing is claimed, so nothing is judged.
    QVERIFY(view.verdict().words().word.isEmpty());
  }

  void theVerdictIsAShapeAWordAndASentence_data() {
    QTest::addColumn<QString>("family");
    QTest::addColumn<double>("factor");
    QTest::addColumn<QString>("word");
    QTest::addColumn<int>("fit");
    QTest::newRow("as the family") << "Family A" << 1.0 << "Pass" << int(parts::Fit::fits);
    QTest::newRow("far off") << "Family A" << 1.4 << "Fail" << int(parts::Fit::cut);
    QTest::newRow("near the limit") << "Family A" << 1.08 << "Undecided" << int(parts::Fit::look);
  }
  void theVerdictIsAShapeAWordAndASentence() {
    QFETCH(QString, family);
    QFETCH(double, factor);
    QFETCH(QString, word);
    QFETCH(int, fit);
    Shown shown(demo_, "verdict.ini");
    shown.open(demo_.file());
    SetUp& setUp = shown.page.hand().setUp();
    setUp.meter().setCurrentIndex(setUp.meter().count() - 1);
    setUp.meterAccuracy().setText("0.3 %");
    setUp.thermometer().setCurrentIndex(setUp.thermometer().count() - 1);
    setUp.thermometerAccuracy().setText("0.1 K");
    QVERIFY(setUp.meterAccuracy().isVisible());
    // The demo's sheet: 318 Ω at 40 °C, ±8 %
    std::vector<RowText> rows(1);
    rows[0].cells = {"40", QString::number(318 * factor, 'f', 1), "", "h", "yes", "yes", "yes"};
    shown.page.hand().table().setRows(rows);
    Choose(shown.page.hand().keepForm().family(), family);
    const VerdictCard& card = shown.page.hand().view().verdict();
    QTRY_COMPARE(card.words().word, word);
    QCOMPARE(int(card.words().fit), fit);
    QVERIFY(!card.words().sentence.isEmpty());
    QVERIFY2(card.words().risk.contains("%"), qPrintable(card.words().risk));
    QVERIFY(card.accessibleDescription().contains(word));
  }
  static void Choose(parts::Choice& choice, const QString& words) {
    choice.setCurrentIndex(choice.findText(words));
    QVERIFY(choice.currentIndex() > 0);
  }

  void theBarometerIsAskedAboutWhereItCouldMeanTwoThings() {
    Shown shown(demo_, "barometer.ini");
    shown.open(demo_.file());
    SetUp& setUp = shown.page.hand().setUp();
    QVERIFY(!setUp.barometer().isVisible());
    shown.type({{"boil", "57"}});
    QTRY_VERIFY(setUp.barometer().isVisible());
    setUp.altitude().setText("400 m");
    setUp.barometer().setText("985 hPa");  // either could be weather: a low at sea level, a high at 400 m
    QTRY_VERIFY2(!setUp.question().isEmpty(), "no question");
    QVERIFY(shown.page.hand().table().wrong(0, bathColumn));
    setUp.reduced().setCurrentIndex(setUp.reduced().findData(static_cast<int>(bench::Reduced::no)));
    QTRY_VERIFY(setUp.question().isEmpty());
    QTRY_VERIFY(shown.answered(1));
    // IAPWS-IF97 saturation at 98.5 kPa: 99.2 °C (table of saturated water, 0.985 bar between 0.95 and 1.0 bar)
    QVERIFY(std::abs(inCelsius(shown.page.hand().answer()->readings.front().at) - 99.2) < 0.1);
  }

  void aWrongCellLeavesTheOtherRowsAnswered() {
    Shown shown(demo_, "wrong.ini");
    shown.open(demo_.file());
    shown.type({{"25", "523"}, {"45", "27o"}, {"65", "148"}});
    QTRY_VERIFY(shown.answered(2));
    QVERIFY(shown.page.hand().table().wrong(1, ohmsColumn));
    QVERIFY2(shown.page.hand().note().contains("27o"), qPrintable(shown.page.hand().note()));
  }

  void aCurveIsKeptAndTheAnswerSaysThatMatchingUsesIt() {
    const QString file = demo_.copy("keep.ohmkin");
    Shown shown(demo_, "keep.ini");
    shown.open(file);
    shown.type(readingsOfA());
    KeepForm& form = shown.page.hand().keepForm();
    form.part().setText("BR-2215");
    form.lot().setText("R7");
    form.who().setText("Ann");
    QTRY_VERIFY(shown.answered(4) && form.keep().isEnabled());
    QTest::keyClick(&form.keep(), Qt::Key_Space);
    QTRY_VERIFY2(form.told().contains("from now on"), qPrintable(form.told()));
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    auto runs = catalog::runs(catalogue);
    std::erase_if(runs, [](const auto& run) { return run.said.part != "BR-2215"; });
    QCOMPARE(runs.size(), std::size_t(1));
    QCOMPARE(runs.front().who, std::string("Ann"));
    QCOMPARE(runs.front().said.lot, std::string("R7"));
    QVERIFY(runs.front().curve.has_value());
    // And what the part reads now is held against it.
    QTRY_VERIFY(!shown.page.hand().answer()->drift.empty());
    // It is listed, and can be taken out again.
    shown.page.showPart(BenchPage::kept);
    ImportList& list = shown.page.imports();
    QTRY_COMPARE(list.table().rowCount(), 1);
    QVERIFY2(shown.page.asText().contains("BR-2215 of lot R7"), qPrintable(shown.page.asText()));
    QTest::keyClick(&list.undoButton(), Qt::Key_Space);
    QTest::keyClick(&list.undoButton(), Qt::Key_Space);
    QTRY_COMPARE(list.table().rowCount(), 0);
    QTRY_VERIFY(shown.page.hand().answer()->drift.empty());
  }

  void aPartThatNobodyKnowsIsDoubted() {
    Shown shown(demo_, "doubt.ini");
    shown.open(demo_.file());
    shown.type(readingsOfA());
    shown.page.hand().keepForm().part().setText("QQ-1");
    QTRY_VERIFY2(shown.page.hand().keepForm().doubt().contains("QQ-1"), "no doubt");
    QVERIFY(shown.page.hand().keepForm().part().wrong());
  }

  void coldOhmsAtTheCounterLeaveFewFamilies() {
    Shown shown(demo_, "counter.ini");
    shown.open(demo_.file());
    shown.page.showPart(BenchPage::atCounter);
    shown.page.takeKeyboard();
    QTest::keyClicks(&shown.page.counter().ohmsEntry(), "523");
    QTest::keyClicks(&shown.page.counter().room(), "25");
    QTRY_VERIFY(!shown.page.counter().remaining().chips().empty());
    bool named = false;
    for (const auto& chip : shown.page.counter().remaining().chips()) named = named || chip.text == "Family A";
    QVERIFY(named);
    QVERIFY(shown.page.asText().contains("Family A"));
    shown.page.counter().ohmsEntry().setText("cold");
    QTRY_VERIFY(shown.page.counter().remaining().chips().empty());
    QVERIFY(shown.page.counter().said().contains("cold"));
  }

  void aFileIsShownBeforeAnythingIsWrittenAndUndoneAfterwards() {
    const QString file = demo_.copy("import.ohmkin");
    const QString readings = fileOf("bath.csv",
                                    "part;Temperature (C);Resistance (ohm)\n"
                                    "BR-2215 lot R7;20,5;652\nBR-2215 lot R7;40,0;318\nBR-2215 lot R7;60,0;172\n"
                                    "BR-2215 lot R7;80,0;x\nBR-2215 lot R7;100,0;56,2\n"
                                    "unsorted;20,5;1930\nunsorted;40,0;928\nunsorted;60,0;440\nunsorted;100,0;101\n");
    Shown shown(demo_, "import.ini");
    shown.open(file);
    shown.page.takeFile(readings);
    FileDesk& desk = shown.page.file();
    QTRY_VERIFY(desk.showsPreview());
    QVERIFY2(desk.sentence().contains("8 readings in 2 curves"), qPrintable(desk.sentence()));
    QCOMPARE(desk.columns().separator().currentText(), QString("semicolon"));
    QCOMPARE(desk.columns().roles().size(), std::size_t(3));
    QCOMPARE(desk.columns().roles()[1]->currentText(), QString("temperature, °C"));
    QCOMPARE(desk.rejected().rowCount(), 1);
    QCOMPARE(desk.rejected().item(0, 0)->text(), QString("5 : 3"));
    QCOMPARE(desk.runs().rowCount(), 2);
    QCOMPARE(desk.runs().item(0, RunTable::part)->text(), QString("BR-2215"));
    QCOMPARE(desk.runs().item(0, RunTable::lot)->text(), QString("R7"));
    QVERIFY(desk.bars().rows().size() > 1);
    {
      const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
      QVERIFY(catalog::imports(catalogue).empty());
    }

    // What does not belong is left out.
    desk.runs().item(1, RunTable::bringIn)->setCheckState(Qt::Unchecked);
    QTRY_VERIFY(!desk.working() && desk.runs().item(1, RunTable::bringIn)->checkState() == Qt::Unchecked);
    desk.who().setText("Ben");
    QTRY_VERIFY(desk.bringInButton().isEnabled());
    QTest::keyClick(&desk.bringInButton(), Qt::Key_Space);
    QTRY_VERIFY2(desk.told().contains("import"), qPrintable(desk.told()));
    QTRY_VERIFY2(desk.already().contains("already") && desk.already().contains("Ben"), qPrintable(desk.already()));
    QVERIFY(!desk.bringInButton().isEnabled());

    shown.page.showPart(BenchPage::kept);
    ImportList& list = shown.page.imports();
    QTRY_COMPARE(list.table().rowCount(), 1);
    QVERIFY(shown.page.asText().contains("bath.csv"));
    QTest::keyClick(&list.undoButton(), Qt::Key_Space);
    QTest::keyClick(&list.undoButton(), Qt::Key_Space);
    QTRY_VERIFY2(list.told().contains("Out again"), qPrintable(list.told()));
    QTRY_VERIFY(!list.undoButton().isEnabled());
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    QVERIFY(catalog::runs(catalogue).empty());
    QTRY_VERIFY(desk.bringInButton().isEnabled());
  }

  void aColumnIsPutRight() {
    const QString readings =
        fileOf("kelvin.csv", "a,b,c\n313.15,318,1\n333.15,172,2\n353.15,97.5,3\n373.15,56.2,4\n393.15,34.6,5\n");
    Shown shown(demo_, "columns.ini");
    shown.open(demo_.file());
    shown.page.takeFile(readings);
    FileDesk& desk = shown.page.file();
    QTRY_VERIFY(!desk.working() && desk.columns().roles().size() == 3);
    const auto choose = [&desk](std::size_t column, const QString& words) {
      parts::Choice* choice = desk.columns().roles()[column];
      QVERIFY(choice->findText(words) >= 0);
      choice->setCurrentIndex(choice->findText(words));
      QTRY_VERIFY(!desk.working());
    };
    choose(0, "temperature, K");
    choose(1, "resistance, Ω");
    choose(2, "not used");
    QTRY_VERIFY(desk.showsPreview());
    QCOMPARE(desk.columns().roles()[0]->currentText(), QString("temperature, K"));
    QTRY_COMPARE(desk.runs().rowCount(), 1);
    QVERIFY2(desk.runs().item(0, RunTable::span)->text().contains("40"),
             qPrintable(desk.runs().item(0, RunTable::span)->text()));
    QCOMPARE(desk.bars().rows().front().name, QString("Family A"));
  }

  void aPartThatIsUnknownIsPutRightWhereItWasTyped() {
    const QString readings = fileOf("unknown.csv", "temperature C,ohms\n40,318\n60,172\n80,97.5\n100,56.2\n");
    Shown shown(demo_, "unknown.ini");
    shown.open(demo_.file());
    shown.page.takeFile(readings);
    FileDesk& desk = shown.page.file();
    QTRY_VERIFY(desk.showsPreview());
    desk.runs().item(0, RunTable::family)->setText("Family Q");
    QTRY_VERIFY2(desk.runsNote().contains("Family Q"), qPrintable(desk.runsNote()));
    QVERIFY(desk.runs().isVisible());
    QVERIFY(!desk.bringInButton().isEnabled());
    desk.runs().item(0, RunTable::family)->setText("Family A");
    QTRY_VERIFY(desk.bringInButton().isEnabled());
    QVERIFY(!desk.runsNote().contains("Family Q"));
    QTRY_VERIFY(!desk.bars().rows().front().aside.isEmpty());  // what it claims to be
  }

  void aFileThatIsNoneIsOneSentence() {
    Shown shown(demo_, "none.ini");
    shown.open(demo_.file());
    shown.page.takeFile(fileOf("words.csv", "nothing here\nbut words\n"));
    QTRY_VERIFY(!shown.page.file().working());
    QVERIFY(!shown.page.file().showsPreview());
    QVERIFY(!shown.page.file().sentence().isEmpty());
    QVERIFY(!shown.page.file().bringInButton().isEnabled());
    shown.page.takeFile(demo_.path("not-there.csv"));
    QTRY_VERIFY2(shown.page.file().sentence().contains("not-there"), qPrintable(shown.page.file().sentence()));
  }

  void aLongImportIsCancelledAndNothingIsIn() {
    const QString file = demo_.copy("cancel.ohmkin");
    QByteArray text("temperature C,ohms\n");
    for (int i = 0; i < 200000; ++i)
      text += QByteArray::number(20 + i % 90) + "," + QByteArray::number(700 - 5 * (i % 90)) + "\n";
    const QString readings = fileOf("long.csv", text);
    Shown shown(demo_, "cancel.ini");
    shown.open(file);
    FileDesk& desk = shown.page.file();
    shown.page.takeFile(readings);
    QVERIFY(desk.working() && desk.cancelButton().isVisible());
    QTest::keyClick(&desk.cancelButton(), Qt::Key_Space);
    QTRY_VERIFY_WITH_TIMEOUT(!desk.working(), 30000);
    QVERIFY2(desk.sentence().contains("Stopped"), qPrintable(desk.sentence()));
    shown.page.takeFile(readings);
    QTRY_VERIFY_WITH_TIMEOUT(desk.showsPreview() && !desk.working(), 30000);
    desk.bringInButton().click();
    QVERIFY(desk.working());
    QVERIFY(desk.cancelButton().isVisible());
    QTest::keyClick(&desk.cancelButton(), Qt::Key_Space);
    QTRY_VERIFY_WITH_TIMEOUT(!desk.working(), 30000);
    QVERIFY2(desk.told().contains("Cancelled"), qPrintable(desk.told()));
    const auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readOnly);
    QVERIFY(catalog::imports(catalogue).empty());
  }

  void anEmptyCatalogueSaysThatThereIsNothingToCompareWith() {
    const QString file = demo_.path("empty.ohmkin");
    (void)catalog::Catalogue::create(file.toStdString());
    Shown shown(demo_, "empty.ini");
    shown.open(file);
    shown.type(readingsOfA());
    QTRY_VERIFY(shown.answered(4));
    QVERIFY(shown.page.hand().answer()->fit.has_value());
    QVERIFY(shown.page.hand().view().bars().rows().empty());
  }

  void unitsChangeOnThePlot() {
    Shown shown(demo_, "units.ini");
    shown.open(demo_.file());
    QTRY_COMPARE(shown.page.hand().view().plot().picture().unit, QString("°C"));
    shown.settings.setUnits({TemperatureUnit::fahrenheit, TorqueUnit::newtonMetre});
    QTRY_COMPARE(shown.page.hand().view().plot().picture().unit, QString("°F"));
    QTRY_VERIFY(shown.page.hand().view().next().text().contains("°F"));
  }

  void everyFieldHasANameForWhoDoesNotSeeIt() {
    Shown shown(demo_, "names.ini");
    shown.open(demo_.file());
    for (const auto* entry : shown.page.findChildren<parts::Entry*>()) QVERIFY(!entry->accessibleName().isEmpty());
    for (const auto* choice : shown.page.findChildren<parts::Choice*>()) QVERIFY(!choice->accessibleName().isEmpty());
    for (const auto* table : shown.page.findChildren<QTableWidget*>()) QVERIFY(!table->accessibleName().isEmpty());
  }

  void aFileThatIsNoCatalogueIsRefused() {
    Shown shown(demo_, "refused.ini");
    QSignalSpy refused(&shown.page, &desk::Page::refused);
    shown.page.openCatalogue(fileOf("text.ohmkin", "no catalogue"));
    QVERIFY(refused.wait(5000));
    QVERIFY(!shown.page.ready());
    shown.page.showNoCatalogue();
    QVERIFY(!shown.page.ready());
  }
};

QTEST_MAIN(TestBenchPage)
#include "tst_bench_page.moc"
