#include <parts/candidate_list.h>
#include <QSignalSpy>
#include <QTest>

using namespace ohmkin::parts;

namespace {

std::vector<CandidateRow> rows(int count) {
  std::vector<CandidateRow> all;
  for (int i = 0; i < count; ++i) {
    CandidateRow row;
    row.fit = Fit::fits;
    row.part = QStringLiteral("PX-%1").arg(i);
    row.sentence = QStringLiteral("Right for this gauge.");
    row.worst = QStringLiteral("worst +1 K");
    row.shelf = QStringLiteral("bin 4C · 6");
    row.index = i;
    all.push_back(row);
  }
  return all;
}

}  // namespace

class TestCandidateList : public QObject {
  Q_OBJECT

 private slots:
  void theBestIsChosenAtOnce() {
    CandidateList list;
    QSignalSpy chosen(&list, &CandidateList::chosen);
    list.setRows(rows(3));
    QCOMPARE(chosen.size(), 1);
    QCOMPARE(chosen.front().front().toInt(), 0);
  }

  void arrowKeysGoThroughThem() {
    CandidateList list;
    list.resize(500, 300);
    list.setRows(rows(3));
    list.show();
    QSignalSpy chosen(&list, &CandidateList::chosen);
    QTest::keyClick(&list, Qt::Key_Down);
    QTest::keyClick(&list, Qt::Key_End);
    QTest::keyClick(&list, Qt::Key_Home);
    QCOMPARE(chosen.size(), 3);
    QCOMPARE(chosen[0].front().toInt(), 1);
    QCOMPARE(chosen[1].front().toInt(), 2);
    QCOMPARE(chosen[2].front().toInt(), 0);
  }

  void leftAndRightMoveTheTemperature() {
    CandidateList list;
    list.setRows(rows(2));
    QSignalSpy nudged(&list, &CandidateList::nudged);
    QTest::keyClick(&list, Qt::Key_Right);
    QTest::keyClick(&list, Qt::Key_Left);
    QCOMPARE(nudged.size(), 2);
    QCOMPARE(nudged[0].front().toInt(), 1);
    QCOMPARE(nudged[1].front().toInt(), -1);
  }

  void theSamePartStaysChosenWhenTheOrderChanges() {
    CandidateList list;
    list.setRows(rows(3));
    list.choose(2);
    std::vector<CandidateRow> turned = rows(3);
    std::reverse(turned.begin(), turned.end());
    for (int i = 0; i < 3; ++i) turned[static_cast<std::size_t>(i)].index = i;
    QSignalSpy chosen(&list, &CandidateList::chosen);
    list.setRows(turned);
    QCOMPARE(list.rows().row(list.currentIndex().row()).part, QStringLiteral("PX-2"));
    QCOMPARE(chosen.back().front().toInt(), 0);
  }

  void aRowSaysAllOfItselfInWords() {
    CandidateList list;
    list.setRows(rows(1));
    const QString said = list.rows().data(list.rows().index(0), Qt::AccessibleTextRole).toString();
    for (const char* piece : {"PX-0", "fits", "Right for this gauge.", "worst +1 K", "bin 4C"})
      QVERIFY2(said.contains(QString::fromUtf8(piece)), piece);
  }

  void longNamesDoNotWidenIt() {
    CandidateList list;
    list.resize(420, 400);
    std::vector<CandidateRow> some = rows(2);
    some[0].part = QString("PX-").repeated(60);
    some[0].sentence = QString("a very long sentence ").repeated(40);
    some[0].shelf = QString("bin ").repeated(40);
    list.setRows(some);
    list.show();
    QVERIFY(QTest::qWaitForWindowExposed(&list));
    QVERIFY(list.visualRect(list.rows().index(0)).width() <= list.viewport()->width());
    QVERIFY(list.visualRect(list.rows().index(0)).height() > list.visualRect(list.rows().index(1)).height());
    QVERIFY(list.visualRect(list.rows().index(0)).height() < 160);
  }
};

QTEST_MAIN(TestCandidateList)
#include "tst_candidate_list.moc"
