#include <look/palette.h>
#include <look/type.h>
#include <parts/marked_words.h>
#include <QTextLayout>
#include <cmath>

namespace ohmkin::parts {

double drawMarked(QPainter& painter, const QRectF& line, const MarkedWords& words, const QFont& font,
                  const QColor& ink) {
  const QFontMetricsF metrics(font);
  const QString text = metrics.elidedText(words.text, Qt::ElideRight, line.width());
  if (text.isEmpty()) return 0;
  const bool whole = text == words.text;
  const int shown = static_cast<int>(text.size()) - (whole ? 0 : 1);
  QTextLayout layout(text, font);
  layout.setCacheEnabled(true);
  QList<QTextLayout::FormatRange> formats;
  for (const MarkedWords::Span& span : words.spans) {
    const int end = std::min(span.begin + span.length, shown);
    if (span.begin >= end) continue;
    QTextCharFormat format;
    format.setFontUnderline(true);
    format.setForeground(look::colour(look::Paint::accent));
    formats.push_back({span.begin, end - span.begin, format});
  }
  layout.setFormats(formats);
  layout.beginLayout();
  QTextLine only = layout.createLine();
  only.setLineWidth(1e6);
  layout.endLayout();
  const QPointF at(line.left(), line.top() + (line.height() - only.height()) / 2);
  painter.setPen(Qt::NoPen);
  painter.setBrush(look::colour(look::Paint::accentWash));
  for (const QTextLayout::FormatRange& each : formats) {
    const double from = only.cursorToX(each.start);
    const double to = only.cursorToX(each.start + each.length);
    painter.drawRoundedRect(QRectF(at.x() + from - 1, at.y(), to - from + 2, only.height()), look::space(3),
                            look::space(3));
  }
  painter.setPen(ink);
  layout.draw(&painter, at);
  return only.naturalTextWidth();
}

}  // namespace ohmkin::parts
