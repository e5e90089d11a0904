#include <fault/chain_symbols.h>
#include <look/palette.h>
#include <look/type.h>
#include <QPainterPath>

namespace ohmkin::fault {
namespace {

using look::colour;
using look::Paint;
double gap(double n) { return look::space(n); }

constexpr double kSuspected = 0.1;

class Symbol {
 public:
  Symbol(QPainter& painter, const QPointF& centre, double suspicion) : painter_(painter), c_(centre) {
    const bool suspected = suspicion >= kSuspected;
    const double stroke = wireWidth() * (suspicion >= 0.4 ? 1.7 : suspected ? 1.3 : 1.0);
    painter_.setPen(
        QPen(colour(suspected ? Paint::warning : Paint::ink), stroke, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter_.setBrush(colour(suspected ? Paint::warningWash : Paint::panel));
  }
  void line(double x1, double y1, double x2, double y2) {
    painter_.drawLine(c_ + QPointF(gap(x1), gap(y1)), c_ + QPointF(gap(x2), gap(y2)));
  }
  void ring(double x, double radius) { painter_.drawEllipse(c_ + QPointF(gap(x), 0), gap(radius), gap(radius)); }
  void box(double half, double high) {
    painter_.drawRoundedRect(QRectF(c_.x() - gap(half), c_.y() - gap(high), 2 * gap(half), 2 * gap(high)), 2, 2);
  }
  void coil() {
    QPainterPath path(c_ + QPointF(-gap(14), 0));
    for (int i = 0; i < 4; ++i)
      path.arcTo(QRectF(c_.x() - gap(14) + i * gap(7), c_.y() - gap(4.5), gap(7), gap(9)), 180, -180);
    painter_.setBrush(Qt::NoBrush);
    painter_.drawPath(path);
  }
  void waves() {
    for (const double y : {-3.0, 3.0}) {
      QPainterPath path(c_ + QPointF(-gap(9), gap(y)));
      for (int i = 0; i < 3; ++i)
        path.quadTo(c_ + QPointF(-gap(6) + i * gap(6), gap(i % 2 == 0 ? y - 5 : y + 5)),
                    c_ + QPointF(-gap(3) + i * gap(6), gap(y)));
      painter_.drawPath(path);
    }
  }
  void socket() {
    line(-14, 0, -3, 0);
    line(5, 0, 14, 0);
    painter_.setBrush(Qt::NoBrush);
    painter_.drawArc(QRectF(c_.x() - gap(4), c_.y() - gap(7), gap(14), gap(14)), 90 * 16, 180 * 16);
    painter_.setBrush(painter_.pen().color());
    ring(0.5, 2.5);
  }

 private:
  QPainter& painter_;
  QPointF c_;
};

}  // namespace

double wireWidth() { return gap(1.6); }

double symbolHalf(Place place) {
  return place == Place::battery                                                           ? gap(4)
         : place == Place::feedPin || place == Place::leadPin || place == Place::groundPin ? gap(4.5)
                                                                                           : gap(14);
}

void drawSymbol(QPainter& painter, const QPointF& centre, Place place, bool heater, double suspicion) {
  painter.save();
  Symbol s(painter, centre, suspicion);
  switch (place) {
    case Place::battery:
      s.line(-4, -11, -4, 11);
      s.line(4, -5, 4, 5);
      break;
    case Place::keySwitch:
      s.line(-9, 0, 10, -8);
      s.ring(-11, 2.5);
      s.ring(11, 2.5);
      break;
    case Place::fuse:
      s.box(14, 5);
      s.line(-14, 0, 14, 0);
      break;
    case Place::feed:
    case Place::lead:
      s.line(-14, 0, 14, 0);
      s.ring(-12, 2);
      s.ring(12, 2);
      break;
    case Place::feedPin:
    case Place::leadPin:
    case Place::groundPin:
      s.ring(0, 4.5);
      break;
    case Place::regulator:
      s.box(14, 9);
      s.line(-8, 4, -3, 4);
      s.line(-3, 4, -3, -4);
      s.line(-3, -4, 3, -4);
      s.line(3, -4, 3, 4);
      s.line(3, 4, 8, 4);
      break;
    case Place::gauge:
      if (heater) s.box(14, 5);
      else s.coil();
      break;
    case Place::groundCoil:
      s.coil();
      break;
    case Place::feedShunt:
    case Place::groundShunt:
    case Place::boardLeak:
      s.box(14, 5);
      break;
    case Place::connector:
      s.socket();
      break;
    case Place::sender:
      s.box(14, 6);
      s.line(-12, 11, 10, -11);
      s.line(-12, 11, -16, 11);
      break;
    case Place::thread:
      s.box(14, 6);
      for (const double x : {-8.0, -2.0, 4.0}) s.line(x, 6, x + 4, -6);
      break;
    case Place::block:
      s.box(14, 10);
      s.waves();
      break;
    case Place::strap:
      s.line(-14, -3, 14, 3);
      s.line(-14, 3, 14, -3);
      s.ring(-14, 3);
      s.ring(14, 3);
      break;
    case Place::clusterGround:
    case Place::bodyGround:
      s.line(-14, 0, 14, 0);
      s.ring(-12, 3.5);
      s.ring(12, 3.5);
      break;
    case Place::leadToChassis:
      s.line(-4, -4, 4, 4);
      s.line(-4, 4, 4, -4);
      break;
  }
  painter.restore();
}

void drawChassis(QPainter& painter, const QPointF& at) {
  painter.setPen(QPen(colour(Paint::ink), wireWidth(), Qt::SolidLine, Qt::RoundCap));
  for (int i = 0; i < 3; ++i) {
    const double half = gap(8 - 2.5 * i);
    const double y = at.y() + i * gap(3.5);
    painter.drawLine(QPointF(at.x() - half, y), QPointF(at.x() + half, y));
  }
}

void drawLikelihood(QPainter& painter, const QPointF& centre, double radius, double probability) {
  const QRectF box(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius);
  painter.setPen(QPen(colour(Paint::warning), gap(1.2)));
  painter.setBrush(colour(Paint::panel));
  painter.drawEllipse(box);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(Paint::warning));
  painter.drawPie(box, 90 * 16, -static_cast<int>(360 * 16 * std::min(probability, 1.0)));
}

}  // namespace ohmkin::fault
