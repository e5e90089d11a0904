#include <print/lettering.h>

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QRegularExpression>
#include <QXmlStreamReader>

namespace ohmkin::printing {
namespace {

constexpr int kPixels =
    200;  // the type is set large and drawn small, so that nothing is rounded to the grid of a screen

QTransform transformOf(const QString& text, QTransform onto) {
  static const QRegularExpression step(QStringLiteral("(translate|rotate)\\(([^)]*)\\)"));
  static const QRegularExpression between(QStringLiteral("[\\s,]+"));
  for (auto steps = step.globalMatch(text); steps.hasNext();) {
    const auto match = steps.next();
    const QStringList numbers = match.captured(2).split(between, Qt::SkipEmptyParts);
    if (match.captured(1) == QStringLiteral("rotate")) onto.rotate(numbers.value(0).toDouble());
    else onto.translate(numbers.value(0).toDouble(), numbers.value(1).toDouble());
  }
  return onto;
}

Lettering letteringOf(const QXmlStreamAttributes& with, const QTransform& group) {
  const auto number = [&](const char* name) { return with.value(QLatin1String(name)).toDouble(); };
  const auto anchor = with.value(QLatin1String("text-anchor"));
  return {{},
          number("x"),
          number("y"),
          number("font-size"),
          with.value(QLatin1String("font-weight")) == QStringLiteral("bold"),
          anchor == QStringLiteral("middle") ? Qt::AlignHCenter
          : anchor == QStringLiteral("end")  ? Qt::AlignRight
                                             : Qt::AlignLeft,
          transformOf(with.value(QLatin1String("transform")).toString(), group)};
}

}  // namespace

PartedSheet partLettering(const QByteArray& svg) {
  PartedSheet parted;
  QXmlStreamReader in(svg);
  QXmlStreamWriter out(&parted.strokes);
  std::vector<QTransform> groups{QTransform()};
  while (!in.atEnd()) {
    in.readNext();
    if (in.isStartElement() && in.name() == QStringLiteral("text")) {
      Lettering lettering = letteringOf(in.attributes(), groups.back());
      lettering.words = in.readElementText(QXmlStreamReader::IncludeChildElements);
      parted.letterings.push_back(std::move(lettering));
      continue;
    }
    if (in.isStartElement())
      groups.push_back(transformOf(in.attributes().value(QLatin1String("transform")).toString(), groups.back()));
    if (in.isEndElement() && groups.size() > 1) groups.pop_back();
    if (in.tokenType() != QXmlStreamReader::Invalid) out.writeCurrentToken(in);
  }
  return in.hasError() ? PartedSheet() : parted;
}

void write(QPainter& painter, const Lettering& lettering) {
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setPixelSize(kPixels);
  font.setBold(lettering.bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  painter.save();
  painter.setTransform(lettering.placed, true);
  painter.translate(lettering.x, lettering.y);
  painter.scale(lettering.size / kPixels, lettering.size / kPixels);
  const double width = QFontMetricsF(font).horizontalAdvance(lettering.words);
  const double shift = lettering.anchor == Qt::AlignRight     ? width
                       : lettering.anchor == Qt::AlignHCenter ? width / 2
                                                              : 0;
  painter.setFont(font);
  painter.setPen(Qt::black);
  painter.drawText(QPointF(-shift, 0), lettering.words);
  painter.restore();
}

}  // namespace ohmkin::printing
