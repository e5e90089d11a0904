#include <look/type.h>
#include <parts/field_frame.h>
#include <parts/text_area.h>
#include <QEvent>

namespace ohmkin::parts {

using look::space;

TextArea::TextArea(const QString& name, int lines, QWidget* parent) : QPlainTextEdit(parent), lines_(lines) {
  setAccessibleName(name);
  setFrameShape(QFrame::NoFrame);
  setTabChangesFocus(true);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  document()->setDocumentMargin(space(8));
  viewport()->setAutoFillBackground(false);
  tintField(*this);
}

QSize TextArea::sizeHint() const {
  return {space(120), static_cast<int>(lines_ * look::metrics(look::Text::body).lineSpacing()) + space(18)};
}
QSize TextArea::minimumSizeHint() const { return {space(48), sizeHint().height()}; }

void TextArea::paintEvent(QPaintEvent* event) {
  {
    QPainter painter(viewport());
    drawField(painter, QRectF(viewport()->rect()), hasFocus());
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
  if (event->type() == QEvent::PaletteChange) tintField(*this);
}

}  // namespace ohmkin::parts
