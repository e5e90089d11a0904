#include <look/palette.h>
#include <look/role.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/chain_view.h>
#include <parts/words.h>
#include <QKeyEvent>
#include <QMouseEvent>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kDetailLines = 3;
constexpr int kBasisLines = 2;

int chainPad() { return space(14); }

/// Cards take the room that joints do not need; a joint is wide enough for a word and never wider than it can use.
struct Widths {
  int card;
  int joint;
};
Widths widths(int whole) {
  const int joint = std::clamp(whole * 11 / 140, space(72), space(120));
  return {(whole - 4 * joint) / 5, joint};
}

bool isEnter(const QKeyEvent& event) {
  return event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter || event.key() == Qt::Key_Space;
}

}  // namespace

LinkCard::LinkCard(QWidget* parent) : QWidget(parent) {
  look::setRole(*this, QAccessible::Button);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
}

void LinkCard::display(const LinkWords& words) {
  words_ = words;
  const QString all = QStringList{words.title, words.headline, words.detail, words.basis}.join(QStringLiteral(". "));
  setAccessibleName(all);
  setToolTip(plainTip(all));
  update();
}

int LinkCard::heightFor(int width) const {
  const double inner = width - 2 * chainPad();
  const double words = look::metrics(Text::small).lineSpacing() + space(6) +
                       wrap(words_.headline, typeface(Text::headline), inner, 2).height + space(4) +
                       wrap(words_.detail, typeface(Text::body), inner, kDetailLines).height + space(19) +
                       wrap(words_.basis, typeface(Text::small), inner, kBasisLines).height;
  return static_cast<int>(words) + 2 * chainPad() - space(2);
}

void LinkCard::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool conflict = words_.known == Known::conflict;
  const bool notSeen = words_.known == Known::notSeen;
  QPen edge(colour(conflict ? Paint::warning : notSeen ? Paint::edge : Paint::line), conflict ? 2 : 1);
  if (notSeen) edge.setDashPattern({4, 3});
  painter.setPen(edge);
  painter.setBrush(colour(Paint::panel));
  const double inset = edge.widthF() / 2;
  const QRectF whole = QRectF(rect()).adjusted(inset, inset, -inset, -inset);
  painter.drawRoundedRect(whole, look::cornerRadius(), look::cornerRadius());

  QRectF box = QRectF(rect()).adjusted(chainPad(), chainPad(), -chainPad(), -chainPad());
  const auto advance = [&box](double by) { box.setTop(box.top() + by); };
  advance(drawWords(painter, box, words_.title, typeface(Text::small), colour(Paint::quiet), 1) + space(6));
  advance(drawWords(painter, box, words_.headline, typeface(Text::headline), colour(Paint::ink), 2) + space(4));
  drawWords(painter, box, words_.detail, typeface(Text::body), colour(Paint::ink), kDetailLines);

  // The basis stands on the card's foot, so that the five rules of a row line up.
  const double foot = std::max(wrap(words_.basis, typeface(Text::small), box.width(), kBasisLines).height,
                               look::metrics(Text::small).lineSpacing());
  const double y = rect().bottom() - chainPad() - foot + space(2);
  painter.setPen(colour(Paint::line));
  painter.drawLine(QPointF(box.left(), std::floor(y - space(9)) + 0.5),
                   QPointF(box.right(), std::floor(y - space(9)) + 0.5));
  QFont basisFont = typeface(Text::small);
  basisFont.setItalic(notSeen);
  if (conflict) basisFont.setWeight(QFont::DemiBold);
  drawWords(painter, QRectF(box.left(), y, box.width(), foot), words_.basis, basisFont,
            colour(conflict ? Paint::warning : Paint::quiet), kBasisLines);
  if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
}

void LinkCard::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) emit chosen();
}

void LinkCard::keyPressEvent(QKeyEvent* event) {
  if (isEnter(*event)) {
    emit chosen();
  } else {
    QWidget::keyPressEvent(event);
  }
}

JointMark::JointMark(QWidget* parent) : QWidget(parent) {
  look::setRole(*this, QAccessible::Button);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
}

void JointMark::display(const JointWords& words, const QString& from, const QString& to) {
  words_ = words;
  setAccessibleName(tr("%1 to %2: %3, %4").arg(from, to, spoken(words.fit), words.words));
  setToolTip(plainTip(accessibleName()));
  update();
}

void JointMark::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  const double half = space(12);
  drawWire(painter, QRectF(0, wireHeight_ - half, width(), 2 * half), words_.fit);
  QFont words = typeface(Text::small);
  if (words_.fit != Fit::look) words.setWeight(QFont::DemiBold);
  const double top = wireHeight_ + half + space(2);
  const int lines = std::max(1, static_cast<int>((height() - top) / QFontMetricsF(words).lineSpacing()));
  drawWords(painter, QRectF(space(4), top, width() - 2 * space(4), height() - top), words_.words, words,
            inkOf(words_.fit), lines, Qt::AlignHCenter);
  if (hasFocus()) {
    const double tall = std::min<double>(height() - 1.0, top + 2 * QFontMetricsF(words).lineSpacing() + space(4));
    look::drawFocusRing(
        painter, QRectF(1, wireHeight_ - half - space(4), width() - 2, tall - wireHeight_ + half + space(4)), space(6));
  }
}

void JointMark::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) emit chosen();
}

void JointMark::keyPressEvent(QKeyEvent* event) {
  if (isEnter(*event)) {
    emit chosen();
  } else {
    QWidget::keyPressEvent(event);
  }
}

ChainView::ChainView(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setAccessibleName(tr("The chain from dash gauge to engine"));
  for (std::size_t i = 0; i < cards_.size(); ++i) {
    cards_[i] = new LinkCard(this);
    connect(cards_[i], &LinkCard::chosen, this, [this, i] { emit linkChosen(static_cast<int>(i)); });
    if (i == joints_.size()) break;
    joints_[i] = new JointMark(this);
    connect(joints_[i], &JointMark::chosen, this, [this, i] { emit jointChosen(static_cast<int>(i)); });
  }
}

void ChainView::display(const Chain& chain) {
  chain_ = chain;
  for (std::size_t i = 0; i < cards_.size(); ++i) cards_[i]->display(chain.links[i]);
  for (std::size_t i = 0; i < joints_.size(); ++i)
    joints_[i]->display(chain.joints[i], chain.links[i].title, chain.links[i + 1].title);
  place();
  updateGeometry();
}

int ChainView::heightForWidth(int width) const {
  int height = space(112);
  for (const LinkCard* card : cards_) height = std::max(height, card->heightFor(widths(width).card));
  return height;
}

QSize ChainView::sizeHint() const { return {space(1100), heightForWidth(std::max(width(), space(800)))}; }

QSize ChainView::minimumSizeHint() const { return {space(780), space(112)}; }

void ChainView::resizeEvent(QResizeEvent* /*event*/) { place(); }

void ChainView::place() {
  const Widths wide = widths(width());
  int x = 0;
  for (std::size_t i = 0; i < cards_.size(); ++i) {
    // What division left over goes to the last card, so that the chain ends where the page does.
    const int right = i + 1 == cards_.size() ? width() : x + wide.card;
    cards_[i]->setGeometry(x, 0, right - x, height());
    x = right;
    if (i == joints_.size()) break;
    joints_[i]->setWireHeight(std::min(space(50), height() / 2));
    joints_[i]->setGeometry(x, 0, wide.joint, height());
    x += wide.joint;
  }
}

}  // namespace ohmkin::parts
