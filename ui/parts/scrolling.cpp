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

}  // namespace ohmkin::parts
