#include <fault/likelihood_bars.h>
#include <look/palette.h>
#include <look/role.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QPainter>
#include <cmath>

namespace ohmkin::fault {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kNameLines = 3;
constexpr double kLikely = 0.4;

double line() { return look::metrics(Text::body).lineSpacing(); }
double wordsWide() {
  return look::metrics(Text::strong).horizontalAdvance(LikelihoodBars::tr("very unlikely")) + space(4);
}
double barWide(double whole) { return std::clamp(whole * 0.2, 1.0 * space(48), 1.0 * space(120)); }
double nameWide(double whole) { return whole - wordsWide() - barWide(whole) - 2 * space(10); }
QFont nameFont(const LikelihoodRow& row) { return typeface(row.probability >= kLikely ? Text::strong : Text::body); }
double heightOf(const LikelihoodRow& row, double whole) {
  return std::max(line(), parts::wrap(row.name, nameFont(row), nameWide(whole), kNameLines).height) + space(7);
}

}  // namespace

LikelihoodBars::LikelihoodBars(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setFocusPolicy(Qt::TabFocus);  // so that a screen reader comes by; there is nothing to press
  setAccessibleName(tr("What may be the matter"));
  look::setRole(*this, QAccessible::Chart);
}

void LikelihoodBars::display(std::vector<LikelihoodRow> rows) {
  if (rows == rows_) return;
  rows_ = std::move(rows);
  QStringList all;
  for (const LikelihoodRow& row : rows_) all << tr("%1: %2").arg(row.name, row.words);
  setAccessibleDescription(all.join(QStringLiteral("; ")));
  updateGeometry();
  update();
}

int LikelihoodBars::heightForWidth(int width) const {
  double high = 0;
  for (const LikelihoodRow& row : rows_) high += heightOf(row, width);
  return static_cast<int>(std::ceil(high));
}

QSize LikelihoodBars::sizeHint() const { return {space(340), heightForWidth(std::max(width(), space(300)))}; }
QSize LikelihoodBars::minimumSizeHint() const { return {space(280), space(40)}; }

void LikelihoodBars::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  double top = 0;
  for (const LikelihoodRow& row : rows_) {
    const bool likely = row.probability >= kLikely;
    const double words = wordsWide();
    const double bar = barWide(width());
    parts::drawWords(painter, QRectF(0, top, nameWide(width()), kNameLines * line()), row.name, nameFont(row),
                     colour(Paint::ink), kNameLines);
    const QRectF trough(width() - words - bar - space(10), top + line() / 2 - space(3), bar, space(6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour(Paint::line));
    painter.drawRoundedRect(trough, space(3), space(3));
    if (row.probability > 0.005) {
      painter.setBrush(colour(likely ? Paint::warning : Paint::edge));
      const double filled = std::max(bar * std::min(row.probability, 1.0), trough.height());
      painter.drawRoundedRect(QRectF(trough.topLeft(), QSizeF(filled, trough.height())), space(3), space(3));
    }
    parts::drawWords(painter, QRectF(width() - words, top, words, line()), row.words,
                     typeface(likely ? Text::strong : Text::body), colour(likely ? Paint::warning : Paint::quiet), 1);
    top += heightOf(row, width());
  }
  if (hasFocus()) look::drawFocusRing(painter, rect(), space(6));
}

}  // namespace ohmkin::fault
