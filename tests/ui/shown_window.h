#pragma once
#include <app/window.h>
#include <QApplication>
#include <QMessageBox>
#include <QTest>
#include "demo.h"

/// The window with a catalogue open, as a person has it before them.
struct ShownWindow {
  ShownWindow(const Demo& demo, const char* settingsName) : settings(demo.path(settingsName)), window(settings) {
    window.show();
    (void)QTest::qWaitForWindowExposed(&window);
    QApplication::setActiveWindow(&window);
  }
  void open(const QString& file) {
    window.openCatalogue(file);
    QTRY_VERIFY2(window.windowTitle().startsWith(QFileInfo(file).fileName()), qPrintable(window.windowTitle()));
  }
  template <class Page>
  Page& at(int index) {
    window.findChild<ohmkin::app::Rail*>()->choose(index);
    return *qobject_cast<Page*>(&window.page());
  }
  static void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QWidget* focus = QApplication::focusWidget();
    QTest::keyClick(focus == nullptr ? QApplication::activeWindow() : focus, key, with);
  }
  /// The question in front of the window; null: none.
  [[nodiscard]] QMessageBox* question() const {
    for (auto* box : window.findChildren<QMessageBox*>())
      if (box->isVisible()) return box;
    return nullptr;
  }
  ohmkin::desk::Settings settings;
  ohmkin::app::Window window;
};
