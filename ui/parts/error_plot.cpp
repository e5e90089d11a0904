#include <look/palette.h>
#include <look/type.h>
#include <parts/error_plot.h>
#include <parts/plot_shapes.h>
#include <parts/words.h>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <ranges>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

QString signedNumber(double value) {
  const QString digits = QString::number(std::abs(value), 'f', std::abs(value - std::round(value)) > 1e-9 ? 1 : 0);
  if (value > 0) return QLatin1Char('+') + digits;
  return value < 0 ? QChar(0x2212) + digits : digits;
}

}  // namespace

Ticks ticksOver(double low, double high, int count) {
  const double span = std::max(high - low, 1e-9);
  const double raw = span / std::max(1, count);
  const double power = std::pow(10.0, std::floor(std::log10(raw)));
  double step = 10 * power;
  for (const double factor : {1.0, 2.0, 5.0})
    if (raw <= factor * power * (1 + 1e-9)) {
      step = factor * power;
      break;
    }
  return {std::floor(low / step + 1e-9) * step, step, std::ceil(high / step - 1e-9) * step};
}

ErrorPlot::ErrorPlot(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setAccessibleName(tr("Indicated minus true"));
}

void ErrorPlot::display(const PlotPicture& picture) {
  picture_ = picture;
  setAccessibleDescription(picture.summary);
  update();
}

void ErrorPlot::outline(std::vector<PlotInterval> drawn) {
  if (picture_.series.empty()) return;
  picture_.series.front().drawn = std::move(drawn);
  update();
}

void ErrorPlot::setCursor(std::optional<double> temperature) {
  cursor_ = temperature;
  update();
}

// No more than it must have: it takes what the page has left.
QSize ErrorPlot::sizeHint() const { return {space(400), space(84)}; }

QSize ErrorPlot::minimumSizeHint() const { return {space(240), space(84)}; }

Ticks ErrorPlot::errorTicks(int count) const {
  double low = -2;
  double high = 2;
  for (const PlotSeries& series : picture_.series) {
    for (const PlotPoint& p : series.points) {
      const double half = series.now ? 0 : p.uncertainty;
      low = std::min(low, p.error - half);
      high = std::max(high, p.error + half);
    }
    for (const PlotInterval& at : series.drawn) {
      low = std::min(low, at.low);
      high = std::max(high, at.high);
    }
  }
  return ticksOver(low, high, count);
}

QRectF ErrorPlot::canvas() const {
  const QFontMetricsF m = look::metrics(Text::small);
  const double left = m.horizontalAdvance(QStringLiteral("+100")) + space(10);
  return QRectF(rect()).adjusted(left, m.height() / 2 + space(2), -space(4), -(m.lineSpacing() + space(8)));
}

void ErrorPlot::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  if (picture_.series.empty() || picture_.to <= picture_.from) {
    painter.setFont(font());
    painter.setPen(colour(Paint::quiet));
    painter.drawText(rect(), static_cast<int>(Qt::AlignCenter), tr("No curve to draw."));
    return;
  }
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF box = canvas();
  const QFontMetricsF m = look::metrics(Text::small);
  const Ticks up = errorTicks(std::clamp(static_cast<int>(box.height() / (m.lineSpacing() * 2.2)), 2, 8));
  const PlotMap map{box, picture_.from, picture_.to, up.first, up.last};

  // Where people look: a quiet field behind everything, named once.
  const QRectF looked(QPointF(map.x(std::max(picture_.bandFrom, picture_.from)), box.top()),
                      QPointF(map.x(std::min(picture_.bandTo, picture_.to)), box.bottom()));
  painter.fillRect(looked, look::blended(colour(Paint::unknownWash), colour(Paint::panel), 0.55));

  painter.setFont(typeface(Text::small));
  for (double e = up.first; e <= up.last + up.step / 2; e += up.step) {
    const bool zero = std::abs(e) < up.step / 2;
    const double y = std::floor(map.y(e)) + 0.5;
    painter.setPen(QPen(colour(zero ? Paint::edge : Paint::line), 1));
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
    painter.setPen(colour(Paint::quiet));
    painter.drawText(QRectF(0, y - m.height() / 2, box.left() - space(8), m.height()),
                     static_cast<int>(Qt::AlignRight | Qt::AlignVCenter), signedNumber(zero ? 0 : e));
  }
  const double labelWidth = m.horizontalAdvance(QStringLiteral("−100 ") + picture_.temperatureUnit) + space(16);
  const Ticks along = ticksOver(picture_.from, picture_.to, std::max(2, static_cast<int>(box.width() / labelWidth)));
  for (double t = along.first; t <= picture_.to + 1e-6; t += along.step) {
    if (t < picture_.from - 1e-6) continue;
    QRectF label(0, box.bottom() + space(6), labelWidth, m.lineSpacing());
    label.moveCenter(QPointF(map.x(t), label.center().y()));
    if (label.right() > width() + labelWidth / 4) continue;
    label.moveRight(std::min<double>(label.right(), width() + space(8)));
    painter.drawText(
        label, static_cast<int>(Qt::AlignCenter),
        QStringLiteral("%1 %2").arg(qRound(t)).arg(picture_.temperatureUnit).replace(QLatin1Char('-'), QChar(0x2212)));
  }
  if (picture_.hotMark && *picture_.hotMark >= picture_.from && *picture_.hotMark <= picture_.to) {
    QPen pen(colour(Paint::warning), 1);
    pen.setDashPattern({2, 3});
    painter.setPen(pen);
    const double x = std::floor(map.x(*picture_.hotMark)) + 0.5;
    painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
  }

  painter.save();
  painter.setClipRect(box.adjusted(-1, -1, 1, 1));
  for (const PlotSeries& series : picture_.series)
    if (!series.now) drawBand(painter, series, map, inkOf(series));
  // The chosen one last, over the others.
  for (const PlotSeries& series : std::views::reverse(picture_.series)) {
    QPen pen(inkOf(series), series.now ? 1.8 : 2.4);
    if (series.now) pen.setDashPattern({5, 3});
    pen.setJoinStyle(Qt::RoundJoin);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(lineOf(series, map));
    drawOutline(painter, series, map);
  }
  painter.restore();

  if (cursor_ && *cursor_ >= picture_.from && *cursor_ <= picture_.to) {
    const double x = map.x(*cursor_);
    painter.setPen(QPen(colour(Paint::ink), 1));
    painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
    painter.setBrush(colour(Paint::ink));
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(QPolygonF({QPointF(x, box.bottom()), QPointF(x - space(4), box.bottom() + space(6)),
                                   QPointF(x + space(4), box.bottom() + space(6))}));
  }

  std::vector<QRectF> taken;
  const QRectF bandNote(looked.left() + space(4), box.top() + space(1), looked.width() - space(8), m.height());
  if (m.horizontalAdvance(picture_.bandName) < bandNote.width()) {
    const bool crossed = std::any_of(picture_.series.begin(), picture_.series.end(),
                                     [&](const PlotSeries& s) { return crosses(s, map, bandNote); });
    QRectF note = bandNote;
    if (crossed) note.moveBottom(box.bottom() - space(1));
    drawWords(painter, note, picture_.bandName, typeface(Text::small), colour(Paint::quiet), 1, Qt::AlignHCenter);
    taken.push_back(note);
  }
  QFont nameFont = typeface(Text::small);
  nameFont.setWeight(QFont::DemiBold);
  const QFontMetricsF nameMetrics(nameFont);
  for (const PlotSeries& series : picture_.series) {
    const QSizeF size(std::min(nameMetrics.horizontalAdvance(series.name) + 4, box.width()), nameMetrics.height());
    auto place = placeName(picture_, series, size, map, taken, true);
    const bool onBand = !place;
    if (onBand) place = placeName(picture_, series, size, map, taken, false);
    if (!place) continue;
    if (!onBand) painter.fillRect(*place, look::blended(colour(Paint::panel), colour(Paint::unknownWash), 0.9));
    drawWords(painter, *place, series.name, nameFont, inkOf(series), 1, Qt::AlignHCenter);
    taken.push_back(*place);
  }
}

void ErrorPlot::point(const QPointF& at) {
  const QRectF box = canvas();
  if (picture_.series.empty() || box.width() <= 0) return;
  const double part = std::clamp((at.x() - box.left()) / box.width(), 0.0, 1.0);
  emit pointed(picture_.from + part * (picture_.to - picture_.from));
}

void ErrorPlot::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) point(event->position());
}

void ErrorPlot::mouseMoveEvent(QMouseEvent* event) {
  if (event->buttons() & Qt::LeftButton) point(event->position());
}

}  // namespace ohmkin::parts
