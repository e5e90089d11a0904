#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/fit.h>
#include <parts/look_card.h>
#include <parts/words.h>
#include <QEvent>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kLines = 3;
int left() { return space(54); }
int cardPad() { return space(11); }

}  // namespace

LookCard::LookCard(QWidget* parent) : QAbstractButton(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
  hide();
}

void LookCard::display(const QString& what, const QString& because) {
  setText(what);
  because_ = because;
  setAccessibleName(tr("One look would settle it: %1").arg(what));
  setAccessibleDescription(because);
  setToolTip(plainTip(because));
  setVisible(!what.isEmpty());
  updateGeometry();
  update();
}

int LookCard::heightForWidth(int width) const {
  const double inner = width - left() - space(16);
  return static_cast<int>(wrap(text(), typeface(Text::strong), inner, kLines).height +
                          wrap(because_, typeface(Text::small), inner, kLines).height) +
         2 * cardPad() + space(3);
}

QSize LookCard::sizeHint() const { return {space(500), heightForWidth(std::max(width(), space(320)))}; }

QSize LookCard::minimumSizeHint() const { return {space(240), heightForWidth(std::max(width(), space(320)))}; }

void LookCard::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  QPen edge(colour(Paint::edge), 1);
  edge.setDashPattern({4, 3});
  painter.setPen(edge);
  painter.setBrush(underMouse() ? QBrush(colour(Paint::panel)) : QBrush(Qt::NoBrush));
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look::cornerRadius(), look::cornerRadius());
  drawFit(painter, QPointF(left() / 2.0, height() / 2.0), space(18), Fit::look);
  QRectF words = QRectF(rect()).adjusted(left(), cardPad(), -space(16), -cardPad());
  const double used = drawWords(painter, words, text(), typeface(Text::strong), colour(Paint::ink), kLines);
  words.setTop(words.top() + used + space(3));
  drawWords(painter, words, because_, typeface(Text::small), colour(Paint::quiet), kLines);
  if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
}

bool LookCard::event(QEvent* event) {
  if (event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
  return QAbstractButton::event(event);
}

}  // namespace ohmkin::parts
