#pragma once
#include <QApplication>
#include <QDialog>
#include <QMenu>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <functional>

/// Waits until a modal dialog of this kind is shown, lets it be looked at, and closes it. Whether it came is told.
template <class Dialog>
bool opensDialog(const std::function<void()>& act, const std::function<void(Dialog&)>& look = {}) {
  bool came = false;
  QTimer watch;
  int left = 200;
  QObject::connect(&watch, &QTimer::timeout, &watch, [&] {
    auto* modal = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    if (modal == nullptr && --left > 0) return;
    watch.stop();
    if (auto* dialog = qobject_cast<Dialog*>(modal); dialog != nullptr) {
      QTest::qWait(100);  // its paper is drawn
      came = true;
      if (look) look(*dialog);
    }
    if (modal != nullptr) modal->reject();
  });
  watch.start(25);
  act();
  watch.stop();
  return came;
}

/// The entry of a button's menu, of its first sheet where there are several; null where there is none of these words.
inline QAction* sheetAction(QPushButton& button, const QString& words) {
  for (QMenu* menu : button.findChildren<QMenu*>())
    for (QAction* action : menu->actions())
      if (action->text() == words) return action;
  return nullptr;
}
