#include <date/date_page.h>
#include <fault/fault_page.h>
#include <look/style.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <QHeaderView>
#include "shown_window.h"
#include "typing.h"

using namespace ohmkin;

/// What a drawing shows can be had in words and numbers by the keyboard alone.
class TestCharts : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  /// By Tab, from where the page puts the keyboard.
  static bool tabReaches(ShownWindow& shown, const QWidget& wanted) {
    shown.window.page().takeKeyboard();
    for (int i = 0; i < 120; ++i) {
      if (QApplication::focusWidget() == &wanted) return true;
      ShownWindow::press(Qt::Key_Tab);
    }
    return false;
  }

 private slots:
  void initTestCase() {
    QVERIFY(demo_.whole());
    QApplication::setStyle(new look::Style);
  }

  void theErrorPlot() {
    ShownWindow shown(demo_, "error.ini");
    shown.open(demo_.file());
    auto& page = shown.at<match::MatchPage>(0);
    page.query().setText(kSettled);
    QTRY_VERIFY(page.showsAnswer());
    auto& tab = page.details().errors();
    QTRY_VERIFY(!tab.plot().picture().series.empty());
    page.query().takeFocus();
    ShownWindow::press(Qt::Key_T, Qt::ControlModifier);
    QTRY_VERIFY(tab.table().hasFocus());
    QVERIFY(!tab.plot().isVisible());
    QVERIFY(tabReaches(shown, tab.table()));
    const auto& first = tab.plot().picture().series.front();
    const QAbstractItemModel& rows = *tab.table().model();
    QVERIFY(rows.rowCount() >= static_cast<int>(first.points.size()));
    for (const parts::PlotPoint& point : first.points) {
      const QModelIndexList at =
          rows.match(rows.index(0, 0), Qt::DisplayRole, QLocale().toString(point.at, 'f', 1), 1, Qt::MatchExactly);
      QVERIFY2(!at.isEmpty(), qPrintable(QString::number(point.at)));
      const QString said = rows.index(at.front().row(), 1).data().toString().replace(QChar(0x2212), QLatin1Char('-'));
      QVERIFY2(std::abs(QLocale().toDouble(said) - point.error) < 0.051, qPrintable(said));
    }
    const int row = tab.table().currentIndex().row();
    ShownWindow::press(Qt::Key_Down);
    QCOMPARE(tab.table().currentIndex().row(), row + 1);
    ShownWindow::press(Qt::Key_T, Qt::ControlModifier);
    QVERIFY(tab.plot().isVisible());
  }

  void theTimeLine() {
    ShownWindow shown(demo_, "time.ini");
    shown.open(demo_.file());
    auto& page = shown.at<castings::DatePage>(1);
    page.form().rows().at(0).number->setText(QStringLiteral("30418"));
    page.form().rows().at(0).code->setText(QStringLiteral("H 22 1"));
    QTRY_VERIFY(page.showsAnswer());
    page.takeKeyboard();
    ShownWindow::press(Qt::Key_T, Qt::ControlModifier);
    QTRY_VERIFY(page.table().isVisible());
    QVERIFY(tabReaches(shown, page.table()));
    QVERIFY(page.table().rowCount() >= static_cast<int>(page.timeLine().picture().rows.size()));
    for (const castings::TimeRow& row : page.timeLine().picture().rows)
      QVERIFY2(!page.table().findItems(row.name.section(QLatin1Char(' '), 0, 0), Qt::MatchContains).isEmpty(),
               qPrintable(row.name));
  }

  void theCurveOnTheBench() {
    ShownWindow shown(demo_, "curve.ini");
    shown.open(demo_.file());
    auto& page = shown.at<measure::BenchPage>(3);
    QTRY_VERIFY(page.ready());
    typeInto(page.hand().table(), {QStringLiteral("40"), QStringLiteral("318")});
    typeInto(page.hand().table(), {QStringLiteral("80"), QStringLiteral("97.5")});
    QVERIFY(tabReaches(shown, page.hand().table()));
    const auto plots = page.hand().view().findChildren<measure::CurvePlot*>();
    QVERIFY(!plots.isEmpty());
    QTRY_VERIFY(!plots.front()->picture().readings.empty());
    QVERIFY(!plots.front()->accessibleDescription().isEmpty());
  }

  void theBarsOfAFault() {
    ShownWindow shown(demo_, "bars.ini");
    shown.open(demo_.file());
    auto& page = shown.at<fault::FaultPage>(4);
    workflow::FaultSession session;
    session.question.gauge = "GA-1";
    session.symptom = circuit::Symptom::low;
    page.goOn(session);
    QTRY_VERIFY_WITH_TIMEOUT(!page.busy() && !page.bars().rows().empty(), 15000);
    for (const fault::LikelihoodRow& row : page.bars().rows())
      QVERIFY2(
          page.bars().accessibleDescription().contains(row.name) || page.bars().accessibleName().contains(row.name),
          qPrintable(page.bars().accessibleName() + page.bars().accessibleDescription()));
  }
};

QTEST_MAIN(TestCharts)
#include "tst_charts.moc"
