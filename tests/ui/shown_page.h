#pragma once
#include <desk/page.h>
#include <QSignalSpy>
#include <QTest>
#include "demo.h"

/// A page of the window, on the screen by itself.
template <class Page>
struct ShownPage {
  ShownPage(const Demo& demo, const char* settingsName) : settings(demo.path(settingsName)), page(settings) {
    page.resize(1180, 860);
    page.show();
  }
  void open(const QString& file) {
    QSignalSpy opened(&page, &ohmkin::desk::Page::opened);
    page.openCatalogue(file);
    QVERIFY(opened.wait(5000));
  }
  ohmkin::desk::Settings settings;
  Page page;
};
