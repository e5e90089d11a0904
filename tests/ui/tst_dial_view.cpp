#include <parts/dial_view.h>
#include <rapidcheck.h>
#include <QTest>
#include <QtMath>

using namespace ohmkin::parts;

namespace {

DialPicture dial(double from, double to, int marks) {
  DialPicture picture;
  picture.lowStop = from - 3;
  picture.highStop = to + 3;
  for (int i = 0; i < marks; ++i)
    picture.marks.push_back(
        {from + (to - from) * i / (marks - 1), QString::number(40 + 5 * i), DialMark::Kind::numbered});
  picture.marks.front().kind = DialMark::Kind::cold;
  picture.marks.back().kind = DialMark::Kind::hot;
  return picture;
}

bool labelled(const DialView::Placed& placed, std::size_t mark) {
  return std::any_of(placed.labels.begin(), placed.labels.end(),
                     [mark](const auto& label) { return label.first == mark; });
}

}  // namespace

class TestDialView : public QObject {
  Q_OBJECT

 private slots:
  void marksNeverCollideAndStayInside() {
    const bool ok = rc::check([] {
      const int marks = *rc::gen::inRange(2, 25);
      const int width = *rc::gen::inRange(220, 1000);
      const int height = *rc::gen::inRange(96, 600);
      const int half = *rc::gen::inRange(25, 130);
      DialView view;
      view.display(dial(-half, half, marks));
      const QRectF box(0, 0, width, height);
      const DialView::Placed placed = view.placed(box);
      for (std::size_t i = 0; i < placed.labels.size(); ++i) {
        RC_ASSERT(box.adjusted(-8, -8, 8, 8).contains(placed.labels[i].second));
        for (std::size_t j = i + 1; j < placed.labels.size(); ++j)
          RC_ASSERT(!placed.labels[i].second.intersects(placed.labels[j].second));
      }
    });
    QVERIFY(ok);
  }

  void theEndsKeepTheirNamesWhenThereIsNoRoomForAll() {
    DialView view;
    view.display(dial(-40, 40, 24));
    const DialView::Placed placed = view.placed(QRectF(0, 0, 240, 100));
    QVERIFY(placed.labels.size() < 24);
    QVERIFY(labelled(placed, 0));
    QVERIFY(labelled(placed, 23));
  }

  void coldAndHotDialsHaveTheirTwoLetters() {
    DialPicture picture = dial(-45, 45, 2);
    picture.marks[0].text = "C";
    picture.marks[1].text = "H";
    DialView view;
    view.display(picture);
    QCOMPARE(view.placed(QRectF(0, 0, 300, 200)).labels.size(), std::size_t(2));
  }

  void needlesTurnClockwiseFromStraightUp() {
    DialPicture picture = dial(-60, 60, 2);
    picture.shown = 45;
    DialView view;
    view.resize(400, 300);
    view.display(picture);
    const DialView::Placed placed = view.placed(QRectF(view.rect()));
    const QImage with = view.grab().toImage();
    picture.shown.reset();
    view.display(picture);
    const QImage without = view.grab().toImage();
    const double r = placed.radius * 0.6;
    const auto at = [&](double degrees) {
      return QPoint(qRound(placed.pivot.x() + r * std::sin(qDegreesToRadians(degrees))),
                    qRound(placed.pivot.y() - r * std::cos(qDegreesToRadians(degrees))));
    };
    QVERIFY(with.pixel(at(45)) != without.pixel(at(45)));
    QCOMPARE(with.pixel(at(-45)), without.pixel(at(-45)));
    QCOMPARE(with.pixel(at(0)), without.pixel(at(0)));
  }

  void nothingIsDrawnWithoutADial() {
    DialView view;
    view.resize(200, 100);
    QVERIFY(view.placed(QRectF(view.rect())).labels.empty());
    QVERIFY(!view.grab().isNull());
  }
};

QTEST_MAIN(TestDialView)
#include "tst_dial_view.moc"
