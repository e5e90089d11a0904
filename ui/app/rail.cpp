#include <app/rail.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/panel.h>
#include <parts/words.h>
#include <QEvent>
#include <QPainter>

namespace ohmkin::app {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

RailButton::RailButton(const QString& words, QWidget* parent) : QAbstractButton(parent) {
  setText(words);
  setAccessibleName(words);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
}

QSize RailButton::sizeHint() const {
  const QFontMetricsF m = look::metrics(Text::strong);
  return {std::max(space(88), static_cast<int>(m.horizontalAdvance(text())) + space(24)),
          static_cast<int>(m.lineSpacing()) + space(18)};
}

void RailButton::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (isChecked() || underMouse() || isDown()) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour(isChecked() || isDown() ? Paint::accentWash : Paint::unknownWash));
    painter.drawRoundedRect(rect(), look::cornerRadius(), look::cornerRadius());
  }
  const double line = look::metrics(Text::strong).lineSpacing();
  parts::drawWords(painter, QRectF(space(6), (height() - line) / 2, width() - space(12), line), text(),
                   typeface(isChecked() ? Text::strong : Text::body),
                   colour(isChecked() ? Paint::accent : Paint::quiet), 1, Qt::AlignHCenter);
  if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
}

bool RailButton::event(QEvent* event) {
  if (event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
  return QAbstractButton::event(event);
}

Rail::Rail(QWidget* parent) : QWidget(parent), group_(this), pages_(new QVBoxLayout), foot_(new QVBoxLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(12), space(28), space(13), space(16));
  column->setSpacing(space(16));
  auto* name = (new parts::Words(QStringLiteral("Ohmkin"), this))->sized(typeface(Text::headline));
  name->setAlignment(Qt::AlignHCenter);
  name->setWordWrap(false);
  column->addWidget(name);
  pages_->setSpacing(space(8));
  foot_->setSpacing(space(4));
  column->addLayout(pages_);
  column->addStretch(1);
  column->addLayout(foot_);
  group_.setExclusive(true);
  connect(&group_, &QButtonGroup::idToggled, this, [this](int id, bool on) {
    if (on) emit chosen(id);
  });
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
}

void Rail::addPage(const QString& title, const QString& keys) {
  auto* button = new RailButton(title, this);
  button->setCheckable(true);
  button->setToolTip(parts::plainTip(tr("%1 (%2)").arg(title, keys)));
  group_.addButton(button, count());
  pages_->addWidget(button);
}

RailButton* Rail::addAtFoot(const QString& words, const QString& tip) {
  auto* button = new RailButton(words, this);
  button->setToolTip(parts::plainTip(tip));
  foot_->addWidget(button);
  return button;
}

void Rail::choose(int page) {
  if (QAbstractButton* button = group_.button(page)) button->setChecked(true);
}

void Rail::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setPen(colour(Paint::line));
  painter.drawLine(QPointF(width() - 0.5, 0), QPointF(width() - 0.5, height()));
}

}  // namespace ohmkin::app
