#include <look/palette.h>
#include <look/type.h>
#include <measure/curve_plot.h>
#include <parts/error_plot.h>
#include <parts/words.h>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <ranges>

namespace ohmkin::measure {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr double kRoom = 1.15;  // above and below what is drawn, as a ratio of ohms
constexpr double kLeastRatio = 4;
constexpr double kWidestName = 0.4;  // of the plot

QString ohmWords(double value) {
  if (value >= 1000) return QStringLiteral("%1 kΩ").arg(value / 1000, 0, 'g', 3);
  return QStringLiteral("%1 Ω").arg(value, 0, 'g', 3);
}

}  // namespace

struct CurvePlot::Map {
  QRectF box;
  double from, to, lnLow, lnHigh;
  [[nodiscard]] double x(double t) const { return box.left() + (t - from) / (to - from) * box.width(); }
  [[nodiscard]] double y(double value) const {
    return box.bottom() - (std::log(std::max(value, 1e-9)) - lnLow) / (lnHigh - lnLow) * box.height();
  }
  [[nodiscard]] QPointF operator()(double t, double value) const { return {x(t), y(value)}; }
  [[nodiscard]] QPolygonF line(const std::vector<PlottedPoint>& points, double PlottedPoint::*value) const {
    QPolygonF all;
    for (const PlottedPoint& p : points) all << (*this)(p.at, p.*value);
    return all;
  }
};

std::vector<double> ohmTicks(double low, double high) {
  std::vector<double> ticks;
  if (!(low > 0) || !(high > low)) return ticks;
  const bool dense = high / low < 12;
  const std::vector<double> factors =
      dense ? std::vector<double>{1, 1.5, 2, 3, 4, 5, 6, 8} : std::vector<double>{1, 2, 5};
  for (double power = std::pow(10, std::floor(std::log10(low))); power <= high; power *= 10)
    for (const double factor : factors)
      if (factor * power >= low * 0.999 && factor * power <= high * 1.001) ticks.push_back(factor * power);
  return ticks;
}

CurvePlot::CurvePlot(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("Ohms over temperature"));
}

void CurvePlot::display(const CurvePicture& picture) {
  picture_ = picture;
  setAccessibleDescription(picture.summary);
  update();
}

QSize CurvePlot::sizeHint() const { return {space(420), space(250)}; }
QSize CurvePlot::minimumSizeHint() const { return {space(260), space(220)}; }

std::pair<double, double> CurvePlot::ohmsAxis() const {
  double low = 1e12;
  double high = 0;
  const auto take = [&](double value) {
    if (!(value > 0)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  };
  for (const PlottedReading& r : picture_.readings) {
    take(r.ohms * std::exp(-r.uLn));
    take(r.ohms * std::exp(r.uLn));
  }
  for (const PlottedPoint& p : picture_.curve) take(p.ohms);
  for (const auto& part : picture_.beyond)
    for (const PlottedPoint& p : part) take(p.ohms);
  for (const PlottedFamily& family : picture_.families)
    for (const PlottedPoint& p : family.points)
      if (picture_.readings.empty() || family.likeliest || family.claimed) take(p.ohms);
  if (high <= 0) return {10, 1000};
  if (high / low < kLeastRatio) {
    const double more = std::sqrt(kLeastRatio / (high / low));
    low /= more;
    high *= more;
  }
  return {low / kRoom, high * kRoom};
}

QRectF CurvePlot::canvas() const {
  const QFontMetricsF m = look::metrics(Text::small);
  const double left = m.horizontalAdvance(QStringLiteral("150 Ω")) + space(10);
  return QRectF(rect()).adjusted(left, space(6), -space(8), -(m.lineSpacing() + space(8)));
}

void CurvePlot::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (picture_.to <= picture_.from) return;
  const auto [low, high] = ohmsAxis();
  const Map map{canvas(), picture_.from, picture_.to, std::log(low), std::log(high)};
  drawAxes(painter, map);
  painter.save();
  painter.setClipRect(map.box.adjusted(-1, -1, 1, 1));
  drawFamilies(painter, map);
  drawNames(painter, map);
  drawCurve(painter, map);
  painter.restore();
  drawReadings(painter, map);
}

void CurvePlot::drawAxes(QPainter& painter, const Map& map) const {
  const QFontMetricsF m = look::metrics(Text::small);
  painter.setFont(typeface(Text::small));
  double lastLabel = map.box.bottom() + m.height();
  for (const double tick : ohmTicks(std::exp(map.lnLow), std::exp(map.lnHigh))) {
    const double y = std::floor(map.y(tick)) + 0.5;
    painter.setPen(QPen(colour(Paint::line), 1));
    painter.drawLine(QPointF(map.box.left(), y), QPointF(map.box.right(), y));
    if (lastLabel - y < m.height() * 1.1) continue;
    lastLabel = y;
    painter.setPen(colour(Paint::quiet));
    painter.drawText(QRectF(0, y - m.height() / 2, map.box.left() - space(8), m.height()),
                     static_cast<int>(Qt::AlignRight | Qt::AlignVCenter), ohmWords(tick));
  }
  const double wide = m.horizontalAdvance(QStringLiteral("−100 ") + picture_.unit) + space(16);
  const parts::Ticks along =
      parts::ticksOver(picture_.from, picture_.to, std::max(2, static_cast<int>(map.box.width() / wide)));
  for (double t = along.first; t <= picture_.to + 1e-6; t += along.step) {
    if (t < picture_.from - 1e-6) continue;
    const double x = std::floor(map.x(t)) + 0.5;
    painter.setPen(QPen(colour(Paint::line), 1));
    painter.drawLine(QPointF(x, map.box.bottom()), QPointF(x, map.box.bottom() + space(4)));
    QRectF label(0, map.box.bottom() + space(6), wide, m.lineSpacing());
    label.moveCenter(QPointF(x, label.center().y()));
    label.moveRight(std::min<double>(label.right(), width() + space(10)));
    painter.setPen(colour(Paint::quiet));
    painter.drawText(
        label, static_cast<int>(Qt::AlignCenter),
        QStringLiteral("%1 %2").arg(qRound(t)).arg(picture_.unit).replace(QLatin1Char('-'), QChar(0x2212)));
  }
  if (picture_.next && *picture_.next >= picture_.from && *picture_.next <= picture_.to) {
    QPen dotted(colour(Paint::accent), 1.4);
    dotted.setDashPattern({1, 3});
    dotted.setCapStyle(Qt::RoundCap);
    painter.setPen(dotted);
    const double x = map.x(*picture_.next);
    painter.drawLine(QPointF(x, map.box.top()), QPointF(x, map.box.bottom()));
    const QString words = tr("measure next");
    const double room = m.horizontalAdvance(words) + space(6);
    const bool right = x + room < map.box.right();
    parts::drawWords(
        painter,
        QRectF(right ? x + space(5) : x - room, map.box.bottom() - m.lineSpacing() - space(2), room, m.lineSpacing()),
        words, typeface(Text::small), colour(Paint::accent), 1);
  }
}

void CurvePlot::drawFamilies(QPainter& painter, const Map& map) const {
  for (const PlottedFamily& family : picture_.families) {
    const bool near = family.claimed || family.likeliest;
    painter.setPen(QPen(colour(near ? Paint::ink : Paint::edge), near ? 1.4 : 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(map.line(family.points, &PlottedPoint::ohms));
  }
}

/// Does the line run through the box? Between its points too.
bool CurvePlot::crosses(const Map& map, const std::vector<PlottedPoint>& points, const QRectF& box) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const QPointF a = map(points[i].at, points[i].ohms);
    const QPointF b = map(points[i + 1].at, points[i + 1].ohms);
    if (std::max(a.x(), b.x()) < box.left() || std::min(a.x(), b.x()) > box.right()) continue;
    if (QRectF(a, b).normalized().adjusted(-1, -1, 1, 1).intersects(box)) return true;
  }
  return false;
}

/// A place beside the family's own line: clear of every line if there is one, else of readings, names and the curve.
std::optional<QRectF> CurvePlot::placeName(const Map& map, const PlottedFamily& family, const QSizeF& size,
                                           const std::vector<QRectF>& taken, bool clear) const {
  for (const double part : {0.05, 0.95, 0.15, 0.85, 0.25, 0.75, 0.35, 0.65, 0.5})
    for (const bool above : {true, false}) {
      if (family.points.empty()) return {};
      const auto& p = family.points[static_cast<std::size_t>(part * static_cast<double>(family.points.size() - 1))];
      const QPointF at = map(p.at, p.ohms);
      QRectF box(QPointF(0, 0), size);
      if (above) box.moveBottomLeft(at + QPointF(space(5), -space(1)));
      else box.moveTopRight(at + QPointF(-space(4), space(1)));
      if (!map.box.contains(box)) continue;
      const auto through = [&](const std::vector<PlottedPoint>& line) { return crosses(map, line, box); };
      if (std::any_of(taken.begin(), taken.end(), [&](const QRectF& t) { return t.intersects(box); })) continue;
      if (through(picture_.curve) || std::any_of(picture_.beyond.begin(), picture_.beyond.end(), through)) continue;
      if (clear && std::any_of(picture_.families.begin(), picture_.families.end(),
                               [&](const PlottedFamily& other) { return through(other.points); }))
        continue;
      return box;
    }
  return {};
}

void CurvePlot::drawNames(QPainter& painter, const Map& map) const {
  std::vector<QRectF> taken;
  taken.reserve(picture_.readings.size());
  for (const PlottedReading& r : picture_.readings)
    taken.emplace_back(map(r.at, r.ohms) - QPointF(space(5), space(5)), QSizeF(space(10), space(10)));
  const QFontMetricsF m = look::metrics(Text::small);
  if (picture_.next) {  // and its words at the foot
    const double wide = m.horizontalAdvance(tr("measure next")) + space(8);
    taken.emplace_back(map.x(*picture_.next) - wide, map.box.bottom() - m.height() - space(4), 2 * wide,
                       m.height() + space(4));
    taken.emplace_back(map.x(*picture_.next) - space(2), map.box.top(), space(4), map.box.height());
  }
  for (const PlottedFamily& family : picture_.families) {
    const QSizeF size(std::min(m.horizontalAdvance(family.name) + 2, map.box.width() * kWidestName), m.height());
    auto box = placeName(map, family, size, taken, true);
    if (!box) {
      box = placeName(map, family, size, taken, false);
      if (!box) continue;
      painter.fillRect(*box, colour(Paint::panel));
    }
    parts::drawWords(painter, *box, family.name, typeface(Text::small),
                     colour(family.claimed || family.likeliest ? Paint::ink : Paint::quiet), 1);
    taken.push_back(*box);
  }
}

void CurvePlot::drawCurve(QPainter& painter, const Map& map) const {
  QPolygonF band;
  for (const PlottedPoint& p : picture_.curve)
    if (p.high > 0) band << map(p.at, p.high);
  for (const PlottedPoint& p : std::views::reverse(picture_.curve))
    if (p.high > 0) band << map(p.at, p.low);
  if (band.size() > 2) {
    painter.setPen(Qt::NoPen);
    QColor wash = colour(Paint::accent);
    wash.setAlphaF(0.18F);
    painter.setBrush(wash);
    painter.drawPolygon(band);
  }
  painter.setBrush(Qt::NoBrush);
  QPen pen(colour(Paint::accent), 2.4, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
  painter.setPen(pen);
  painter.drawPolyline(map.line(picture_.curve, &PlottedPoint::ohms));
  pen.setWidthF(1.8);
  pen.setDashPattern({5, 4});
  painter.setPen(pen);
  for (const auto& part : picture_.beyond) painter.drawPolyline(map.line(part, &PlottedPoint::ohms));
}

/// Heating filled, cooling hollow; one that does not belong is crossed out.
void CurvePlot::drawReadings(QPainter& painter, const Map& map) const {
  for (const PlottedReading& r : picture_.readings) {
    const QPointF c = map(r.at, r.ohms);
    const QColor ink = colour(r.outlier ? Paint::warning : Paint::ink);
    painter.setPen(QPen(ink, 1));
    painter.drawLine(QPointF(map.x(r.at - r.uAt), c.y()), QPointF(map.x(r.at + r.uAt), c.y()));
    painter.drawLine(QPointF(c.x(), map.y(r.ohms * std::exp(-r.uLn))), QPointF(c.x(), map.y(r.ohms * std::exp(r.uLn))));
    const double size = picture_.readings.size() > 60 ? space(2) : space(3.5);
    if (r.outlier) {
      painter.setPen(QPen(ink, space(2), Qt::SolidLine, Qt::RoundCap));
      painter.drawLine(c + QPointF(-size, -size), c + QPointF(size, size));
      painter.drawLine(c + QPointF(-size, size), c + QPointF(size, -size));
      continue;
    }
    painter.setPen(QPen(ink, 1.4));
    painter.setBrush(r.cooling ? colour(Paint::panel) : ink);
    painter.drawEllipse(c, size, size);
  }
}

}  // namespace ohmkin::measure
