#include <look/palette.h>
#include <look/type.h>
#include <measure/suspect_bars.h>
#include <parts/words.h>
#include <QPainter>
#include <QResizeEvent>
#include <cmath>

namespace ohmkin::measure {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

double line() { return look::metrics(Text::body).lineSpacing(); }
double small() { return look::metrics(Text::small).lineSpacing(); }
constexpr int kNameLines = 2;
double figuresWidth() { return look::metrics(Text::strong).horizontalAdvance(chanceWords(1)) + space(8); }
double barWidth(double whole) { return std::min(whole * 0.3, static_cast<double>(space(150))); }
double nameWidth(double whole) { return whole - figuresWidth() - barWidth(whole) - space(12); }
QFont nameFont(const SuspectRow& row) { return typeface(row.chance >= 0.5 ? Text::strong : Text::body); }
double nameHeight(const SuspectRow& row, double whole) {
  return std::max(line(), parts::wrap(row.name, nameFont(row), nameWidth(whole), kNameLines).height);
}
double heightOf(const SuspectRow& row, double whole) {
  return nameHeight(row, whole) + (row.aside.isEmpty() ? 0 : small()) + space(7);
}

}  // namespace

QString chanceWords(double probability) {
  if (probability > 0.995) return SuspectBars::tr("over 99 %");
  if (probability < 0.005) return SuspectBars::tr("under 1 %");
  return SuspectBars::tr("%1 %").arg(std::lround(100 * probability));
}

SuspectBars::SuspectBars(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Whose curve it is"));
}

void SuspectBars::display(std::vector<SuspectRow> rows) {
  rows_ = std::move(rows);
  QStringList all;
  for (const SuspectRow& row : rows_) {
    QStringList words{row.name, chanceWords(row.chance)};
    if (!row.aside.isEmpty()) words << row.aside;
    all << words.join(QStringLiteral(", "));
  }
  setAccessibleDescription(all.join(QStringLiteral("; ")));
  setToolTip(parts::plainTip(all.join(QStringLiteral("; "))));
  updateGeometry();
  update();
}

QSize SuspectBars::sizeHint() const {
  double high = 0;
  for (const SuspectRow& row : rows_) high += heightOf(row, std::max(width(), space(220)));
  return {space(320), static_cast<int>(std::ceil(high))};
}

QSize SuspectBars::minimumSizeHint() const { return {space(220), sizeHint().height()}; }

void SuspectBars::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) updateGeometry();
}

void SuspectBars::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double figures = figuresWidth();
  const double bar = barWidth(width());
  const double words = nameWidth(width());
  double top = 0;
  for (const SuspectRow& row : rows_) {
    const bool likely = row.chance >= 0.5;
    parts::drawWords(painter, QRectF(0, top, words, line()), row.name, nameFont(row),
                     colour(row.gathered ? Paint::quiet : Paint::ink), kNameLines);
    const QRectF trough(words + space(4), top + line() / 2 - space(3), bar, space(6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour(Paint::line));
    painter.drawRoundedRect(trough, space(3), space(3));
    if (row.chance > 0.005) {
      painter.setBrush(colour(row.gathered ? Paint::edge : Paint::accent));
      painter.drawRoundedRect(
          QRectF(trough.topLeft(), QSizeF(std::max(bar * row.chance, trough.height()), trough.height())), space(3),
          space(3));
    }
    parts::drawWords(painter, QRectF(width() - figures, top, figures, line()), chanceWords(row.chance),
                     typeface(likely ? Text::strong : Text::body), colour(Paint::ink), 1, Qt::AlignRight);
    if (!row.aside.isEmpty())
      parts::drawWords(painter, QRectF(0, top + nameHeight(row, width()), width() - figures, small()), row.aside,
                       typeface(Text::small), colour(Paint::quiet), 1);
    top += heightOf(row, width());
  }
}

}  // namespace ohmkin::measure
