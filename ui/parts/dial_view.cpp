#include <look/palette.h>
#include <look/type.h>
#include <parts/dial_view.h>
#include <parts/words.h>
#include <QPainter>
#include <QPainterPath>
#include <QtMath>
#include <algorithm>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr double kReadableRadius = 120;
constexpr double kBelowTheArc = 0.06;  // parts of the radius: room for the ends of the arc
constexpr double kHiddenPart = 0.45;   // of a needle, at most

QPointF towards(double degrees) {
  const double a = qDegreesToRadians(degrees);
  return {std::sin(a), -std::cos(a)};
}

QRectF textBox(const QString& text) {
  const QFontMetricsF m = look::metrics(Text::small);
  return {0, 0, m.horizontalAdvance(text) + 2, m.height()};
}

/// The unit arc, its ends and its pivot.
QRectF unitBox(double from, double to) {
  QRectF box(0, 0, 0, 0);  // the pivot
  const auto take = [&box](const QPointF& p) {
    box.setLeft(std::min(box.left(), p.x()));
    box.setRight(std::max(box.right(), p.x()));
    box.setTop(std::min(box.top(), p.y()));
    box.setBottom(std::max(box.bottom(), p.y()));
  };
  const double low = std::min(from, to);
  const double high = std::max(from, to);
  for (double a = low; a < high; a += 2) take(towards(a));
  take(towards(high));
  return box;
}

void drawArc(QPainter& painter, const QPointF& pivot, double radius, double from, double to, const QPen& pen) {
  const QRectF box(pivot.x() - radius, pivot.y() - radius, 2 * radius, 2 * radius);
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  // Qt counts sixteenths of a degree, counter-clockwise from three o'clock.
  painter.drawArc(box, qRound((90 - from) * 16), qRound((from - to) * 16));
}

bool ends(const DialMark& mark) { return mark.kind == DialMark::Kind::cold || mark.kind == DialMark::Kind::hot; }

double tickLength(const DialMark& mark) {
  switch (mark.kind) {
    case DialMark::Kind::tick:
      return space(6);
    case DialMark::Kind::cold:
    case DialMark::Kind::hot:
      return space(14);
    default:
      return space(11);
  }
}

}  // namespace

void drawNeedle(QPainter& painter, const QPointF& from, const QPointF& to, Needle needle, bool misreads) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  QPen pen(colour(Paint::ink), 1.5, Qt::SolidLine, Qt::FlatCap);
  switch (needle) {
    case Needle::truth:
      pen.setDashPattern({5, 3});
      break;
    case Needle::shown:
      pen.setColor(colour(misreads ? Paint::warning : Paint::accent));
      pen.setWidthF(space(4));
      pen.setCapStyle(Qt::RoundCap);
      break;
    case Needle::now:
      pen.setColor(colour(misreads ? Paint::warning : Paint::quiet));
      pen.setWidthF(space(2));
      break;
  }
  painter.setPen(pen);
  painter.drawLine(from, to);
  painter.restore();
}

DialView::DialView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("Dial of the dash gauge"));
}

void DialView::display(const DialPicture& picture) {
  picture_ = picture;
  update();
}

void DialView::setNeedles(const DialPicture& needles) {
  picture_.truth = needles.truth;
  picture_.shown = needles.shown;
  picture_.now = needles.now;
  picture_.misreads = needles.misreads;
  picture_.nowMisreads = needles.nowMisreads;
  update();
}

// No more than it must have: it takes what the page has left.
QSize DialView::sizeHint() const { return {space(360), space(80)}; }

QSize DialView::minimumSizeHint() const { return {space(220), space(80)}; }

DialView::Placed DialView::placed(const QRectF& box) const {
  Placed out;
  if (picture_.marks.empty()) return out;
  double from = std::min(picture_.lowStop, picture_.highStop);
  double to = std::max(picture_.lowStop, picture_.highStop);
  for (const DialMark& mark : picture_.marks) {
    from = std::min(from, mark.degrees);
    to = std::max(to, mark.degrees);
  }
  const QRectF unit = unitBox(from, to);
  double wide = 0;
  for (const DialMark& mark : picture_.marks) wide = std::max(wide, textBox(mark.text).width());
  const double tall = look::metrics(Text::small).height();
  const double sideways = wide + space(8);
  const double hub = space(8);
  const double widest = (box.width() - 2 * sideways) / unit.width();
  const double high = box.height() - tall - space(8);
  out.radius = std::max(10.0, std::min(widest, (high - hub) / unit.height()));
  // Where there is little height the pivot lies below the edge, as behind a dash's own window: the scale stays
  // readable.
  const double readable = std::min<double>(widest, space(kReadableRadius));
  const double arcEnds = std::max(towards(from).y(), towards(to).y());
  const double least = std::max(arcEnds + kBelowTheArc, -kHiddenPart);
  if (out.radius < readable && least < unit.bottom())
    out.radius = std::max(out.radius, std::min(readable, high / (least - unit.top())));
  const double top = box.top() + tall + space(6) +
                     std::max(0.0, (box.height() - tall - space(8) - hub - unit.height() * out.radius) / 2);
  out.pivot = QPointF(box.center().x() - unit.center().x() * out.radius, top - unit.top() * out.radius);

  std::vector<std::size_t> order(picture_.marks.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_partition(order.begin(), order.end(), [this](std::size_t i) { return ends(picture_.marks[i]); });
  for (const std::size_t i : order) {
    const DialMark& mark = picture_.marks[i];
    if (mark.text.isEmpty()) continue;
    QRectF label = textBox(mark.text);
    const QPointF way = towards(mark.degrees);
    // Far enough out that the box clears the arc whichever way it leans.
    const double reach = space(6) + (std::abs(way.x()) * label.width() + std::abs(way.y()) * label.height()) / 2;
    label.moveCenter(out.pivot + way * (out.radius + reach));
    const bool touches = std::any_of(out.labels.begin(), out.labels.end(), [&label](const auto& other) {
      return other.second.adjusted(-3, -1, 3, 1).intersects(label);
    });
    if (!touches) out.labels.emplace_back(i, label);
  }
  return out;
}

void DialView::paintEvent(QPaintEvent* /*event*/) {
  if (picture_.marks.empty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Placed at = placed(QRectF(rect()));
  const auto angleOf = [this](DialMark::Kind kind) -> std::optional<double> {
    for (const DialMark& mark : picture_.marks)
      if (mark.kind == kind) return mark.degrees;
    return {};
  };
  const double first = picture_.marks.front().degrees;
  const double last = picture_.marks.back().degrees;
  const double hot = angleOf(DialMark::Kind::hot).value_or(last);
  drawArc(painter, at.pivot, at.radius, first, last, QPen(colour(Paint::ink), space(1.5), Qt::SolidLine, Qt::FlatCap));
  if (const auto low = angleOf(DialMark::Kind::normalLow), high = angleOf(DialMark::Kind::normalHigh); low && high)
    drawArc(painter, at.pivot, at.radius - space(5), *low, *high,
            QPen(colour(Paint::edge), space(4), Qt::SolidLine, Qt::FlatCap));
  // From the hot mark to the stop the arc is heavy: a shape, not only a colour.
  drawArc(painter, at.pivot, at.radius, hot, picture_.highStop,
          QPen(colour(Paint::warning), space(6), Qt::SolidLine, Qt::FlatCap));

  for (const DialMark& mark : picture_.marks) {
    const QPointF way = towards(mark.degrees);
    const bool isHot = mark.kind == DialMark::Kind::hot;
    painter.setPen(QPen(colour(isHot ? Paint::warning : Paint::ink),
                        mark.kind == DialMark::Kind::tick ? 1.0 : space(2.0), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(at.pivot + way * (at.radius - tickLength(mark)),
                     at.pivot + way * (at.radius + (isHot ? space(3) : 0)));
  }
  for (const auto& [index, box] : at.labels) {
    const DialMark& mark = picture_.marks[index];
    QFont f = typeface(Text::small);
    if (ends(mark)) f.setWeight(QFont::DemiBold);
    painter.setFont(f);
    painter.setPen(colour(mark.kind == DialMark::Kind::hot ? Paint::warning : Paint::ink));
    painter.drawText(box.adjusted(-4, 0, 4, 0), static_cast<int>(Qt::AlignCenter), mark.text);
  }

  drawWords(painter, QRectF(rect()), picture_.note, typeface(Text::small), colour(Paint::quiet), 1);

  const double hub = space(7);
  const auto needle = [&](std::optional<double> degrees, Needle which, double length) {
    if (!degrees) return;
    const QPointF way = towards(*degrees);
    drawNeedle(painter, at.pivot + way * hub, at.pivot + way * (at.radius * length), which,
               which == Needle::now ? picture_.nowMisreads : picture_.misreads);
  };
  needle(picture_.now, Needle::now, 0.9);
  needle(picture_.shown, Needle::shown, 0.86);
  needle(picture_.truth, Needle::truth, 0.97);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(Paint::ink));
  painter.drawEllipse(at.pivot, hub, hub);
}

}  // namespace ohmkin::parts
