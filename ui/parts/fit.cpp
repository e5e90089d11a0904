#include <look/palette.h>
#include <look/type.h>
#include <parts/fit.h>
#include <QCoreApplication>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;

QPen pen(const QColor& ink, double width, Qt::PenCapStyle cap = Qt::RoundCap) {
  return {ink, width, Qt::SolidLine, cap, Qt::RoundJoin};
}

void drawDots(QPainter& painter, double from, double to, double y, double pitch, double radius) {
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(Paint::quiet));
  const int count = 1 + static_cast<int>((to - from) / pitch);
  const double first = (from + to - (count - 1) * pitch) / 2;
  for (int i = 0; i < count; ++i) painter.drawEllipse(QPointF(first + i * pitch, y), radius, radius);
}

}  // namespace

QColor inkOf(Fit fit) {
  switch (fit) {
    case Fit::fits:
    case Fit::withPart:
      return colour(Paint::accent);
    case Fit::cut:
      return colour(Paint::warning);
    case Fit::look:
      break;
  }
  return colour(Paint::quiet);
}

QString spoken(Fit fit) {
  switch (fit) {
    case Fit::fits:
      return QCoreApplication::translate("Fit", "fits");
    case Fit::withPart:
      return QCoreApplication::translate("Fit", "fits with something added");
    case Fit::cut:
      return QCoreApplication::translate("Fit", "misreads or does not fit");
    case Fit::look:
      break;
  }
  return QCoreApplication::translate("Fit", "not known: look");
}

void drawFit(QPainter& painter, const QPointF& centre, double size, Fit fit) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double r = size / 2;
  const double stroke = size / 6;
  switch (fit) {
    case Fit::fits:
      painter.setPen(Qt::NoPen);
      painter.setBrush(inkOf(fit));
      painter.drawEllipse(centre, r * 0.8, r * 0.8);
      break;
    case Fit::withPart:
      painter.setPen(pen(inkOf(fit), stroke));
      painter.setBrush(Qt::NoBrush);
      painter.drawEllipse(centre, r - stroke / 2, r - stroke / 2);
      break;
    case Fit::cut:
      painter.setPen(pen(inkOf(fit), stroke));
      for (const double shift : {-0.36, 0.36})
        painter.drawLine(centre + QPointF((shift - 0.22) * r, r), centre + QPointF((shift + 0.22) * r, -r));
      break;
    case Fit::look:
      drawDots(painter, centre.x() - r, centre.x() + r, centre.y(), size / 2.6, size / 9);
      break;
  }
  painter.restore();
}

void drawWire(QPainter& painter, const QRectF& box, Fit fit) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const QPointF c = box.center();
  const double thick = look::space(3);
  const double margin = look::space(6);
  const double left = box.left() + margin;
  const double right = box.right() - margin;
  const double size = look::space(fit == Fit::withPart ? 20 : 16);
  // The wire stops short of a ring or a cut, runs into a dot, and is not drawn where nothing is known.
  const double gap = fit == Fit::fits ? 0 : fit == Fit::withPart ? size / 2 : size * 0.6;
  if (fit == Fit::look) {
    drawDots(painter, left, right, c.y(), look::space(8), look::space(1.6));
  } else {
    painter.setPen(pen(inkOf(fit), thick));
    painter.drawLine(QPointF(left, c.y()), QPointF(c.x() - gap, c.y()));
    painter.drawLine(QPointF(c.x() + gap, c.y()), QPointF(right, c.y()));
    drawFit(painter, c, size, fit);
  }
  painter.restore();
}

}  // namespace ohmkin::parts
