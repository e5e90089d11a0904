#include <look/style.h>
#include <look/type.h>
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QHeaderView>
#include <QScrollBar>
#include "every_page.h"

using namespace ohmkin;

namespace {

bool operated(const QWidget& widget) {
  return widget.isVisible() && widget.isEnabled() && widget.focusPolicy() != Qt::NoFocus &&
         qobject_cast<const QScrollBar*>(&widget) == nullptr && widget.focusProxy() == nullptr;
}

QString pathOf(const QWidget& widget) {
  QStringList names;
  for (const QWidget* at = &widget; at != nullptr && !at->isWindow(); at = at->parentWidget())
    names.prepend(QString::fromLatin1(at->metaObject()->className()).section(QLatin1Char(':'), -1) +
                  (at->objectName().isEmpty() ? QString() : QLatin1Char('#') + at->objectName()));
  return names.join(QLatin1Char('/'));
}

}  // namespace

/// What a screen reader is told (Qt's QAccessible), what Tab reaches, and how large the targets of a click are
/// (WCAG 2.2, 2.5.8: 24 by 24 CSS pixels).
class TestAccessible : public QObject {
  Q_OBJECT

 private:
  Demo demo_;

 private slots:
  void initTestCase() {
    QVERIFY(demo_.whole());
    QAccessible::setActive(true);
    look::chooseFamily();
    QApplication::setStyle(new look::Style);
  }

  void everyControlHasANameAndARole() {
    EveryPage every(demo_, "names.ini", {1440, 900});
    QStringList faults;
    int seen = 0;
    every.visit([&](const QString& state) {
      for (QWidget* widget : every.window().findChildren<QWidget*>()) {
        if (!operated(*widget)) continue;
        ++seen;
        QAccessibleInterface* told = QAccessible::queryAccessibleInterface(widget);
        const QString where = state + QStringLiteral(": ") + pathOf(*widget);
        if (told == nullptr) faults << where + QStringLiteral(" is not told of");
        else if (told->text(QAccessible::Name).trimmed().isEmpty()) faults << where + QStringLiteral(" has no name");
        else if (told->role() == QAccessible::NoRole || told->role() == QAccessible::Client)
          faults << where + QStringLiteral(" has no role: ") + told->text(QAccessible::Name);
        else if (!told->state().focusable) faults << where + QStringLiteral(" is not told to take the keyboard");
      }
    });
    QVERIFY(seen > 150);
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
  }

  void tabReachesEveryControlAndIsCaughtNowhere() {
    EveryPage every(demo_, "tabs.ini", {1440, 900});
    QStringList faults;
    every.visit([&](const QString& state) {
      every.window().page().takeKeyboard();
      QSet<QWidget*> reached;
      QWidget* first = QApplication::focusWidget();
      if (first == nullptr) {
        faults << state + QStringLiteral(": nothing has the keyboard");
        return;
      }
      QWidget* at = first;
      int steps = 0;
      do {
        QTest::keyClick(at, Qt::Key_Tab);
        QWidget* next = QApplication::focusWidget();
        if (next == nullptr || (next == at && ++steps > 40)) break;
        at = next;
        reached.insert(at);
      } while (at != first && ++steps < 300);
      if (at != first)
        faults << state + QStringLiteral(": Tab does not come back to ") + pathOf(*first) +
                      QStringLiteral(" but ends in ") + (at ? pathOf(*at) : QString());
      for (QWidget* widget : every.window().page().findChildren<QWidget*>())
        if (operated(*widget) && (widget->focusPolicy() & Qt::TabFocus) && !reached.contains(widget)) {
          const auto* button = qobject_cast<QAbstractButton*>(widget);
          // Of a group of which one is chosen the arrow keys reach the others.
          if (button != nullptr && button->group() != nullptr && button->group()->exclusive()) continue;
          faults << state + QStringLiteral(": Tab never reaches ") + pathOf(*widget);
        }
    });
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
  }

  void whatIsClickedIsLargeEnough() {
    EveryPage every(demo_, "targets.ini", {1024, 700});
    QStringList faults;
    every.visit([&](const QString& state) {
      for (const QAbstractButton* button : every.window().findChildren<QAbstractButton*>()) {
        if (!button->isVisible() || !button->isEnabled() || (button->width() >= 24 && button->height() >= 24)) continue;
        faults << QStringLiteral("%1: %2 '%3' is %4 × %5")
                      .arg(state, pathOf(*button), button->text())
                      .arg(button->width())
                      .arg(button->height());
      }
      for (const QAbstractItemView* view : every.window().findChildren<QAbstractItemView*>()) {
        if (!view->isVisible() || qobject_cast<const QHeaderView*>(view) != nullptr || view->model() == nullptr ||
            view->model()->rowCount() == 0)
          continue;
        const QRect row = view->visualRect(view->model()->index(0, 0));
        if (row.height() < 24)
          faults << QStringLiteral("%1: rows of %2 are %3 high").arg(state, pathOf(*view)).arg(row.height());
      }
    });
    QVERIFY2(faults.isEmpty(), qPrintable(listed(faults)));
  }
};

QTEST_MAIN(TestAccessible)
#include "tst_accessible.moc"
