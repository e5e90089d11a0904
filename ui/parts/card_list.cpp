#include <look/palette.h>
#include <look/style.h>
#include <parts/card_list.h>

namespace ohmkin::parts {

using look::colour;
using look::Paint;

void listOfCards(QListView& list) {
  list.setFrameShape(QFrame::NoFrame);
  list.setResizeMode(QListView::Adjust);
  list.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list.setSelectionMode(QAbstractItemView::SingleSelection);
  list.setMouseTracking(true);
  list.setTabKeyNavigation(false);
  list.viewport()->setAutoFillBackground(false);
}

QRectF drawCard(QPainter& painter, const QStyleOptionViewItem& option, int gap) {
  const bool selected = option.state & QStyle::State_Selected;
  const bool over = option.state & QStyle::State_MouseOver;
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF card = QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5 - gap);
  painter.setPen(QPen(colour(selected ? Paint::accent : over ? Paint::edge : Paint::line), 1));
  painter.setBrush(colour(selected ? Paint::accentWash : Paint::panel));
  painter.drawRoundedRect(card, look::cornerRadius(), look::cornerRadius());
  return card;
}

void drawCardFocus(QPainter& painter, const QStyleOptionViewItem& option, const QRectF& card, const QListView& list) {
  if ((option.state & QStyle::State_HasFocus) && list.hasFocus())
    look::drawFocusRing(painter, card.adjusted(-0.5, -0.5, 0.5, 0.5), look::cornerRadius());
}

}  // namespace ohmkin::parts
