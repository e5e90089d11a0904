#include <match/match_page.h>
#include <match/wording.h>
#include <QElapsedTimer>
#include <QPrintPreviewDialog>
#include <QSignalSpy>
#include <QTest>
#include "dialogs.h"
#include "shown_page.h"

using namespace ohmkin;
using namespace ohmkin::match;

class TestMatchPage : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  using Shown = ShownPage<MatchPage>;

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void theEmptyPageSaysWhatToTypeAndOffersWhatHasAnAnswer() {
    Shown shown(demo_, "empty.ini");
    shown.open(demo_.file());
    QVERIFY(!shown.page.showsAnswer());
    QTRY_VERIFY(!shown.page.start().examples().empty());
    QTest::keyClick(shown.page.start().examples().front(), Qt::Key_Space);
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(shown.page.candidates().rows().rowCount() > 0);
  }

  void anAnswerFillsEveryPart() {
    Shown shown(demo_, "answer.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(shown.page.candidates().rows().rowCount() > 1);
    QVERIFY(!shown.page.chips().chips().empty());
    QVERIFY(!shown.page.chain().chain().links[0].headline.isEmpty());
    QVERIFY(shown.page.needles().dial().picture().shown.has_value());
    QVERIFY(!shown.page.details().plot().picture().series.empty());
    QVERIFY(!shown.page.cautions().cautions().isEmpty());
    QVERIFY(shown.page.cautions().isVisibleTo(&shown.page));
    QVERIFY(shown.page.asText().contains(shown.page.candidates().rows().row(0).part));
  }

  void theChainFollowsTheChosenSender() {
    Shown shown(demo_, "chain.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    for (int i = 0; i < 3; ++i) {
      const QString part = shown.page.candidates().rows().row(i).part;
      QVERIFY2(shown.page.chain().chain().links[2].headline.startsWith(part.section(QLatin1Char(' '), 0, 0)),
               qPrintable(part));
      QTest::keyClick(&shown.page.candidates(), Qt::Key_Down);
    }
  }

  void onlyTheLastQuestionIsAnswered() {
    Shown shown(demo_, "last.ini");
    shown.open(demo_.file());
    for (int year = 1955; year < 1995; ++year)
      shown.page.query().setText(QStringLiteral("%1 ridgeway utility").arg(year));
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    const auto chips = shown.page.chips().chips();
    QTest::qWait(100);
    QVERIFY(chips == shown.page.chips().chips());
    QVERIFY(std::any_of(chips.begin(), chips.end(), [](const auto& chip) { return chip.text.contains("1968"); }));
  }

  void typingNeverWaitsForTheCatalogue() {
    Shown shown(demo_, "wait.ini");
    shown.open(demo_.file());
    QElapsedTimer clock;
    clock.start();
    for (int i = 0; i < 50; ++i) shown.page.query().setText(kSettled.left(kSettled.size() - i % 7));
    // Fifty questions are put, none is computed on this thread; each put costs far less than a frame of 16 ms.
    QVERIFY2(clock.elapsed() < 50 * 16, qPrintable(QString::number(clock.elapsed())));
  }

  void severalBranchesCanBeGoneThrough() {
    Shown shown(demo_, "branches.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSeveral);
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(shown.page.branches().isVisibleTo(&shown.page));
    QVERIFY(shown.page.branches().count() > 1);
    QVERIFY(shown.page.look().isVisibleTo(&shown.page));
    const auto first = shown.page.chain().chain();
    bool changed = false;
    for (int i = 1; i < shown.page.branches().count(); ++i) {
      shown.page.branches().choose(i);
      changed = changed || !(shown.page.chain().chain() == first);
    }
    QVERIFY(changed);
  }

  void unitsChangeEverywhere() {
    Shown shown(demo_, "units.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(shown.page.needles().said().contains(QStringLiteral("°C")));
    shown.settings.setUnits({TemperatureUnit::fahrenheit, TorqueUnit::newtonMetre});
    QTRY_VERIFY(shown.page.needles().said().contains(QStringLiteral("°F")));
    QVERIFY(!shown.page.needles().said().contains(QStringLiteral("°C")));
    QCOMPARE(shown.page.details().plot().picture().temperatureUnit, QStringLiteral("°F"));
    QVERIFY(shown.page.candidates().rows().row(0).worst.contains(QStringLiteral("F°")));
  }

  void refusedSendersAreShownOnRequest() {
    Shown shown(demo_, "refused.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    const int before = shown.page.candidates().rows().rowCount();
    QTest::keyClick(&shown.page, Qt::Key_R, Qt::ControlModifier);
    QVERIFY(shown.page.candidates().rows().rowCount() > before);
    QVERIFY(shown.page.candidates().rows().row(shown.page.candidates().rows().rowCount() - 1).refused);
  }

  void theDialIsDrawnWithTheDriversLine() {
    Shown shown(demo_, "dial.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    shown.page.details().showTab(DetailPanel::dial);
    QVERIFY(shown.page.details().dialTab().drawn());
    QVERIFY2(shown.page.details().dialTab().said().contains(QStringLiteral("Warmed up with the")),
             qPrintable(shown.page.details().dialTab().said()));
    shown.settings.setUnits({TemperatureUnit::fahrenheit, TorqueUnit::newtonMetre});
    QTRY_VERIFY(shown.page.details().dialTab().said().contains(QStringLiteral("°F")));
  }

  void theBandIsCheckedByMonteCarlo() {
    Shown shown(demo_, "draws.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    ErrorTab& errors = shown.page.details().errors();
    const QString before = errors.said();
    errors.check().click();
    QVERIFY(errors.checking());
    QTRY_VERIFY_WITH_TIMEOUT(!errors.checking(), 60000);
    const parts::PlotSeries& series = errors.plot().picture().series.front();
    QCOMPARE(series.drawn.size(), series.points.size());
    for (std::size_t i = 0; i < series.points.size(); ++i) QCOMPARE(series.drawn[i].at, series.points[i].at);
    QVERIFY(errors.said() != before);
    errors.check().click();  // and it can be put away again
    QVERIFY(errors.plot().picture().series.front().drawn.empty());
    QCOMPARE(errors.said(), before);
  }

  void aCheckIsCancelledByEscapeAndByAnotherSender() {
    Shown shown(demo_, "cancel.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    QVERIFY(QTest::qWaitForWindowActive(&shown.page));
    ErrorTab& errors = shown.page.details().errors();
    errors.check().click();
    QVERIFY(errors.checking());
    QElapsedTimer clock;
    clock.start();
    QTest::keyClick(&shown.page.candidates(), Qt::Key_Escape);
    QVERIFY(!errors.checking());
    QVERIFY2(clock.elapsed() < 200, qPrintable(QString::number(clock.elapsed())));

    errors.check().click();
    QVERIFY(errors.checking());
    QTest::keyClick(&shown.page.candidates(), Qt::Key_Down);
    QVERIFY(!errors.checking());
    QTest::qWait(300);  // what the first would have found does not come any more
    QVERIFY(errors.plot().picture().series.front().drawn.empty());
  }

  void theSliderTurnsTheNeedle() {
    Shown shown(demo_, "slider.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    QSlider* slider = shown.page.needles().slider();
    QTest::keyClick(slider, Qt::Key_Home);
    const double low = *shown.page.needles().dial().picture().truth;
    QVERIFY2(shown.page.needles().said().contains(QStringLiteral("below the first mark")),
             qPrintable(shown.page.needles().said()));
    QTest::keyClick(slider, Qt::Key_End);
    QVERIFY(*shown.page.needles().dial().picture().truth > low);
    QVERIFY2(shown.page.needles().said().contains(QStringLiteral("past the last mark")) ||
                 shown.page.needles().said().contains("does not reach"),
             qPrintable(shown.page.needles().said()));
  }

  void aCatalogueThatIsNotThereIsOneClearSentence() {
    Shown shown(demo_, "missing.ini");
    QSignalSpy refused(&shown.page, &desk::Page::refused);
    shown.page.openCatalogue(demo_.path("nothing-here.ohmkin"));
    QVERIFY(refused.wait(5000));
    QVERIFY(!shown.page.showsAnswer());
    QVERIFY(shown.page.start().said().contains(QStringLiteral("nothing-here.ohmkin")));
    shown.open(demo_.file());  // and another one can be opened after that
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
  }

  void whatIsNotUnderstoodIsSaid() {
    Shown shown(demo_, "unread.ini");
    shown.open(demo_.file());
    shown.page.query().setText(QStringLiteral("qqqzzz 1968 ridgeway utility"));
    QTRY_VERIFY(!shown.page.chips().chips().empty());
    const auto& chips = shown.page.chips().chips();
    QVERIFY(std::any_of(chips.begin(), chips.end(), [](const auto& chip) { return chip.text.contains("qqqzzz"); }));
  }

  void aRefusalIsSaidWithoutTheTerminalsWords() {
    QCOMPARE(desk::refusalSentence({"x", "--casting-date", "'H99'", "a day of the month"}),
             QStringLiteral("Casting date: found 'H99', expected a day of the month."));
  }

  void theDialsSheetIsPreviewedAndPrinted() {
    Shown shown(demo_, "print.ini");
    shown.open(demo_.file());
    shown.page.query().setText(kSettled);
    QTRY_VERIFY(shown.page.showsAnswer());
    shown.page.details().showTab(DetailPanel::dial);
    for (const char* words : {"Print preview…", "Print…"}) {
      QAction* action = sheetAction(shown.page.details().dialTab().print(), QString::fromUtf8(words));
      QVERIFY(action != nullptr);
      QVERIFY2(opensDialog<QDialog>([&] { action->trigger(); }), words);
    }
  }

  void theTrimSheetIsPreviewed() {
    Shown shown(demo_, "trimprint.ini");
    shown.open(demo_.file());
    // The demo's field car reads right only with resistors.
    shown.page.query().setText(QStringLiteral("1964 field car casting 30112"));
    QTRY_VERIFY(shown.page.showsAnswer());
    int row = 0;
    while (shown.page.details().tab() != DetailPanel::trim && row++ < 30) {
      shown.page.details().showTab(DetailPanel::trim);
      if (shown.page.details().tab() != DetailPanel::trim) QTest::keyClick(&shown.page.candidates(), Qt::Key_Down);
    }
    QCOMPARE(shown.page.details().tab(), DetailPanel::trim);
    QAction* action = sheetAction(shown.page.details().trimTab().print(), QStringLiteral("Print preview…"));
    QVERIFY(action != nullptr);
    QVERIFY(opensDialog<QPrintPreviewDialog>([&] { action->trigger(); }));
  }

  void wordsThatCouldBeSeveralLinesAreNamed() {
    Shown shown(demo_, "make.ini");
    shown.open(demo_.file());
    shown.page.query().setText(QStringLiteral("1968 ridgeway"));
    QTRY_VERIFY(!shown.page.chips().chips().empty());
    const auto& chips = shown.page.chips().chips();
    QVERIFY(std::any_of(chips.begin(), chips.end(),
                        [](const auto& chip) { return chip.text.contains("Ridgeway", Qt::CaseInsensitive); }));
  }
};

QTEST_MAIN(TestMatchPage)
#include "tst_match_page.moc"
