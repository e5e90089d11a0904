#include <app/action_list.h>
#include <look/type.h>
#include <QKeyEvent>
#include <QVBoxLayout>

namespace ohmkin::app {

using look::space;

ActionList::ActionList(desk::Settings& settings, QWidget& window)
    : Overlay(tr("What can be done"), window),
      settings_(settings),
      box_(new parts::Entry(tr("What would you like to do?"), &panel())),
      rows_(new ActionRows(tr("Actions found"), ActionRows::Show::withGroup, &panel())),
      none_((new parts::Words(tr("Nothing here is called so. Fewer letters find more."), &panel()))
                ->painted(look::Paint::quiet)) {
  auto* column = new QVBoxLayout(&panel());
  column->setContentsMargins(space(12), space(12), space(12), space(12));
  column->setSpacing(space(8));
  box_->setPlaceholderText(tr("What would you like to do?"));
  box_->setMinimumHeight(space(36));
  box_->installEventFilter(this);
  rows_->installEventFilter(this);
  none_->setContentsMargins(space(10), space(8), space(10), space(8));
  column->addWidget(box_);
  column->addWidget(none_);
  column->addWidget(rows_, 1);
  connect(box_, &QLineEdit::textChanged, this, &ActionList::filter);
  connect(rows_, &ActionRows::taken, this, &ActionList::take);
}

void ActionList::offer(std::vector<Offered> all) {
  all_ = std::move(all);
  box_->clear();
  filter();
  appear();
  box_->setFocus(Qt::PopupFocusReason);
}

QRect ActionList::place(const QSize& window) const {
  const int width = std::min(space(620), window.width() - space(48));
  const int above = space(36) + space(32);
  const int most = window.height() - 2 * space(56) - above;
  const int rows = rows_->rows().empty() ? rows_->rowHeight() + space(8) : std::min(rows_->sizeHint().height(), most);
  return {(window.width() - width) / 2, space(56), width, rows + above};
}

void ActionList::filter() {
  rows_->setRows(found(all_, box_->text(), settings_.used()));
  const bool any = !rows_->rows().empty();
  rows_->setVisible(any);
  none_->setVisible(!any);
  settle();
}

/// The box keeps the keyboard for typing; the arrow keys take it to the rows, so that a screen reader says them, and a
/// letter typed there takes it back.
bool ActionList::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return Overlay::eventFilter(watched, event);
  auto* key = static_cast<QKeyEvent*>(event);  // NOLINT: its type says so
  if (watched == box_) {
    if (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up) {
      rows_->setFocus(Qt::OtherFocusReason);
      rows_->step(key->key() == Qt::Key_Down ? 1 : -1);
      return true;
    }
    if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
      if (QAction* action = rows_->current(); action != nullptr && action->isEnabled()) take(action);
      return true;
    }
  }
  if (watched == rows_) {
    const bool typed = !key->text().isEmpty() && key->text().front().isPrint() && key->modifiers() == Qt::NoModifier;
    if (typed || key->key() == Qt::Key_Backspace) {
      box_->setFocus(Qt::OtherFocusReason);
      box_->deselect();
      if (typed) box_->insert(key->text());
      else box_->backspace();
      return true;
    }
  }
  return Overlay::eventFilter(watched, event);
}

void ActionList::take(QAction* action) {
  vanish();
  settings_.markUsed(nameOf(*action));
  QMetaObject::invokeMethod(action, &QAction::trigger, Qt::QueuedConnection);
}

}  // namespace ohmkin::app
