#include <look/palette.h>
#include <look/type.h>
#include <parts/plot_shapes.h>
#include <QPainter>
#include <algorithm>
#include <cmath>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;

/// A curve through points by rising x that keeps between them: no bump the numbers do not have (Fritsch and Carlson's
/// monotone slopes, harmonic mean of the neighbours; SIAM J. Numer. Anal. 17, 1980).
void curveThrough(QPainterPath& path, const QPolygonF& points) {
  const auto slope = [&points](qsizetype i) {
    return (points[i + 1].y() - points[i].y()) / std::max(1e-9, points[i + 1].x() - points[i].x());
  };
  const auto tangent = [&](qsizetype i) {
    if (i == 0) return slope(0);
    if (i + 1 == points.size()) return slope(i - 1);
    const double before = slope(i - 1);
    const double after = slope(i);
    return before * after <= 0 ? 0.0 : 2 * before * after / (before + after);
  };
  for (qsizetype i = 0; i + 1 < points.size(); ++i) {
    const double third = (points[i + 1].x() - points[i].x()) / 3;
    path.cubicTo(points[i] + QPointF(third, third * tangent(i)), points[i + 1] - QPointF(third, third * tangent(i + 1)),
                 points[i + 1]);
  }
}

QPainterPath curveOf(const QPolygonF& points) {
  QPainterPath path;
  if (points.isEmpty()) return path;
  path.moveTo(points.first());
  curveThrough(path, points);
  return path;
}

/// Between an upper and a lower edge.
QPainterPath between(const QPolygonF& upper, const QPolygonF& lower) {
  QPainterPath area = curveOf(upper);
  area.connectPath(curveOf(lower).toReversed());
  area.closeSubpath();
  return area;
}

std::vector<std::pair<double, double>> everyPlace() {
  std::vector<std::pair<double, double>> places;
  for (const double away : {0.0, 10.0, 20.0, 32.0, 44.0})
    for (const double part : {0.72, 0.6, 0.82, 0.5, 0.4, 0.3, 0.2}) places.emplace_back(part, away);
  return places;
}

}  // namespace

QPainterPath lineOf(const PlotSeries& series, const PlotMap& map) {
  QPolygonF line;
  for (const PlotPoint& p : series.points) line << map(p.at, p.error);
  return curveOf(line);
}

QColor inkOf(const PlotSeries& series) {
  return colour(series.misreads ? Paint::warning : series.now ? Paint::quiet : Paint::accent);
}

void drawBand(QPainter& painter, const PlotSeries& series, const PlotMap& map, const QColor& ink) {
  QPolygonF upper;
  QPolygonF lower;
  for (const PlotPoint& p : series.points) {
    upper << map(p.at, p.error + p.uncertainty);
    lower << map(p.at, p.error - p.uncertainty);
  }
  painter.fillPath(between(upper, lower), look::blended(ink, colour(Paint::panel), 0.16));
}

void drawOutline(QPainter& painter, const PlotSeries& series, const PlotMap& map) {
  if (series.drawn.empty()) return;
  QPolygonF upper;
  QPolygonF lower;
  for (const PlotInterval& at : series.drawn) {
    upper << map(at.at, at.high);
    lower << map(at.at, at.low);
  }
  painter.setPen(QPen(colour(Paint::ink), 1));
  painter.setBrush(Qt::NoBrush);
  painter.drawPath(between(upper, lower));
}

bool crosses(const PlotSeries& series, const PlotMap& map, const QRectF& box, bool bandToo) {
  constexpr int kSteps = 8;
  for (std::size_t i = 0; i + 1 < series.points.size(); ++i) {
    const PlotPoint& a = series.points[i];
    const PlotPoint& b = series.points[i + 1];
    if (map.x(b.at) < box.left() || map.x(a.at) > box.right()) continue;
    for (int step = 0; step <= kSteps; ++step) {
      const double part = step / static_cast<double>(kSteps);
      const double x = map.x(std::lerp(a.at, b.at, part));
      if (x < box.left() || x > box.right()) continue;
      const double error = std::lerp(a.error, b.error, part);
      const double half = series.now || !bandToo ? 0 : std::lerp(a.uncertainty, b.uncertainty, part);
      if (map.y(error + half) <= box.bottom() && map.y(error - half) >= box.top()) return true;
    }
  }
  return false;
}

std::optional<QRectF> placeName(const PlotPicture& picture, const PlotSeries& series, const QSizeF& size,
                                const PlotMap& map, const std::vector<QRectF>& taken, bool clearOfBands) {
  // Close to the line first; where it is steep a wide name needs more room.
  for (const auto& [part, away] : everyPlace()) {
    const double x = map.box.left() + part * map.box.width();
    const auto near = std::min_element(series.points.begin(), series.points.end(), [&](const auto& a, const auto& b) {
      return std::abs(map.x(a.at) - x) < std::abs(map.x(b.at) - x);
    });
    if (near == series.points.end()) return {};
    const double half = series.now || !clearOfBands ? 0 : near->uncertainty;
    for (const bool above : {!series.now, series.now}) {
      QRectF box(QPointF(x - size.width() / 2, 0), size);
      if (above) {
        box.moveBottom(map.y(near->error + half) - space(3 + away));
      } else {
        box.moveTop(map.y(near->error - half) + space(4 + away));
      }
      const bool outside = !map.box.adjusted(0, -space(2), 0, space(2)).contains(box);
      const bool overName =
          std::any_of(taken.begin(), taken.end(), [&box](const QRectF& t) { return t.intersects(box); });
      const bool overLine = std::any_of(picture.series.begin(), picture.series.end(), [&](const PlotSeries& other) {
        return crosses(other, map, box, clearOfBands);
      });
      if (!outside && !overName && !overLine) return box;
    }
  }
  return {};
}

}  // namespace ohmkin::parts
