#include <parts/flow_layout.h>
#include <QWidget>

namespace ohmkin::parts {

FlowLayout::FlowLayout(int gap, QWidget* parent) : QLayout(parent), gap_(gap) { setContentsMargins(0, 0, 0, 0); }

FlowLayout::~FlowLayout() { qDeleteAll(items_); }

QLayoutItem* FlowLayout::takeAt(int index) {
  return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  arrange(rect, true);
}

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
  return size;
}

int FlowLayout::arrange(const QRect& rect, bool move) const {
  int x = rect.left();
  int y = rect.top();
  int line = 0;
  for (QLayoutItem* item : items_) {
    if (item->isEmpty()) continue;
    const QSize hint = item->sizeHint();
    const int width = std::min(hint.width(), rect.width());
    if (x > rect.left() && x + width > rect.left() + rect.width()) {
      x = rect.left();
      y += line + gap_;
      line = 0;
    }
    if (move) item->setGeometry(QRect(x, y, width, hint.height()));
    x += width + gap_;
    line = std::max(line, hint.height());
  }
  return y + line - rect.top();
}

}  // namespace ohmkin::parts
