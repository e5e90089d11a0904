#pragma once
#include <catalogue/catalogue_page.h>
#include "shown_page.h"

/// The catalogue page as a person has it before them, and what their hands do on it.
namespace ohmkin::shelves {

struct ShownCatalogue : ShownPage<CataloguePage> {
  using ShownPage::ShownPage;

  void open(const QString& file) {
    ShownPage::open(file);
    QApplication::setActiveWindow(&page);
    page.takeKeyboard();
  }
  void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) const {
    QWidget* focus = QApplication::focusWidget();
    QTest::keyClick(focus == nullptr ? const_cast<CataloguePage*>(&page) : focus, key, with);
  }
  void type(const QString& text) const { QTest::keyClicks(QApplication::focusWidget(), text); }
  /// In the box, from nothing.
  void find(const QString& text) const {
    press(Qt::Key_L, Qt::ControlModifier);
    press(Qt::Key_A, Qt::ControlModifier);
    type(text);
  }
  void opened(const QString& text, const char* id) {
    find(text);
    QTRY_VERIFY2(page.found().rows().rowCount() > 0,
                 qPrintable(page.query().text() + page.hint() + page.sheet().said()));
    QTRY_COMPARE(page.found().rows().row(0).ref.key.front(), std::string(id));
    press(Qt::Key_Return);
    QTRY_COMPARE(page.thing().shownNow().number, QString::fromUtf8(id));
  }
  void formOpened() {
    press(Qt::Key_F2);
    QTRY_VERIFY(page.thing().editing());
  }
  void put(const char* field, const QString& text) {
    FieldRow* row = page.thing().form().row(field);
    QVERIFY2(row != nullptr, field);
    row->takeKeyboard();
    if (auto* choice = qobject_cast<parts::Choice*>(row->editor())) choice->setCurrentText(text);
    else {
      press(Qt::Key_A, Qt::ControlModifier);
      type(text);
    }
  }
  [[nodiscard]] QString fact(const char* label) const {
    for (const SectionShown& section : page.thing().shownNow().sections)
      for (const FactShown& each : section.facts)
        if (each.label == QString::fromUtf8(label)) return each.value;
    return {};
  }
};

}  // namespace ohmkin::shelves
