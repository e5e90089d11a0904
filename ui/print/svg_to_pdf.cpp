#include <print/lettering.h>
#include <print/svg_to_pdf.h>

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgRenderer>
#include <QXmlStreamReader>

namespace ohmkin::printing {
namespace {

constexpr int kDotsPerInch = 1200;
constexpr double kLargest = 2000;  // mm: beyond any printer on a bench

std::optional<double> millimetres(QStringView text) {
  bool sound = false;
  const double value = text.endsWith(QStringLiteral("mm")) ? text.chopped(2).toDouble(&sound) : 0;
  return sound && value > 0 && value <= kLargest ? std::optional(value) : std::nullopt;
}

QPageLayout layoutOf(const QSizeF& size) {
  // Exact match: never the nearest standard size, whose rounding would move the cut marks.
  return {QPageSize(size, QPageSize::Millimeter, QString(), QPageSize::ExactMatch), QPageLayout::Portrait, QMarginsF(),
          QPageLayout::Millimeter};
}

}  // namespace

QSizeF sheetSize(const QByteArray& svg) {
  QXmlStreamReader reader(svg);
  if (!reader.readNextStartElement() || reader.name() != QStringLiteral("svg")) return {};
  const auto width = millimetres(reader.attributes().value(QStringLiteral("width")));
  const auto height = millimetres(reader.attributes().value(QStringLiteral("height")));
  return width && height ? QSizeF(*width, *height) : QSizeF();
}

void drawSheet(QPainter& painter, const QByteArray& svg, double dotsPerMillimetre) {
  const PartedSheet parted = partLettering(svg);
  QSvgRenderer renderer(parted.strokes);
  const QSizeF size = sheetSize(svg) * dotsPerMillimetre;
  const QRectF units = renderer.viewBoxF();
  if (units.isEmpty()) return;
  renderer.render(&painter, QRectF(QPointF(), size));
  painter.save();
  painter.scale(size.width() / units.width(), size.height() / units.height());
  painter.translate(-units.topLeft());
  for (const Lettering& lettering : parted.letterings) write(painter, lettering);
  painter.restore();
}

Expected<void> svgToPdf(const QList<QByteArray>& sheets, const QString& file) {
  if (sheets.isEmpty()) return refuse("no-sheet", "--print", "nothing", "at least one sheet");
  for (int i = 0; i < sheets.size(); ++i) {
    if (sheetSize(sheets[i]).isEmpty() || partLettering(sheets[i]).strokes.isEmpty() ||
        !QSvgRenderer(sheets[i]).isValid())
      return refuse("sheet-unreadable", "--print", "sheet " + std::to_string(i + 1),
                    "an SVG whose size is given in millimetres");
  }
  QSaveFile out(file);
  const auto notWritten = [&] {
    return refuse("pdf-not-saved", "--pdf", "'" + file.toStdString() + "'", "a place that can be written");
  };
  if (!out.open(QIODevice::WriteOnly)) return notWritten();
  {
    QPdfWriter writer(&out);
    writer.setResolution(kDotsPerInch);
    writer.setCreator(QCoreApplication::applicationName());
    writer.setPageLayout(layoutOf(sheetSize(sheets.front())));
    QPainter painter;
    for (const QByteArray& sheet : sheets) {
      if (painter.isActive()) {
        writer.setPageLayout(layoutOf(sheetSize(sheet)));
        writer.newPage();
      } else if (!painter.begin(&writer)) {
        return notWritten();
      }
      drawSheet(painter, sheet, kDotsPerInch / kMillimetresPerInch);
    }
  }
  return out.commit() ? Expected<void>() : notWritten();
}

}  // namespace ohmkin::printing
