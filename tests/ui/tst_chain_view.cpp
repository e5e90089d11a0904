#include <look/palette.h>
#include <parts/chain_view.h>
#include <QSignalSpy>
#include <QTest>

using namespace ohmkin;
using namespace ohmkin::parts;

namespace {

Chain example() {
  Chain chain;
  chain.links = {LinkWords{"Dash gauge", "Family A", "crossed coil", "known from the cluster", Known::known},
                 LinkWords{"Lead", "18 AWG", "blade", "not seen", Known::notSeen},
                 LinkWords{"Sender", "PX-1", "Family A", "selected", Known::known},
                 LinkWords{"Head port", "1/2-14 NPT", "front", "casting", Known::inferred},
                 LinkWords{"Engine", "inline six", "later", "dates disagree", Known::conflict}};
  chain.joints = {JointWords{Fit::fits, "fits"}, JointWords{Fit::look, "look"}, JointWords{Fit::withPart, "bushing"},
                  JointWords{Fit::cut, "another engine"}};
  return chain;
}

/// The shape alone, without its colour.
QImage shapeOf(Fit fit) {
  QImage picture(64, 64, QImage::Format_ARGB32);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  drawFit(painter, {32, 32}, 40, fit);
  painter.end();
  return picture.convertToFormat(QImage::Format_Alpha8);
}

}  // namespace

class TestChainView : public QObject {
  Q_OBJECT

 private slots:
  void jointsDifferInShapeNotOnlyInColour() {
    const std::vector<Fit> all{Fit::fits, Fit::withPart, Fit::cut, Fit::look};
    for (std::size_t i = 0; i < all.size(); ++i)
      for (std::size_t j = i + 1; j < all.size(); ++j) QVERIFY(shapeOf(all[i]) != shapeOf(all[j]));
  }

  void everyLinkAndJointSaysItselfInWords() {
    ChainView view;
    view.display(example());
    const auto cards = view.findChildren<LinkCard*>();
    const auto joints = view.findChildren<JointMark*>();
    QCOMPARE(cards.size(), 5);
    QCOMPARE(joints.size(), 4);
    QVERIFY(cards[0]->accessibleName().contains("Family A"));
    QVERIFY(cards[4]->accessibleName().contains("dates disagree"));
    QVERIFY(joints[2]->accessibleName().contains("fits with something added"));
    QVERIFY(joints[2]->accessibleName().contains("bushing"));
  }

  void readsFromLeftToRightOverTheWholeWidth() {
    ChainView view;
    view.display(example());
    view.resize(1003, view.heightForWidth(1003));
    view.show();
    int x = 0;
    const auto cards = view.findChildren<LinkCard*>();
    for (const LinkCard* card : cards) {
      QVERIFY(card->x() >= x);
      x = card->geometry().right();
    }
    QCOMPARE(x, 1002);
  }

  void longNamesMakeItHigherAndNeverTooWide() {
    ChainView view;
    view.display(example());
    const int usual = view.heightForWidth(900);
    Chain longer = example();
    longer.links[3].headline = QString("a thread with a very long designation ").repeated(6);
    longer.links[3].detail = QString("x").repeated(300);
    view.display(longer);
    QVERIFY(view.heightForWidth(900) > usual);
    QVERIFY(view.heightForWidth(900) < 2 * usual + 100);
  }

  void aJointIsChosenByKeyboard() {
    ChainView view;
    view.display(example());
    view.resize(900, 200);
    view.show();
    QSignalSpy chosen(&view, &ChainView::jointChosen);
    QTest::keyClick(view.findChildren<JointMark*>().at(1), Qt::Key_Return);
    QCOMPARE(chosen.size(), 1);
    QCOMPARE(chosen.front().front().toInt(), 1);
  }

  void markUpInNamesStaysText() {
    Chain chain = example();
    chain.links[2].headline = "<b>PX</b>";
    ChainView view;
    view.display(chain);
    QVERIFY(view.findChildren<LinkCard*>().at(2)->toolTip().contains("&lt;b&gt;"));
  }
};

QTEST_MAIN(TestChainView)
#include "tst_chain_view.moc"
