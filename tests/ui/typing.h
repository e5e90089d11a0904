#pragma once
#include <QAbstractItemView>
#include <QApplication>
#include <QLineEdit>
#include <QTest>

/// Types each text and Return as a person does: the first key opens the cell's editor, the rest go into it.
inline void typeInto(QAbstractItemView& table, const QStringList& texts) {
  QApplication::setActiveWindow(table.window());
  table.setFocus();
  for (const QString& text : texts) {
    QTest::keyClicks(&table, text.left(1));
    auto* editor = table.viewport()->findChild<QLineEdit*>();
    QVERIFY(editor != nullptr);
    QTest::keyClicks(editor, text.mid(1));
    QTest::keyClick(editor, Qt::Key_Return);
    QTRY_VERIFY(table.viewport()->findChild<QLineEdit*>() == nullptr);
  }
}
