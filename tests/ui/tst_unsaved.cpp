#include <catalogue/catalogue_page.h>
#include <date/date_page.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <look/style.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <plan/plan_page.h>
#include "shown_window.h"
#include "typing.h"

using namespace ohmkin;

/// What is typed is never lost without a word: by another catalogue, or by leaving.
class TestUnsaved : public QObject {
  Q_OBJECT

 private:
  Demo demo_;
  QString one_;
  QString other_;

  static QPushButton* buttonOf(QMessageBox& box, QMessageBox::ButtonRole role) {
    for (QAbstractButton* each : box.buttons())
      if (box.buttonRole(each) == role) return qobject_cast<QPushButton*>(each);
    return nullptr;
  }
  static jobs::JobsPage& jobTyped(ShownWindow& shown) {
    auto& page = shown.at<jobs::JobsPage>(6);
    (void)QTest::qWaitFor([&] { return page.ready(); });
    ShownWindow::press(Qt::Key_N, Qt::ControlModifier);
    (void)QTest::qWaitFor([&] { return page.job().fields().reference().hasFocus(); });
    QTest::keyClicks(&page.job().fields().reference(), QStringLiteral("green wagon"));
    return page;
  }

 private slots:
  void initTestCase() {
    QVERIFY(demo_.whole());
    QApplication::setStyle(new look::Style);
    one_ = demo_.copy("one.ohmkin");
    other_ = demo_.copy("other.ohmkin");
  }

  void aJobThatIsTypedIsAskedAbout() {
    ShownWindow shown(demo_, "job.ini");
    shown.open(one_);
    auto& page = jobTyped(shown);
    shown.at<match::MatchPage>(0);
    shown.window.openCatalogue(other_);
    QTRY_VERIFY(shown.question() != nullptr);
    QVERIFY2(shown.question()->text().contains("green wagon"), qPrintable(shown.question()->text()));
    QVERIFY(shown.question()->defaultButton() == buttonOf(*shown.question(), QMessageBox::RejectRole));
    buttonOf(*shown.question(), QMessageBox::RejectRole)->click();
    QTRY_VERIFY(shown.question() == nullptr);
    QCOMPARE(shown.window.windowTitle(), QStringLiteral("one.ohmkin – Ohmkin"));
    QCOMPARE(&shown.window.page(), &page);
    QCOMPARE(page.job().fields().reference().text(), QStringLiteral("green wagon"));
    shown.window.openCatalogue(other_);
    QTRY_VERIFY(shown.question() != nullptr);
    buttonOf(*shown.question(), QMessageBox::DestructiveRole)->click();
    QTRY_COMPARE(shown.window.windowTitle(), QStringLiteral("other.ohmkin – Ohmkin"));
    QVERIFY(shown.window.unsaved().isEmpty());
  }

  void aFormThatSaysWhatItSaidIsNotAskedAbout() {
    ShownWindow shown(demo_, "untyped.ini");
    shown.open(one_);
    auto& page = jobTyped(shown);
    page.job().fields().reference().clear();
    shown.window.openCatalogue(other_);
    QTRY_COMPARE(shown.window.windowTitle(), QStringLiteral("other.ohmkin – Ohmkin"));
    QVERIFY(shown.question() == nullptr);
  }

  void aThingThatIsEditedIsAskedAbout() {
    ShownWindow shown(demo_, "thing.ini");
    shown.open(one_);
    auto& page = shown.at<shelves::CataloguePage>(5);
    QTRY_VERIFY(page.ready());
    page.thing().open({"sender", {"BR-2215"}});
    QTRY_COMPARE(page.thing().shownNow().number, QStringLiteral("BR-2215"));
    ShownWindow::press(Qt::Key_F2);
    QTRY_VERIFY(page.thing().editing());
    page.thing().form().row("name")->takeKeyboard();
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("dented"));
    QVERIFY(page.thing().form().dirty());
    shown.window.openCatalogue(other_);
    QTRY_VERIFY(shown.question() != nullptr);
    QVERIFY2(shown.question()->text().contains("BR-2215"), qPrintable(shown.question()->text()));
    buttonOf(*shown.question(), QMessageBox::RejectRole)->click();
    QTRY_VERIFY(shown.question() == nullptr);
    QVERIFY(page.thing().editing() && page.thing().form().dirty());
  }

  void leavingIsAskedAbout() {
    ShownWindow shown(demo_, "leave.ini");
    shown.open(one_);
    jobTyped(shown);
    QVERIFY(!shown.window.close());
    QTRY_VERIFY(shown.question() != nullptr);
    QVERIFY(shown.window.isVisible());
    buttonOf(*shown.question(), QMessageBox::DestructiveRole)->click();
    QTRY_VERIFY(!shown.window.isVisible());
  }

  void aPlanReadingsAndASearchStay() {
    ShownWindow shown(demo_, "stay.ini");
    shown.open(one_);
    auto& match = shown.at<match::MatchPage>(0);
    match.query().setText(kSettled);
    auto& plan = shown.at<plan::PlanPage>(2);
    plan.dashes().setLines({{kSeveral, std::nullopt}});
    auto& bench = shown.at<measure::BenchPage>(3);
    QTRY_VERIFY(bench.ready());
    typeInto(bench.hand().table(), {QStringLiteral("60"), QStringLiteral("172")});
    auto& date = shown.at<castings::DatePage>(1);
    date.form().rows().at(0).number->setText(QStringLiteral("30418"));
    date.bench().name().setText(QStringLiteral("a layout of ours"));
    const auto rows = bench.hand().table().rows();
    shown.window.openCatalogue(other_);
    QTRY_COMPARE(shown.window.windowTitle(), QStringLiteral("other.ohmkin – Ohmkin"));
    QTest::qWait(800);
    QVERIFY(shown.question() == nullptr);
    QCOMPARE(match.query().text(), kSettled);
    QTRY_VERIFY(match.showsAnswer());
    QCOMPARE(plan.dashes().lines().size(), std::size_t{1});
    QCOMPARE(plan.dashes().lines().front().text, kSeveral);
    QCOMPARE(bench.hand().table().rows().front().cells, rows.front().cells);
    QCOMPARE(rows.front().cells[0], QStringLiteral("60"));
    QCOMPARE(date.form().rows().at(0).number->text(), QStringLiteral("30418"));
    QCOMPARE(date.bench().name().text(), QStringLiteral("a layout of ours"));
  }
};

QTEST_MAIN(TestUnsaved)
#include "tst_unsaved.moc"
