#include <look/palette.h>
#include <look/type.h>
#include <parts/circuit_view.h>
#include <QPainter>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
double gap(double n) { return look::space(n); }
using look::Text;
using look::typeface;

/// Draws the symbols of IEC 60617: a resistor is a plain box, a fuse a box with a line through it.
class Drawing {
 public:
  explicit Drawing(QPainter& painter) : painter_(painter) {}

  void wire(const QPointF& from, const QPointF& to) {
    painter_.setPen(QPen(colour(Paint::ink), stroke(), Qt::SolidLine, Qt::RoundCap));
    painter_.drawLine(from, to);
  }
  void node(const QPointF& at) {
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(colour(Paint::ink));
    painter_.drawEllipse(at, gap(3), gap(3));
  }
  void ground(const QPointF& at) {
    for (int i = 0; i < 3; ++i) {
      const double half = gap(9 - 3 * i);
      const double y = at.y() + i * gap(4);
      wire({at.x() - half, y}, {at.x() + half, y});
    }
  }
  /// Added resistors are in the accent; what was there is in ink.
  void across(const QPointF& from, const QPointF& to, const QString& words, bool added, bool fused = false) {
    const QPointF c = (from + to) / 2;
    const double half = gap(17);
    wire(from, {c.x() - half, from.y()});
    wire({c.x() + half, to.y()}, to);
    box({c.x() - half, c.y() - gap(6), 2 * half, gap(12)}, added);
    write({c.x() - gap(60), c.y() - gap(8) - line(), gap(120), line()}, words, Qt::AlignHCenter, added);
    if (fused) {
      const QRectF fuse(from.x() + (c.x() - half - from.x()) / 2 - gap(8), from.y() - gap(4), gap(16), gap(8));
      box(fuse, added);
      wire({fuse.left(), from.y()}, {fuse.right(), from.y()});
    }
  }
  void down(const QPointF& from, const QPointF& to, const QString& words, bool added, bool variable = false) {
    const QPointF c = (from + to) / 2;
    const double half = gap(15);
    wire(from, {from.x(), c.y() - half});
    wire({to.x(), c.y() + half}, to);
    const QRectF body(c.x() - gap(6), c.y() - half, gap(12), 2 * half);
    box(body, added);
    if (variable) {
      wire(body.center() + QPointF(-gap(13), gap(13)), body.center() + QPointF(gap(11), -gap(11)));
      wire(body.center() + QPointF(-gap(13), gap(13)), body.center() + QPointF(-gap(17), gap(13)));
    }
    write({c.x() + gap(17), c.y() - line() / 2, gap(160), line()}, words, Qt::AlignLeft, added);
  }
  void write(const QRectF& box, const QString& words, Qt::Alignment alignment, bool added = false) {
    QFont f = typeface(Text::small);
    if (added) f.setWeight(QFont::DemiBold);
    painter_.setFont(f);
    painter_.setPen(colour(added ? Paint::accent : Paint::ink));
    painter_.drawText(box, static_cast<int>(alignment | Qt::AlignVCenter), words);
  }
  void box(const QRectF& rect, bool added) {
    painter_.setPen(QPen(colour(added ? Paint::accent : Paint::ink), stroke()));
    painter_.setBrush(colour(added ? Paint::accentWash : Paint::panel));
    painter_.drawRoundedRect(rect, 2, 2);
  }
  static double line() { return look::metrics(Text::small).lineSpacing(); }
  static double stroke() { return gap(1.6); }

 private:
  QPainter& painter_;
};

}  // namespace

CircuitView::CircuitView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Trim network"));
}

void CircuitView::display(const Circuit& circuit) {
  circuit_ = circuit;
  setAccessibleDescription(circuit.words);
  update();
}

QSize CircuitView::sizeHint() const { return {look::space(400), look::space(128)}; }

QSize CircuitView::minimumSizeHint() const { return {look::space(260), look::space(128)}; }

void CircuitView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  Drawing draw(painter);
  const bool fed = !circuit_.feed.isEmpty();
  const double y = gap(fed ? 56 : 40);
  const double foot = height() - gap(16);
  const double room = std::min<double>(width(), gap(520));
  const double gaugeRight = gap(92);
  const double post = gaugeRight + gap(20);
  const double senderX = room - gap(96);
  const double seriesEnd = post + (senderX - post) * 0.58;

  const QRectF gauge(gap(24), y - gap(20), gaugeRight - gap(24), gap(40));
  draw.wire({gap(2), y}, {gauge.left(), y});
  draw.box(gauge, false);
  draw.write(gauge, tr("gauge"), Qt::AlignHCenter);
  draw.write({0, y + gap(22), gauge.left() + gap(24), Drawing::line()}, tr("feed"), Qt::AlignLeft);
  draw.wire({gaugeRight, y}, {post, y});
  if (fed) {
    const double over = gap(22);
    draw.node({gap(12), y});
    draw.wire({gap(12), y}, {gap(12), over});
    draw.across({gap(12), over}, {post, over}, circuit_.feed, true, true);
    draw.wire({post, over}, {post, y});
    draw.node({post, y});
  }
  if (circuit_.series.isEmpty()) {
    draw.wire({post, y}, {senderX, y});
  } else {
    draw.across({post, y}, {seriesEnd, y}, circuit_.series, true);
    draw.wire({seriesEnd, y}, {senderX, y});
  }
  if (!circuit_.parallel.isEmpty()) {
    const double x = circuit_.parallelAtSender && !circuit_.series.isEmpty() ? seriesEnd + gap(16) : post;
    draw.node({x, y});
    draw.down({x, y}, {x, foot}, circuit_.parallel, true);
    draw.ground({x, foot});
  }
  draw.wire({senderX, y}, {senderX, y + gap(6)});
  draw.down({senderX, y + gap(6)}, {senderX, foot}, circuit_.sender, false, true);
  draw.ground({senderX, foot});
}

}  // namespace ohmkin::parts
