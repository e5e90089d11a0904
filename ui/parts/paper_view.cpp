#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/paper_view.h>
#include <QPainter>

namespace ohmkin::parts {

PaperView::PaperView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

bool PaperView::display(const QByteArray& svg, const QRectF& part) {
  const bool read = drawing_.load(svg);
  if (read && !part.isEmpty()) drawing_.setViewBox(part);
  update();
  return read;
}

QSize PaperView::sizeHint() const { return {look::space(400), look::space(112)}; }

QSize PaperView::minimumSizeHint() const { return {look::space(160), look::space(80)}; }

void PaperView::paintEvent(QPaintEvent* /*event*/) {
  if (blank()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(look::colour(look::Paint::line), 1));
  painter.setBrush(Qt::white);
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look::space(4), look::space(4));
  const double margin = look::space(8);
  QRectF drawn(QPointF(),
               drawing_.viewBoxF().size().scaled(width() - 2 * margin, height() - 2 * margin, Qt::KeepAspectRatio));
  drawn.moveCenter(QRectF(rect()).center());
  painter.setClipRect(drawn);
  drawing_.render(&painter, drawn);
}

}  // namespace ohmkin::parts
