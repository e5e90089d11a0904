#include <date/time_line_view.h>
#include <look/palette.h>
#include <look/type.h>
#include <parts/error_plot.h>
#include <parts/words.h>
#include <QPainter>
#include <cmath>

namespace ohmkin::castings {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kNameLines = 2;
double line() { return look::metrics(Text::small).lineSpacing(); }
double rowHeight() { return kNameLines * line() + space(6); }
double densityHeight() { return space(64); }
double axisHeight() { return line() + space(6); }

}  // namespace

TimeLineView::TimeLineView(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setSizePolicy(policy);
  setAccessibleName(tr("Time line"));
}

void TimeLineView::display(const TimeLinePicture& picture) {
  picture_ = picture;
  setAccessibleDescription(picture.summary);
  updateGeometry();
  update();
}

QSize TimeLineView::sizeHint() const {
  return {space(420),
          static_cast<int>(densityHeight() + static_cast<double>(picture_.rows.size()) * rowHeight() + axisHeight())};
}

QSize TimeLineView::minimumSizeHint() const { return {space(280), sizeHint().height()}; }

QRectF TimeLineView::canvas() const {
  const double names = std::min(width() * 0.36, static_cast<double>(space(200)));
  return {names + space(12), 0, width() - names - space(20), height() - axisHeight()};
}

double TimeLineView::xOf(double year) const {
  const QRectF box = canvas();
  return box.left() + (year - picture_.from) / (picture_.to - picture_.from) * box.width();
}

void TimeLineView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  drawAxis(painter);
  drawDensity(painter);
  double top = densityHeight();
  for (const TimeRow& row : picture_.rows) {
    drawRow(painter, row, top);
    top += rowHeight();
  }
}

void TimeLineView::drawAxis(QPainter& painter) const {
  const QRectF box = canvas();
  const double word = look::metrics(Text::small).horizontalAdvance(QStringLiteral("1988")) + space(16);
  const int most = std::max(2, static_cast<int>(box.width() / word));
  parts::Ticks ticks = parts::ticksOver(picture_.from, picture_.to, most);
  ticks.step = std::max(1.0, std::round(ticks.step));
  for (double year = std::ceil(picture_.from / ticks.step) * ticks.step; year <= picture_.to; year += ticks.step) {
    const double x = std::round(xOf(year)) + 0.5;
    painter.setPen(QPen(colour(Paint::line), 1));
    painter.drawLine(QPointF(x, 0), QPointF(x, box.bottom()));
    parts::drawWords(painter, QRectF(x - word / 2, box.bottom() + space(4), word, line()),
                     QString::number(static_cast<int>(std::lround(year))), typeface(Text::small), colour(Paint::quiet),
                     1, Qt::AlignHCenter);
  }
}

void TimeLineView::drawDensity(QPainter& painter) const {
  const QRectF box = canvas();
  const double base = densityHeight() - space(10);
  const QRectF name(0, base - kNameLines * line(), box.left() - space(12), kNameLines * line());
  parts::drawWords(painter, name, picture_.densityName, typeface(Text::strong), colour(Paint::ink), kNameLines);
  painter.setPen(QPen(colour(Paint::edge), 1));
  painter.drawLine(QPointF(box.left(), base + 0.5), QPointF(box.right(), base + 0.5));
  const TimeDensity& density = picture_.density;
  if (density.probability.empty()) return;
  // One bar for every few pixels, as high as the probability of the days under it: a single day stays visible.
  const double wide = std::max(3.0, static_cast<double>(space(3)));
  std::vector<double> bars(static_cast<std::size_t>(std::ceil(box.width() / wide)) + 1, 0.0);
  for (std::size_t i = 0; i < density.probability.size(); ++i) {
    const double at = (xOf(density.from + density.step * (static_cast<double>(i) + 0.5)) - box.left()) / wide;
    if (at >= 0 && at < static_cast<double>(bars.size())) bars[static_cast<std::size_t>(at)] += density.probability[i];
  }
  const double most = *std::max_element(bars.begin(), bars.end());
  if (most <= 0) return;
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(Paint::accent));
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const double high = bars[i] / most * (base - space(4));
    if (high < 0.5) continue;
    painter.drawRect(QRectF(box.left() + static_cast<double>(i) * wide, base - high, wide, high));
  }
}

void TimeLineView::drawRow(QPainter& painter, const TimeRow& row, double top) const {
  const QRectF box = canvas();
  const double middle = top + rowHeight() / 2;
  const double words = parts::wrap(row.name, typeface(Text::small), box.left() - space(12), kNameLines).height;
  parts::drawWords(painter, QRectF(0, middle - words / 2, box.left() - space(12), rowHeight()), row.name,
                   typeface(Text::small), colour(Paint::ink), kNameLines);
  painter.save();
  painter.setClipRect(box.adjusted(-space(6), 0, space(6), 0));
  for (const TimeMark& mark : row.marks) {
    const double from = xOf(mark.from);
    const double until = xOf(mark.until);
    const bool wide = row.kind == TimeKind::production || row.kind == TimeKind::vehicle;
    if (wide) {
      const bool vehicle = row.kind == TimeKind::vehicle;
      painter.setPen(QPen(colour(vehicle ? Paint::ink : Paint::accent), 1.2));
      painter.setBrush(colour(vehicle ? Paint::ink : Paint::accentWash));
      painter.drawRoundedRect(
          QRectF(from, middle - space(5), std::max(until - from, static_cast<double>(space(4))), space(10)), space(3),
          space(3));
    } else if (row.kind == TimeKind::clusterChange) {
      painter.setPen(QPen(colour(Paint::ink), space(2), Qt::SolidLine, Qt::RoundCap));
      painter.drawLine(QPointF(from, middle - space(7)), QPointF(from, middle + space(7)));
    } else {
      const double r = space(2.5) + space(4) * std::sqrt(mark.weight);
      const QPointF c((from + until) / 2, middle);
      painter.setPen(QPen(colour(Paint::accent), 1.4));
      painter.setBrush(mark.weight >= 0.5 ? QBrush(colour(Paint::accent)) : QBrush(colour(Paint::panel)));
      if (row.kind == TimeKind::stamp) painter.drawRect(QRectF(c.x() - r * 0.8, c.y() - r * 0.8, r * 1.6, r * 1.6));
      else
        painter.drawPolygon(QPolygonF({c + QPointF(0, -r), c + QPointF(r, 0), c + QPointF(0, r), c + QPointF(-r, 0)}));
    }
  }
  painter.restore();
}

}  // namespace ohmkin::castings
