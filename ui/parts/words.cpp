#include <parts/words.h>
#include <QFontMetricsF>
#include <QTextLayout>
#include <cmath>

namespace ohmkin::parts {

Wrapped wrap(const QString& text, const QFont& font, double width, int mostLines) {
  Wrapped wrapped;
  const QFontMetricsF metrics(font);
  if (text.isEmpty() || width <= 0 || mostLines <= 0) return wrapped;
  QTextOption option;
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  QTextLayout layout(text, font);
  layout.setTextOption(option);
  layout.beginLayout();
  while (wrapped.lines.size() < mostLines) {
    QTextLine line = layout.createLine();
    if (!line.isValid()) break;
    line.setLineWidth(width);
    const qsizetype start = line.textStart();
    const bool last = wrapped.lines.size() + 1 == mostLines;
    if (last && start + line.textLength() < text.size()) {
      wrapped.lines << metrics.elidedText(text.mid(start), Qt::ElideRight, width);
      wrapped.elided = true;
    } else {
      wrapped.lines << text.mid(start, line.textLength()).trimmed();
    }
  }
  layout.endLayout();
  wrapped.height = std::ceil(static_cast<double>(wrapped.lines.size()) * metrics.lineSpacing());
  return wrapped;
}

double drawWords(QPainter& painter, const QRectF& box, const QString& text, const QFont& font, const QColor& ink,
                 int mostLines, Qt::Alignment alignment) {
  const Wrapped wrapped = wrap(text, font, box.width(), mostLines);
  painter.setFont(font);
  painter.setPen(ink);
  const double step = QFontMetricsF(font).lineSpacing();
  double y = box.top();
  for (const QString& line : wrapped.lines) {
    painter.drawText(QRectF(box.left(), y, box.width(), step),
                     static_cast<int>(alignment | Qt::AlignVCenter | Qt::TextSingleLine), line);
    y += step;
  }
  return wrapped.height;
}

QString plainTip(const QString& text) {
  return text.isEmpty() ? QString() : QStringLiteral("<p>%1</p>").arg(text.toHtmlEscaped());
}

}  // namespace ohmkin::parts
