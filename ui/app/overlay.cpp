#include <app/overlay.h>
#include <look/palette.h>
#include <QApplication>
#include <QMouseEvent>
#include <QPainter>

namespace ohmkin::app {

Overlay::Overlay(const QString& name, QWidget& window)
    : QDialog(&window), window_(window), panel_(new parts::Panel(parts::Panel::Kind::sheet, this)) {
  setWindowFlags(Qt::Widget);
  setWindowTitle(name);
  setAccessibleName(name);
  hide();
  window.installEventFilter(this);
}

void Overlay::appear() {
  if (!isVisible()) {
    for (auto* other : window_.findChildren<Overlay*>())
      if (other != this && other->isVisible()) other->reject();
    before_ = QApplication::focusWidget();
    for (QWidget* each : window_.findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
      if (each->isWindow() || !each->isEnabled() || qobject_cast<Overlay*>(each) != nullptr) continue;
      behind_.emplace_back(each);
      each->setEnabled(false);
    }
  }
  setGeometry(window_.rect());
  settle();
  show();
  raise();
}

void Overlay::vanish() {
  if (!isVisible()) return;
  hide();
  for (const auto& each : behind_)
    if (each != nullptr) each->setEnabled(true);
  behind_.clear();
  QWidget* before = before_.data();
  if (before != nullptr && before->isVisible()) before->setFocus(Qt::OtherFocusReason);
}

void Overlay::settle() { panel_->setGeometry(place(size())); }

void Overlay::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  QColor shade = look::tone() == look::Tone::light ? look::colour(look::Paint::ink) : QColor(Qt::black);
  shade.setAlphaF(look::tone() == look::Tone::light ? 0.28F : 0.5F);
  painter.fillRect(rect(), shade);
}

void Overlay::mousePressEvent(QMouseEvent* event) {
  if (!panel_->geometry().contains(event->pos())) reject();
}

bool Overlay::eventFilter(QObject* watched, QEvent* event) {
  if (watched == &window_ && event->type() == QEvent::Resize && isVisible()) {
    setGeometry(window_.rect());
    settle();
  }
  return QDialog::eventFilter(watched, event);
}

bool Overlay::focusNextPrevChild(bool next) {
  QWidget* const had = QApplication::focusWidget();
  QWidget* const from = had != nullptr && isAncestorOf(had) ? had : this;
  QWidget* at = from;
  while ((at = next ? at->nextInFocusChain() : at->previousInFocusChain()) != nullptr && at != from) {
    if (!isAncestorOf(at) || !at->isVisibleTo(this) || !at->isEnabled() || !(at->focusPolicy() & Qt::TabFocus))
      continue;
    at->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    break;
  }
  return true;
}

}  // namespace ohmkin::app
