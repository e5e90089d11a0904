#include <look/style.h>
#include <look/type.h>
#include <parts/panel.h>
#include <QEvent>
#include <QPainter>

namespace ohmkin::parts {

using look::colour;
using look::Paint;

Panel::Panel(Kind kind, QWidget* parent) : QFrame(parent), kind_(kind) { setFrameShape(QFrame::NoFrame); }

void Panel::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  QPen edge(colour(kind_ == Kind::dashed ? Paint::edge : Paint::line), 1);
  if (kind_ == Kind::dashed) edge.setDashPattern({4, 3});
  painter.setPen(kind_ == Kind::caution ? QPen(Qt::NoPen) : edge);
  painter.setBrush(colour(kind_ == Kind::caution ? Paint::warningWash : Paint::panel));
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look::cornerRadius(), look::cornerRadius());
}

Words::Words(const QString& text, QWidget* parent) : QLabel(text, parent) {
  setTextFormat(Qt::PlainText);
  setWordWrap(true);
  paintInk();
}

Words* Words::sized(const QFont& font) {
  setFont(font);
  return this;
}

Words* Words::painted(look::Paint paint) {
  paint_ = paint;
  paintInk();
  return this;
}

Words* Words::selectable() {
  setTextInteractionFlags(Qt::TextSelectableByMouse);
  return this;
}

void Words::changeEvent(QEvent* event) {
  QLabel::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && palette().color(QPalette::WindowText) != colour(paint_)) paintInk();
}

void Words::paintInk() {
  QPalette inked = palette();
  inked.setColor(QPalette::WindowText, colour(paint_));
  setPalette(inked);
}

Words* fieldName(const QString& text, QWidget* parent) {
  Words* words = (new Words(text, parent))->sized(look::typeface(look::Text::small))->painted(look::Paint::quiet);
  words->setWordWrap(false);
  return words;
}

}  // namespace ohmkin::parts
