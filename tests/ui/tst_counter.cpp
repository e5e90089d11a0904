#include <app/window.h>
#include <fault/fault_page.h>
#include <jobs/jobs_page.h>
#include <match/match_page.h>
#include <parts/keep_with_job.h>
#include <plan/plan_page.h>
#include <QFileDialog>
#include <QMenu>
#include <QTest>
#include "demo.h"

using namespace ohmkin;

/// The counter's run with the keyboard only. Keys that hold another (Ctrl) count as presses of their own; letters of
/// what is asked and of names do not count.
class TestCounter : public QObject {
  Q_OBJECT

 private:
  int presses_ = 0;

  static QWidget* receiver() {
    if (QWidget* popup = QApplication::activePopupWidget()) return popup;
    if (QWidget* focus = QApplication::focusWidget()) return focus;
    return QApplication::activeWindow();
  }
  void press(Qt::Key key, Qt::KeyboardModifiers held = Qt::NoModifier) {
    presses_ += 1 + (held & Qt::ControlModifier ? 1 : 0) + (held & Qt::ShiftModifier ? 1 : 0);
    QTest::keyClick(receiver(), key, held);
  }
  static void type(const QString& text) {
    for (const QChar letter : text) QTest::keyClick(receiver(), letter.toLatin1());
  }

 private slots:
  void fromTheQuestionToThePrintedSheet() {
    const Demo demo;
    QVERIFY(demo.whole());
    desk::Settings settings(demo.path("counter.ini"));
    settings.remember(demo.file());
    app::Window window(settings);
    window.resize(1280, 800);
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    window.activateWindow();
    QApplication::setActiveWindow(&window);
    window.openLast();
    auto* match = qobject_cast<match::MatchPage*>(&window.page());
    QVERIFY(match != nullptr);
    QTRY_VERIFY(qobject_cast<QLineEdit*>(QApplication::focusWidget()) != nullptr);
    QTest::qWait(300);  // the catalogue is open

    type(kSettled);
    QTRY_VERIFY(match->showsAnswer());
    if (match->query().offering()) press(Qt::Key_Escape);
    press(Qt::Key_K, Qt::ControlModifier);
    QTRY_VERIFY(window.findChild<parts::KeepWithJob*>() != nullptr);
    auto* dialog = window.findChild<parts::KeepWithJob*>();
    QTRY_VERIFY(dialog->ready());
    QTRY_VERIFY(dialog->reference().hasFocus());
    type(QStringLiteral("blue pickup"));
    QVERIFY2(dialog->where().contains("new job"), qPrintable(dialog->where()));
    press(Qt::Key_Return);
    QTRY_VERIFY2(match->told().contains("blue pickup"), qPrintable(match->told()));
    QTRY_VERIFY(QApplication::activeModalWidget() == nullptr);
    QApplication::setActiveWindow(&window);

    press(Qt::Key_7, Qt::ControlModifier);
    auto* page = qobject_cast<jobs::JobsPage*>(&window.page());
    QVERIFY(page != nullptr);
    QTRY_COMPARE(page->job().heading(), QStringLiteral("blue pickup"));
    QTRY_VERIFY(page->jobSheet().has_value());

    const QString pdf = demo.path("job.pdf");
    press(Qt::Key_P, Qt::ControlModifier);
    QTRY_VERIFY(QApplication::activePopupWidget() != nullptr);
    press(Qt::Key_Right);  // the job sheet's own menu
    const auto atPdf = [] {
      auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
      return menu != nullptr && menu->activeAction() != nullptr && menu->activeAction()->text().contains("PDF");
    };
    for (int i = 0; i < 6 && !atPdf(); ++i) press(Qt::Key_Down);
    QVERIFY(atPdf());
    // The file dialog runs its own loop: typed into from there, and until it goes, since what Qt offers under the name
    // may take a Return for itself.
    bool asked = false;
    QTimer typing;
    connect(&typing, &QTimer::timeout, this, [&] {
      auto* files = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
      auto* name = files == nullptr ? nullptr : files->findChild<QLineEdit*>();
      if (name == nullptr || !name->isVisible()) return;
      asked = true;
      if (name->text() != pdf) {
        name->setFocus();
        name->selectAll();
        QTest::keyClicks(name, pdf);  // straight to the field
      }
      ++presses_;
      QTest::keyClick(name, Qt::Key_Return);
    });
    typing.start(50);
    press(Qt::Key_Return);
    QTRY_VERIFY(asked);
    QTRY_VERIFY2(QFile::exists(pdf), qPrintable(pdf));
    QFile made(pdf);
    QVERIFY(made.open(QIODevice::ReadOnly));
    QVERIFY(made.read(5) == "%PDF-");
    qInfo("%d key presses beyond the text", presses_);
    QVERIFY2(presses_ <= 25, qPrintable(QString::number(presses_)));
  }

  void aSearchForAFaultIsKeptWithAJobAndGoneOnWith() {
    const Demo demo;
    QVERIFY(demo.whole());
    desk::Settings settings(demo.path("kept.ini"));
    settings.remember(demo.file());
    app::Window window(settings);
    window.resize(1280, 800);
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    QApplication::setActiveWindow(&window);
    window.openLast();
    QTest::qWait(300);  // the catalogue is open
    press(Qt::Key_5, Qt::ControlModifier);
    auto* search = qobject_cast<fault::FaultPage*>(&window.page());
    QVERIFY(search != nullptr);
    search->form().gauge().setText(QStringLiteral("GA-1"));
    QTRY_VERIFY(search->showsAnswer() && !search->busy());
    search->card().press(1);
    QTRY_VERIFY(search->session().symptom.has_value() && !search->busy());
    search->card().press(1);
    QTRY_VERIFY(search->session().seen.size() == 1 && !search->busy());
    const std::string kept = search->session().seen.front().test;

    press(Qt::Key_K, Qt::ControlModifier);
    QTRY_VERIFY(window.findChild<parts::KeepWithJob*>() != nullptr);
    auto* dialog = window.findChild<parts::KeepWithJob*>();
    QTRY_VERIFY(dialog->ready());
    QTRY_VERIFY(dialog->reference().hasFocus());
    type(QStringLiteral("green wagon"));
    press(Qt::Key_Return);
    QTRY_VERIFY2(search->told().contains("green wagon"), qPrintable(search->told()));
    QTRY_VERIFY(QApplication::activeModalWidget() == nullptr);
    QApplication::setActiveWindow(&window);
    search->newSearch().click();
    QTRY_VERIFY(search->session().seen.empty());

    press(Qt::Key_7, Qt::ControlModifier);
    auto* page = qobject_cast<jobs::JobsPage*>(&window.page());
    QVERIFY(page != nullptr);
    QTRY_COMPARE(page->job().heading(), QStringLiteral("green wagon"));
    QPushButton* goOn = nullptr;
    for (QPushButton* each : page->findChildren<QPushButton*>())
      if (each->text() == QStringLiteral("Go on with it")) goOn = each;
    QVERIFY(goOn != nullptr);
    QTest::mouseClick(goOn, Qt::LeftButton);
    QVERIFY(&window.page() == search);
    QTRY_VERIFY(search->session().seen.size() == 1 && search->showsAnswer());
    QCOMPARE(search->session().seen.front().test, kept);
  }

  void aPlanIsKeptWithAJob() {
    const Demo demo;
    QVERIFY(demo.whole());
    desk::Settings settings(demo.path("plan.ini"));
    settings.remember(demo.file());
    app::Window window(settings);
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    QApplication::setActiveWindow(&window);
    window.openLast();
    QTest::qWait(300);  // the catalogue is open
    press(Qt::Key_3, Qt::ControlModifier);
    auto* page = qobject_cast<plan::PlanPage*>(&window.page());
    QVERIFY(page != nullptr);
    QTest::qWait(300);
    page->dashes().setLines({{QStringLiteral("1968 ridgeway utility gauge package"), {}}});
    page->engines().setLines({{QStringLiteral("casting 30418"), {}}});
    QTRY_VERIFY(page->showsAnswer());
    press(Qt::Key_K, Qt::ControlModifier);
    QTRY_VERIFY(window.findChild<parts::KeepWithJob*>() != nullptr);
    auto* dialog = window.findChild<parts::KeepWithJob*>();
    QTRY_VERIFY(dialog->ready());
    QTRY_VERIFY(dialog->reference().hasFocus());
    type(QStringLiteral("red van"));
    press(Qt::Key_Return);
    QTRY_VERIFY(QApplication::activeModalWidget() == nullptr);
    QApplication::setActiveWindow(&window);
    press(Qt::Key_7, Qt::ControlModifier);
    auto* jobs = qobject_cast<jobs::JobsPage*>(&window.page());
    QTRY_COMPARE(jobs->job().heading(), QStringLiteral("red van"));
  }
};

QTEST_MAIN(TestCounter)
#include "tst_counter.moc"
