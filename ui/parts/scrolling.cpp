#include <parts/scrolling.h>

namespace ohmkin::parts {

QScrollArea* scrolling(QWidget* inner, QWidget* parent) {
  auto* scroll = new QScrollArea(parent);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->viewport()->setAutoFillBackground(false);
  scroll->setWidget(inner);
  inner->setAutoFillBackground(false);  // setWidget() turned it on
  return scroll;
}

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

}  // namespace ohmkin::parts
