#include <look/palette.h>
#include <look/type.h>
#include <parts/text_area.h>
#include <QEvent>
#include <QPainter>

namespace ohmkin::parts {

using look::colour;
using look::Paint;
using look::space;

TextArea::TextArea(const QString& name, int lines, QWidget* parent) : QPlainTextEdit(parent), lines_(lines) {
  setAccessibleName(name);
  setFrameShape(QFrame::NoFrame);
  setTabChangesFocus(true);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  document()->setDocumentMargin(space(8));
  viewport()->setAutoFillBackground(false);
  tint();
}

QSize TextArea::sizeHint() const {
  return {space(120), static_cast<int>(lines_ * look::metrics(look::Text::body).lineSpacing()) + space(18)};
}
QSize TextArea::minimumSizeHint() const { return {space(48), sizeHint().height()}; }

void TextArea::paintEvent(QPaintEvent* event) {
  {
    QPainter painter(viewport());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour(hasFocus() ? Paint::accent : Paint::edge), hasFocus() ? 2 : 1));
    painter.setBrush(colour(Paint::panel));
    const double inset = hasFocus() ? 1 : 0.5;
    painter.drawRoundedRect(QRectF(viewport()->rect()).adjusted(inset, inset, -inset, -inset), space(6), space(6));
  }
  QPlainTextEdit::paintEvent(event);
}

void TextArea::focusInEvent(QFocusEvent* event) {
  QPlainTextEdit::focusInEvent(event);
  viewport()->update();
}

void TextArea::focusOutEvent(QFocusEvent* event) {
  QPlainTextEdit::focusOutEvent(event);
  viewport()->update();
}

void TextArea::changeEvent(QEvent* event) {
  QPlainTextEdit::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) tint();
}

void TextArea::tint() {
  QPalette tinted = palette();
  const QColor accent = colour(Paint::accent);
  if (tinted.color(QPalette::Highlight) == accent && tinted.color(QPalette::Base).alpha() == 0) return;
  tinted.setColor(QPalette::Base, Qt::transparent);
  tinted.setColor(QPalette::Highlight, accent);
  tinted.setColor(QPalette::HighlightedText, colour(Paint::panel));
  setPalette(tinted);
}

}  // namespace ohmkin::parts
