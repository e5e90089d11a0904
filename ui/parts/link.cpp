#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/link.h>
#include <parts/words.h>
#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <cmath>

namespace ohmkin::parts {
namespace {

constexpr int kMostLines = 4;
int inset() { return look::space(1); }
int leastHeight() { return std::max(24, look::space(26)); }

}  // namespace

Link::Link(const QString& words, QWidget* parent) : QAbstractButton(parent) {
  setText(words);
  setAccessibleName(words);
  setCursor(Qt::PointingHandCursor);
  setFocusPolicy(Qt::StrongFocus);
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setFont(look::typeface(look::Text::body));
}

int Link::heightForWidth(int width) const {
  const double words = wrap(text(), font(), width - 2 * inset(), kMostLines).height;
  return std::max(leastHeight(), static_cast<int>(std::ceil(words)) + inset());
}

QSize Link::sizeHint() const {
  const int wide =
      std::min(static_cast<int>(QFontMetricsF(font()).horizontalAdvance(text())) + 2 * inset() + 2, look::space(320));
  return {wide, heightForWidth(wide)};
}

QSize Link::minimumSizeHint() const { return {look::space(64), leastHeight()}; }

void Link::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  QFont underlined = font();
  underlined.setUnderline(true);
  const double high = wrap(text(), font(), width() - 2 * inset(), kMostLines).height;
  drawWords(painter, QRectF(inset(), (height() - high) / 2, width() - 2 * inset(), high), text(), underlined,
            look::colour(look::Paint::accent), kMostLines);
  if (hasFocus()) look::drawFocusRing(painter, QRectF(rect()), look::space(4));
}

void Link::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    click();
    return;
  }
  QAbstractButton::keyPressEvent(event);
}

bool Link::event(QEvent* event) {
  if (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut) update();
  return QAbstractButton::event(event);
}

}  // namespace ohmkin::parts
