#include <parts/query_box.h>
#include <QAbstractItemView>
#include <QApplication>
#include <QSignalSpy>
#include <QTest>

using namespace ohmkin::parts;

class TestQueryBox : public QObject {
  Q_OBJECT

 private:
  static std::vector<CompletionWords> ways() {
    return {{QStringLiteral("Ridgeway utility"), 5, QStringLiteral("line"), QStringLiteral("model years 1967–78")},
            {QStringLiteral("Ridgeway van"), 5, QStringLiteral("line"), QString()}};
  }
  static void expose(QueryBox& box) {
    box.resize(600, 48);
    box.show();
    QVERIFY(QTest::qWaitForWindowExposed(&box));
    QApplication::setActiveWindow(&box);
    box.takeFocus();
    QVERIFY(QTest::qWaitFor([&] { return box.edit()->hasFocus(); }));
  }

 private slots:
  void everyKeyAsks() {
    QueryBox box;
    QSignalSpy asked(&box, &QueryBox::asked);
    QTest::keyClicks(box.edit(), QStringLiteral("1968"));
    QCOMPARE(asked.size(), 4);
    QCOMPARE(asked.back().front().toString(), QStringLiteral("1968"));
  }

  void aWayChosenTakesThePlaceOfTheLastWord() {
    QueryBox box;
    expose(box);
    QTest::keyClicks(box.edit(), QStringLiteral("1968 rid"));
    box.offer(QStringLiteral("1968 rid"), ways());
    QTRY_VERIFY(box.offering());
    QWidget* popup = QApplication::activePopupWidget();
    QVERIFY(popup != nullptr);
    QTest::keyClick(popup, Qt::Key_Down);
    QTest::keyClick(popup, Qt::Key_Down);
    QTest::keyClick(popup, Qt::Key_Return);
    QCOMPARE(box.text(), QStringLiteral("1968 Ridgeway van "));
    QVERIFY(!box.offering());
  }

  void whatIsOfferedForAnOlderTextIsNotShown() {
    QueryBox box;
    expose(box);
    QTest::keyClicks(box.edit(), QStringLiteral("1968 ridge"));
    box.offer(QStringLiteral("1968 rid"), ways());
    QVERIFY(!box.offering());
  }

  void nothingIsOfferedForATextPutThere() {
    QueryBox box;
    expose(box);
    box.setText(QStringLiteral("1968 rid"));
    box.offer(QStringLiteral("1968 rid"), ways());
    QVERIFY(!box.offering());
  }

  void enterGoesOnToTheSenders() {
    QueryBox box;
    expose(box);
    QSignalSpy left(&box, &QueryBox::left);
    QTest::keyClicks(box.edit(), QStringLiteral("1968"));
    QTest::keyClick(box.edit(), Qt::Key_Return);
    QCOMPARE(left.size(), 1);
    QTest::keyClick(box.edit(), Qt::Key_Down);
    QCOMPARE(left.size(), 2);
  }

  void enterWithNothingChosenTakesTheTextAsItStands() {
    QueryBox box;
    expose(box);
    QTest::keyClicks(box.edit(), QStringLiteral("1968 rid"));
    box.offer(QStringLiteral("1968 rid"), ways());
    QTRY_VERIFY(box.offering());
    QSignalSpy left(&box, &QueryBox::left);
    QTest::keyClick(QApplication::activePopupWidget(), Qt::Key_Return);
    QCOMPARE(box.text(), QStringLiteral("1968 rid"));
    QVERIFY(!box.offering());
    QCOMPARE(left.size(), 1);
  }
};

QTEST_MAIN(TestQueryBox)
#include "tst_query_box.moc"
