#include <plan/plan_page.h>
#include <plan/presenter.h>
#include <QAbstractPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QSignalSpy>
#include <QTest>
#include "dialogs.h"
#include "shown_page.h"

using namespace ohmkin;
using ohmkin::plan::PlanPage;

class TestPlanPage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  struct Shown : ShownPage<PlanPage> {
    using ShownPage::ShownPage;
    void type(const QStringList& dashes, const QStringList& engines) {
      for (int i = 0; i < dashes.size(); ++i)
        QTest::keyClicks(page.dashes().entry(static_cast<std::size_t>(i)), dashes[i]);
      for (int i = 0; i < engines.size(); ++i)
        QTest::keyClicks(page.engines().entry(static_cast<std::size_t>(i)), engines[i]);
    }
  };

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void everyPairIsAnswered() {
    Shown shown(demo_, "pairs.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility gauge package", "1975 ridgeway utility gauge package"},
               {"casting 30112", "casting 30418 dated H 22 1"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().cells.size(), std::size_t(4));
    const plan::GridPicture& picture = shown.page.grid().picture();
    for (int dash = 0; dash < 2; ++dash) {
      int best = 0;
      for (int engine = 0; engine < 2; ++engine) best += picture.at(dash, engine).best ? 1 : 0;
      QCOMPARE(best, 1);
    }
    QVERIFY(!shown.page.buyWords().isEmpty());
    const QString text = shown.page.asText();
    for (const char* words :
         {"1968 ridgeway utility gauge package", "casting 30418", "best for this dash", "Parts to buy"})
      QVERIFY2(text.contains(words), words);
  }

  void theGridIsGoneThroughByKeyboardAndSaysItself() {
    Shown shown(demo_, "keys.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility gauge package"}, {"casting 30112", "casting 30418"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().engines.size(), qsizetype(2));
    shown.page.grid().setCurrentIndex(shown.page.grid().model()->index(0, 0));
    const QString first = shown.page.pairWords();
    QTest::keyClick(&shown.page.grid(), Qt::Key_Right);
    QCOMPARE(shown.page.grid().currentIndex().column(), 1);
    QVERIFY(!shown.page.pairWords().isEmpty());
    const QString said =
        shown.page.grid().model()->data(shown.page.grid().currentIndex(), Qt::AccessibleTextRole).toString();
    QVERIFY2(said.contains("casting 30418"), qPrintable(said));
  }

  void openingAPlanCanBeTakenBack() {
    Shown shown(demo_, "undo.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility gauge package"}, {"casting 30112"});
    QTRY_VERIFY(shown.page.showsAnswer());
    const QString file = demo_.path("taken-back.json");
    QCOMPARE(shown.page.savePlan(file), QString());
    shown.page.dashes().setLines({{QStringLiteral("1970 ridgeway utility"), std::nullopt}});
    shown.page.engines().setLines({{QStringLiteral("casting 30418"), std::nullopt}});
    QCOMPARE(shown.page.openPlan(file), QString());
    QTRY_VERIFY(shown.page.history().canUndo());
    QVERIFY(shown.page.engines().lines().at(0).text.contains(QStringLiteral("30112")));
    shown.page.history().undo();
    QCOMPARE(shown.page.dashes().lines().at(0).text, QStringLiteral("1970 ridgeway utility"));
    QCOMPARE(shown.page.engines().lines().at(0).text, QStringLiteral("casting 30418"));
    shown.page.history().redo();
    QVERIFY(shown.page.engines().lines().at(0).text.contains(QStringLiteral("30112")));
  }

  void aPlanIsSavedAndOpenedAndAnswersTheSame() {
    Shown shown(demo_, "save.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility gauge package"}, {"casting 30112", "casting 30418 dated H 22 1"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().engines.size(), qsizetype(2));
    const auto parts = shown.page.buyWords();
    const QString file = demo_.path("swap.json");
    QCOMPARE(shown.page.savePlan(file), QString());

    Shown again(demo_, "open.ini");
    again.open(demo_.file());
    QCOMPARE(again.page.openPlan(file), QString());
    QTRY_VERIFY(again.page.showsAnswer());
    QTRY_COMPARE(again.page.buyWords(), parts);
    // What the lines say reads back as the same question, so that they can be typed on.
    const catalog::Catalogue catalogue =
        catalog::Catalogue::open(demo_.file().toStdString(), catalog::Access::readOnly);
    const workflow::Vocabulary vocabulary(catalogue);
    for (const plan::Line& line : again.page.dashes().lines()) {
      const auto read = workflow::readQuestion(vocabulary, line.text.toStdString()).question;
      QCOMPARE(read.line, line.opened->line);
      QCOMPARE(read.cluster, line.opened->cluster);
      QVERIFY(read.year == line.opened->year);
    }
    for (const plan::Line& line : again.page.engines().lines()) {
      const auto read = workflow::readQuestion(vocabulary, line.text.toStdString()).question;
      QCOMPARE(read.casting, line.opened->casting);
      QCOMPARE(read.castingDate, line.opened->castingDate);
    }
  }

  void whatIsNoPlanIsRefusedInOneSentence() {
    Shown shown(demo_, "noplan.ini");
    shown.open(demo_.file());
    QFile file(demo_.path("noplan.json"));
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write("{\"schema\": \"something else\"}");
    file.close();
    QVERIFY(shown.page.openPlan(file.fileName()).contains("noplan.json"));
    QVERIFY(shown.page.openPlan(demo_.path("not-there.json")).contains("not-there.json"));
    QVERIFY(!shown.page.savePlan(demo_.path("empty.json")).isEmpty());
  }

  void whatIsNotUnderstoodIsSaidUnderItsLine() {
    Shown shown(demo_, "unread.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility qqqzzz"}, {"casting 30418"});
    QTRY_VERIFY2(shown.page.dashes().note(0).contains("qqqzzz"), qPrintable(shown.page.dashes().note(0)));
    QTRY_VERIFY(shown.page.showsAnswer());
  }

  void oneSideAloneAsksForTheOther() {
    Shown shown(demo_, "side.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility"}, {});
    QTRY_VERIFY(shown.page.sheet().said().contains("engine"));
    QVERIFY(!shown.page.showsAnswer());
    QVERIFY(shown.page.asText().isEmpty());
  }

  void aRefusalNamesThePairWithoutTheTerminalsWords() {
    Shown shown(demo_, "refusal.ini");
    shown.open(demo_.file());
    shown.type({"1930 ridgeway utility"}, {"casting 30418"});
    const auto said = [&] {
      return shown.page.showsAnswer() ? shown.page.grid().picture().at(0, 0).sentence : QString();
    };
    QTRY_VERIFY2(said().contains("1930"), qPrintable(said()));
    QVERIFY(shown.page.grid().picture().at(0, 0).fit == parts::Fit::look);
    QVERIFY2(!said().contains("--"), qPrintable(said()));
  }

  void whatOnePairRefusesLeavesTheOthersAnswered() {
    Shown shown(demo_, "other-pairs.ini");
    shown.open(demo_.file());
    shown.type({"1930 ridgeway utility", "1968 ridgeway utility gauge package"}, {"casting 30418"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().cells.size(), std::size_t(2));
    const plan::GridPicture& picture = shown.page.grid().picture();
    QCOMPARE(picture.at(0, 0).part, QStringLiteral("Not looked at"));
    QVERIFY(picture.at(1, 0).answered);
  }

  void theExampleHasAnAnswer() {
    Shown shown(demo_, "example.ini");
    shown.open(demo_.file());
    QTRY_VERIFY(shown.page.sheet().example()->isVisible());
    QTest::keyClick(shown.page.sheet().example(), Qt::Key_Space);
    QTRY_VERIFY(shown.page.showsAnswer());
  }

  void unitsChangeInTheGrid() {
    Shown shown(demo_, "units.ini");
    shown.open(demo_.file());
    shown.type({"1968 ridgeway utility gauge package"}, {"casting 30418"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(shown.page.asText().contains(" K"));
    shown.settings.setUnits({TemperatureUnit::fahrenheit, TorqueUnit::newtonMetre});
    QTRY_VERIFY2(shown.page.asText().contains("F°"), qPrintable(shown.page.asText()));
  }

  void manyEnginesScrollAndStayReadable() {
    Shown shown(demo_, "many.ini");
    shown.open(demo_.file());
    std::vector<plan::Line> engines;
    engines.reserve(12);
    for (int i = 0; i < 12; ++i)
      engines.push_back({i % 2 == 0 ? QStringLiteral("casting 30418") : QStringLiteral("casting 30112"), {}});
    shown.page.engines().setLines(engines);
    shown.page.dashes().setLines(
        std::vector<plan::Line>{plan::Line{QStringLiteral("1968 ridgeway utility gauge package"), std::nullopt}});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().engines.size(), qsizetype(12));
    QVERIFY(shown.page.grid().columnWidth(0) >= 200);
    QVERIFY(shown.page.grid().width() <= shown.page.width());
    // The longer side goes down, and the chosen pair is the same wherever it stands.
    QVERIFY(shown.page.grid().cells().enginesDown());
    QCOMPARE(shown.page.grid().model()->rowCount(), 12);
    shown.page.grid().choose(0, 11);
    const QString said =
        shown.page.grid().model()->data(shown.page.grid().currentIndex(), Qt::AccessibleTextRole).toString();
    QVERIFY2(said.contains(engines[11].text), qPrintable(said));
    // However many there are, the answer begins in the upper half of the page.
    QVERIFY(shown.page.grid().mapTo(&shown.page, QPoint(0, 0)).y() < shown.page.height() / 2);
    shown.page.engines().entry(11)->setFocus();
    const parts::Entry* last = shown.page.engines().entry(11);
    QVERIFY(shown.page.rect().contains(QRect(last->mapTo(&shown.page, QPoint(0, 0)), last->size())));
  }

  void thePlanIsPreviewedPrintedAndKept() {
    Shown shown(demo_, "print.ini");
    shown.open(demo_.file());
    QVERIFY(!shown.page.print().isEnabled());
    QVERIFY(!shown.page.sheets());
    shown.type({"1968 ridgeway utility gauge package"}, {"casting 30112", "casting 30418"});
    QTRY_VERIFY(shown.page.showsAnswer());
    QTRY_COMPARE(shown.page.grid().picture().engines.size(), qsizetype(2));
    QVERIFY(shown.page.print().isEnabled());
    const auto sheets = shown.page.sheets();
    QVERIFY(sheets.has_value());
    // As the person called them, not as the catalogue does.
    const QString first = QString::fromStdString(sheets->pages.front());
    for (const char* words : {"casting 30112", "casting 30418", "SWAP PLAN"}) QVERIFY2(first.contains(words), words);

    int pages = 0;
    QAction* preview = sheetAction(shown.page.print(), QStringLiteral("Print preview…"));
    QVERIFY(preview != nullptr);
    QVERIFY(opensDialog<QPrintPreviewDialog>(
        [&] { preview->trigger(); },
        [&](QPrintPreviewDialog& dialog) { pages = dialog.findChild<QPrintPreviewWidget*>()->pageCount(); }));
    QCOMPARE(pages, static_cast<int>(sheets->pages.size()));
    QAction* print = sheetAction(shown.page.print(), QStringLiteral("Print…"));
    QVERIFY(print != nullptr);
    QVERIFY(opensDialog<QAbstractPrintDialog>([&] { print->trigger(); }));

    const QString file = demo_.path("plan.svg");
    QVERIFY(printing::writeSvg(*sheets, file));
    QFile svg(file);
    QVERIFY(svg.open(QIODevice::ReadOnly));
    QCOMPARE(svg.readAll().toStdString(), sheets->pages.front());
    QVERIFY(!printing::writeSvg(*sheets, demo_.path("not/there/plan.svg")));
  }
};

QTEST_MAIN(TestPlanPage)
#include "tst_plan_page.moc"
