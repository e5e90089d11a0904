#include <app/pages.h>
#include <app/window.h>
#include <look/palette.h>
#include <match/match_page.h>
#include <measure/bench_page.h>
#include <QApplication>
#include <QClipboard>
#include <QDropEvent>
#include <QMimeData>
#include <QSignalSpy>
#include <QTest>
#include "demo.h"

using namespace ohmkin;

class TestWindow : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  static match::MatchPage& pageOf(const app::Window& window) {
    return *qobject_cast<match::MatchPage*>(&window.page());
  }
  static void expose(app::Window& window) {
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    QApplication::setActiveWindow(&window);
  }

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void aQuestionIsAnsweredWithTheKeyboardAlone() {
    desk::Settings settings(demo_.path("keyboard.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    match::MatchPage& page = pageOf(window);
    QTest::keyClick(&window, Qt::Key_L, Qt::ControlModifier);
    QTRY_VERIFY(page.query().edit()->hasFocus());
    QSignalSpy opened(&page, &desk::Page::opened);
    if (opened.isEmpty()) opened.wait(2000);
    QTest::keyClicks(page.query().edit(), kSettled + QLatin1Char(' '));
    QTRY_VERIFY(page.showsAnswer());
    QTRY_VERIFY(page.candidates().rows().rowCount() > 2);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTRY_VERIFY(page.candidates().hasFocus());
    const QString first = page.chain().chain().links[2].headline;
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    QVERIFY(page.chain().chain().links[2].headline != first);
    const QString said = page.needles().said();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    QVERIFY(page.needles().said() != said);
  }

  void everyControlIsReachedByTab() {
    desk::Settings settings(demo_.path("tab.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    match::MatchPage& page = pageOf(window);
    page.query().setText(kSettled);
    QTRY_VERIFY(page.showsAnswer());
    page.query().takeFocus();
    QSet<QWidget*> reached;
    for (int i = 0; i < 80; ++i) {
      QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
      reached.insert(QApplication::focusWidget());
    }
    QVERIFY(reached.contains(&page.candidates()));
    QVERIFY(reached.contains(page.needles().slider()));
    QVERIFY(reached.contains(&page.look()));
    QVERIFY(reached.contains(page.query().edit()));
    QCOMPARE(page.chain().findChildren<parts::JointMark*>().size(), 4);
    for (QWidget* joint : page.chain().findChildren<parts::JointMark*>()) QVERIFY(reached.contains(joint));
    for (const QWidget* widget : reached)
      QVERIFY2(!widget->accessibleName().isEmpty() || !widget->property("text").toString().isEmpty(),
               widget->metaObject()->className());
  }

  void unitsAndToneAreRemembered() {
    const QString file = demo_.path("remembered.ini");
    {
      desk::Settings settings(file);
      app::Window window(settings);
      expose(window);
      QTest::keyClick(&window, Qt::Key_U, Qt::ControlModifier);
      settings.setTone(desk::ToneChoice::dark);
    }
    const desk::Settings again(file);
    QCOMPARE(again.units().temperature, TemperatureUnit::fahrenheit);
    QCOMPARE(again.tone(), desk::ToneChoice::dark);
  }

  void theCatalogueUsedLastIsOpenedAgain() {
    const QString file = demo_.path("recent.ini");
    {
      desk::Settings settings(file);
      app::Window window(settings);
      expose(window);
      window.openCatalogue(demo_.file());
      QTRY_VERIFY(!settings.recent().isEmpty());
    }
    desk::Settings settings(file);
    app::Window window(settings);
    expose(window);
    window.openLast();
    QTRY_COMPARE(window.windowTitle(), QStringLiteral("demo.ohmkin – Ohmkin"));
  }

  void theAnswerIsCopiedAsText() {
    desk::Settings settings(demo_.path("copy.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    pageOf(window).query().setText(kSettled);
    QTRY_VERIFY(pageOf(window).showsAnswer());
    QTest::keyClick(&window, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    QVERIFY(QApplication::clipboard()->text().contains(QStringLiteral("Head port")));
  }

  void itFitsTheSmallestScreenAndLargeType() {
    desk::Settings settings(demo_.path("small.ini"));
    app::Window window(settings);
    window.resize(1024, 700);
    expose(window);
    window.openCatalogue(demo_.file());
    pageOf(window).query().setText(kSettled);
    QTRY_VERIFY(pageOf(window).showsAnswer());
    QCOMPARE(window.size(), QSize(1024, 700));
    const match::MatchPage& page = pageOf(window);
    for (const QWidget* part : std::initializer_list<const QWidget*>{&page.candidates(), &page.chain(), &page.needles(),
                                                                     &page.details(), &page.cautions()}) {
      const QRect at(part->mapTo(&window, QPoint(0, 0)), part->size());
      QVERIFY2(window.rect().contains(at), part->metaObject()->className());
    }
  }

  void thePageIsTheOneTheRailChose() {
    desk::Settings settings(demo_.path("page.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    // The first one without anything being chosen, and each is made once.
    desk::Page* first = &window.page();
    QVERIFY(qobject_cast<match::MatchPage*>(first) != nullptr);
    QSet<const desk::Page*> seen{first};
    auto* rail = window.findChild<app::Rail*>();
    for (int at = 1; at < rail->count(); ++at) {
      rail->choose(at);
      seen.insert(&window.page());
      QVERIFY(window.page().isVisible());
      QVERIFY(!first->isVisible());
    }
    QCOMPARE(seen.size(), static_cast<qsizetype>(app::pages().size()));
    rail->choose(0);
    QCOMPARE(&window.page(), first);
    QVERIFY(first->isVisible());
  }

  void aFileDroppedOnTheWindowGoesToTheBench() {
    desk::Settings settings(demo_.path("drop.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    QFile readings(demo_.path("dropped.csv"));
    QVERIFY(readings.open(QIODevice::WriteOnly));
    readings.write("temperature C,ohms\n40,318\n60,172\n80,97.5\n100,56.2\n");
    readings.close();
    QMimeData files;
    files.setUrls({QUrl::fromLocalFile(readings.fileName())});
    QDragEnterEvent over(QPoint(300, 300), Qt::CopyAction, &files, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window, &over);
    QVERIFY(over.isAccepted());
    QDropEvent dropped(QPointF(300, 300), Qt::CopyAction, &files, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window, &dropped);
    auto* page = qobject_cast<measure::BenchPage*>(&window.page());
    QVERIFY(page != nullptr);
    QTRY_VERIFY(page->file().showsPreview());
    QVERIFY2(page->file().sentence().contains("4 readings"), qPrintable(page->file().sentence()));
  }

  void theRailHasAButtonForEveryPageAndNoOther() {
    desk::Settings settings(demo_.path("rail.ini"));
    const app::Window window(settings);
    QCOMPARE(window.findChild<app::Rail*>()->count(), static_cast<int>(app::pages().size()));
  }
};

QTEST_MAIN(TestWindow)
#include "tst_window.moc"
