#pragma once
#include <QByteArray>
#include <QString>
#include <QTransform>
#include <vector>

class QPainter;

/// QSvgRenderer draws letters as outlines. In a PDF text has to stay text, to be searched and read aloud, so a sheet is
/// parted: the renderer draws what remains, the painter writes the words.
namespace ohmkin::printing {

constexpr double kMillimetresPerInch = 25.4;  ///< a sheet is in millimetres, a printer counts in dots an inch

struct Lettering {
  QString words;
  double x = 0;
  double y = 0;     ///< of the baseline
  double size = 0;  ///< of the type, in the sheet's own units
  bool bold = false;
  Qt::Alignment anchor = Qt::AlignLeft;
  QTransform placed;  ///< from the element's own coordinates to the sheet's
};

struct PartedSheet {
  QByteArray strokes;  ///< the sheet without its text elements
  std::vector<Lettering> letterings;
};

/// Understands what our sheets have: text without children, x, y, font-size, font-weight, text-anchor, and transforms
/// of translate and rotate on groups and texts. Not well-formed XML gives no strokes.
PartedSheet partLettering(const QByteArray& svg);

/// Onto a painter whose unit is the sheet's.
void write(QPainter& painter, const Lettering& lettering);

}  // namespace ohmkin::printing
