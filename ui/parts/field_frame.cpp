#include <look/palette.h>
#include <look/type.h>
#include <parts/field_frame.h>

namespace ohmkin::parts {

using look::colour;
using look::Paint;
using look::space;

void drawField(QPainter& painter, const QRectF& rect, bool focus, bool wrong) {
  painter.setRenderHint(QPainter::Antialiasing);
  const Paint edge = wrong ? Paint::warning : focus ? Paint::accent : Paint::edge;
  painter.setPen(QPen(colour(edge), focus ? 2 : 1));
  painter.setBrush(colour(Paint::panel));
  const double inset = focus ? 1 : 0.5;
  painter.drawRoundedRect(rect.adjusted(inset, inset, -inset, -inset), space(6), space(6));
}

void tintField(QWidget& field) {
  QPalette tinted = field.palette();
  const QColor accent = colour(Paint::accent);
  if (tinted.color(QPalette::Highlight) == accent && tinted.color(QPalette::Base).alpha() == 0) return;
  tinted.setColor(QPalette::Base, Qt::transparent);
  tinted.setColor(QPalette::Highlight, accent);
  tinted.setColor(QPalette::HighlightedText, colour(Paint::panel));
  field.setPalette(tinted);
}

}  // namespace ohmkin::parts
