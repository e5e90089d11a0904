#pragma once
#include <parts/error_plot.h>
#include <QPainterPath>

/// What the error plot draws its series with: from numbers to strokes, and where a name has room.
namespace ohmkin::parts {

/// From temperature and error to the sheet.
struct PlotMap {
  QRectF box;
  double from, to, low, high;
  [[nodiscard]] double x(double t) const { return box.left() + (t - from) / (to - from) * box.width(); }
  [[nodiscard]] double y(double e) const { return box.bottom() - (e - low) / (high - low) * box.height(); }
  [[nodiscard]] QPointF operator()(double t, double e) const { return {x(t), y(e)}; }
};

QColor inkOf(const PlotSeries& series);
QPainterPath lineOf(const PlotSeries& series, const PlotMap& map);
void drawBand(QPainter& painter, const PlotSeries& series, const PlotMap& map, const QColor& ink);
void drawOutline(QPainter& painter, const PlotSeries& series, const PlotMap& map);

/// Does the line, or its band, run through the box? Looked at between the points too: they may lie far apart.
bool crosses(const PlotSeries& series, const PlotMap& map, const QRectF& box, bool bandToo = true);
/// A place beside the series' own line that no line and no other name runs through; nothing where there is none.
std::optional<QRectF> placeName(const PlotPicture& picture, const PlotSeries& series, const QSizeF& size,
                                const PlotMap& map, const std::vector<QRectF>& taken, bool clearOfBands);

}  // namespace ohmkin::parts
