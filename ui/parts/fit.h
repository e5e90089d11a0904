#pragma once
#include <QPainter>
#include <QString>

/// How two things join, as a shape first and a colour second.
namespace ohmkin::parts {

enum class Fit {
  fits,      ///< solid dot
  withPart,  ///< ring: something is added
  cut,       ///< two strokes: misreads or does not fit
  look       ///< dots: not known
};

/// The shape alone, centred, as high as a capital letter is at `size` (logical pixels across).
void drawFit(QPainter& painter, const QPointF& centre, double size, Fit fit);
/// The shape on a wire from left to right.
void drawWire(QPainter& painter, const QRectF& box, Fit fit);
/// The colour its words are set in.
QColor inkOf(Fit fit);
/// For those who do not see the shape: "fits", "fits with something added", …
QString spoken(Fit fit);

}  // namespace ohmkin::parts
