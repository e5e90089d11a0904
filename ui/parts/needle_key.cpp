#include <look/palette.h>
#include <look/type.h>
#include <parts/needle_key.h>
#include <parts/words.h>
#include <cmath>

namespace ohmkin::parts {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

int sample() { return space(26); }

}  // namespace

NeedleKey::NeedleKey(Needle needle, QWidget* parent) : QWidget(parent), needle_(needle) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void NeedleKey::say(const QString& words, bool misreads) {
  words_ = words;
  misreads_ = misreads;
  setAccessibleName(words);
  setToolTip(plainTip(words));
  setVisible(!words.isEmpty());
  updateGeometry();
  update();
}

QSize NeedleKey::sizeHint() const {
  const QFontMetricsF m = look::metrics(needle_ == Needle::shown ? Text::strong : Text::body);
  return {sample() + space(8) + static_cast<int>(std::ceil(m.horizontalAdvance(words_))) + 1,
          static_cast<int>(m.lineSpacing()) + space(2)};
}

QSize NeedleKey::minimumSizeHint() const {
  return {needle_ == Needle::truth ? sizeHint().width() : space(140), sizeHint().height()};
}

void NeedleKey::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  const double y = std::floor(height() / 2.0) + 0.5;
  drawNeedle(painter, QPointF(space(2), y), QPointF(sample() - space(2), y), needle_, misreads_);
  const Paint usual = needle_ == Needle::truth ? Paint::ink : needle_ == Needle::now ? Paint::quiet : Paint::accent;
  const Paint ink = misreads_ ? Paint::warning : usual;
  const double line = look::metrics(Text::strong).lineSpacing();
  // Too long, it is cut in the middle: the number at the end is what is read.
  const QFont font = look::typeface(needle_ == Needle::shown ? Text::strong : Text::body);
  const QRectF box(sample() + space(8), (height() - line) / 2, width() - sample() - space(8), height());
  drawWords(painter, box, QFontMetricsF(font).elidedText(words_, Qt::ElideMiddle, box.width()), font, look::colour(ink),
            1);
}

}  // namespace ohmkin::parts
