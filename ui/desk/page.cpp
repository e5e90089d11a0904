#include <desk/page.h>
#include <QShortcut>

namespace ohmkin::desk {

void Page::onKey(const QKeySequence& keys, std::function<void()> what) {
  auto* shortcut = new QShortcut(keys, this);
  shortcut->setContext(Qt::WidgetWithChildrenShortcut);
  connect(shortcut, &QShortcut::activated, this, std::move(what));
}

}  // namespace ohmkin::desk
