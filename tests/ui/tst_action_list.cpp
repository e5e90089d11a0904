#include <app/pages.h>
#include <app/window.h>
#include <match/match_page.h>
#include <QApplication>
#include <QClipboard>
#include <QTest>
#include "demo.h"

using namespace ohmkin;

class TestActionList : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

  static void expose(app::Window& window) {
    window.show();
    QVERIFY(QTest::qWaitForWindowExposed(&window));
    QApplication::setActiveWindow(&window);
    QTRY_VERIFY(QApplication::focusWidget() != nullptr);
  }
  static void type(const QString& words) { QTest::keyClicks(QApplication::focusWidget(), words); }
  static void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(QApplication::focusWidget(), key, with);
  }

 private slots:
  void initTestCase() { QVERIFY(demo_.whole()); }

  void oneKeyOpensItAndReturnDoesWhatIsFound() {
    desk::Settings settings(demo_.path("do.ini"));
    app::Window window(settings);
    expose(window);
    press(Qt::Key_F9);
    QVERIFY(window.actionList().isVisible());
    QVERIFY(window.actionList().box().hasFocus());
    const std::size_t all = window.actionList().rows().rows().size();
    type(QStringLiteral("temp °F"));
    QCOMPARE(window.actionList().rows().rows().size(), std::size_t{1});
    QVERIFY(all > 10);
    press(Qt::Key_Return);
    QVERIFY(!window.actionList().isVisible());
    QTRY_COMPARE(settings.units().temperature, TemperatureUnit::fahrenheit);
  }

  void whatWasUsedLastStandsFirst() {
    desk::Settings settings(demo_.path("used.ini"));
    app::Window window(settings);
    expose(window);
    press(Qt::Key_F9);
    type(QStringLiteral("dark"));
    press(Qt::Key_Down);  // from the one that names both to the one that is it
    press(Qt::Key_Return);
    QTRY_COMPARE(settings.tone(), desk::ToneChoice::dark);
    press(Qt::Key_F9);
    QCOMPARE(app::nameOf(*window.actionList().rows().current()), QStringLiteral("Dark"));
    press(Qt::Key_Escape);
    settings.setTone(desk::ToneChoice::light);
  }

  void escapeGivesTheKeyboardBack() {
    desk::Settings settings(demo_.path("escape.ini"));
    app::Window window(settings);
    expose(window);
    QWidget* before = QApplication::focusWidget();
    press(Qt::Key_F9);
    QVERIFY(QApplication::focusWidget() != before);
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    QVERIFY(window.actionList().isAncestorOf(QApplication::focusWidget()));
    press(Qt::Key_Escape);
    QCOMPARE(QApplication::focusWidget(), before);
  }

  void whatIsTypedInTheRowsGoesIntoTheBox() {
    desk::Settings settings(demo_.path("typed.ini"));
    app::Window window(settings);
    expose(window);
    press(Qt::Key_F9);
    press(Qt::Key_Down);
    QVERIFY(window.actionList().rows().hasFocus());
    type(QStringLiteral("quit"));
    QCOMPARE(window.actionList().box().text(), QStringLiteral("quit"));
    QCOMPARE(app::nameOf(*window.actionList().rows().current()), QStringLiteral("Quit"));
    type(QStringLiteral(" no such thing"));
    QVERIFY(window.actionList().rows().current() == nullptr);
    press(Qt::Key_Return);
    QVERIFY(window.actionList().isVisible());
  }

  void everyPageOffersItsActionsAndNoKeyIsGivenTwice() {
    desk::Settings settings(demo_.path("pages.ini"));
    app::Window window(settings);
    expose(window);
    window.openCatalogue(demo_.file());
    auto* rail = window.findChild<app::Rail*>();
    for (int at = 0; at < rail->count(); ++at) {
      rail->choose(at);
      QMap<QString, QString> keys;
      int ofPage = 0;
      for (const app::Offered& each : window.offered()) {
        QVERIFY(!app::nameOf(*each.action).isEmpty());
        QVERIFY(!each.group.isEmpty());
        ofPage += window.page().actions().contains(each.action.data()) ? 1 : 0;
        const QString key = each.action->shortcut().toString();
        if (key.isEmpty()) continue;
        QVERIFY2(!keys.contains(key), qPrintable(key + QStringLiteral(": ") + keys.value(key) +
                                                 QStringLiteral(" and ") + app::nameOf(*each.action)));
        keys.insert(key, app::nameOf(*each.action));
      }
      QVERIFY2(ofPage > 0, window.page().metaObject()->className());
    }
  }

  void theSheetOfKeysHasEveryKeyAndCanBeReadAsText() {
    desk::Settings settings(demo_.path("keys.ini"));
    app::Window window(settings);
    expose(window);
    press(Qt::Key_F1);
    QVERIFY(window.keySheet().isVisible());
    const QString text = window.keySheet().asText();
    for (const app::Offered& each : window.offered())
      if (!each.action->shortcut().isEmpty())
        QVERIFY2(text.contains(app::nameOf(*each.action)), qPrintable(app::nameOf(*each.action)));
    QTest::mouseClick(&window.keySheet().copy(), Qt::LeftButton);
    QCOMPARE(QApplication::clipboard()->text(), text);
    window.keySheet().box().setFocus();
    type(QStringLiteral("undo"));
    QCOMPARE(window.keySheet().asText().count(QLatin1Char('\t')), 1);
    press(Qt::Key_Escape);
    QVERIFY(!window.keySheet().isVisible());
  }

  void undoGoesToThePage() {
    desk::Settings settings(demo_.path("undo.ini"));
    app::Window window(settings);
    expose(window);
    struct Step : QUndoCommand {
      Step(const QString& words, int& count) : QUndoCommand(words), at(count) {}
      void undo() override { --at; }
      void redo() override { ++at; }
      int& at;
    };
    int at = 0;
    window.page().history().push(new Step(QStringLiteral("a step"), at));
    QCOMPARE(at, 1);
    press(Qt::Key_F9);
    type(QStringLiteral("undo"));
    QCOMPARE(app::nameOf(*window.actionList().rows().current()), QStringLiteral("Undo: a step"));
    press(Qt::Key_Return);
    QTRY_COMPARE(at, 0);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    QTRY_COMPARE(at, 1);
    press(Qt::Key_Z, Qt::ControlModifier);
    QTRY_COMPARE(at, 0);
    // Another page has a history of its own.
    window.findChild<app::Rail*>()->choose(1);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    QCOMPARE(at, 0);
  }

  void thePageShownAndItsLayoutAreFoundAgain() {
    const QString file = demo_.path("layout.ini");
    {
      desk::Settings settings(file);
      app::Window window(settings);
      expose(window);
      window.findChild<app::Rail*>()->choose(2);
      window.close();
    }
    desk::Settings settings(file);
    const app::Window window(settings);
    QCOMPARE(QString::fromLatin1(window.page().metaObject()->className()), QStringLiteral("ohmkin::plan::PlanPage"));
  }

  void aWindowLeftOnAScreenThatIsGoneComesBackOnThisOne() {
    const QString file = demo_.path("screen.ini");
    {
      desk::Settings settings(file);
      app::Window window(settings);
      expose(window);
      window.move(9000, 7000);
      window.close();
    }
    desk::Settings settings(file);
    app::Window window(settings);
    window.show();
    QVERIFY(window.screen()->availableGeometry().intersects(window.geometry()));
  }
};

QTEST_MAIN(TestActionList)
#include "tst_action_list.moc"
