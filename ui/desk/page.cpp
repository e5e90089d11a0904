#include <desk/page.h>
#include <QHeaderView>
#include <QSplitter>
#include <QVariant>

namespace ohmkin::desk {
namespace {

constexpr auto kGroup = "ohmkinGroup";

QString plainName(const QAction& action) {
  QString name = action.text();
  return name.remove(QLatin1Char('&'));
}

/// A header is known by the view it belongs to.
QString nameOf(const QHeaderView& header) {
  const QString view = header.parentWidget() == nullptr ? QString() : header.parentWidget()->objectName();
  if (view.isEmpty() || view.startsWith(QStringLiteral("qt_"))) return {};
  return view + (header.orientation() == Qt::Horizontal ? QStringLiteral("/columns") : QStringLiteral("/rows"));
}

/// Calls `each` with the name and the widget of all that is kept.
template <class Each>
void forKept(const QWidget& page, const Each& each) {
  for (QSplitter* splitter : page.findChildren<QSplitter*>())
    if (!splitter->objectName().isEmpty()) each(splitter->objectName(), *splitter);
  for (QHeaderView* header : page.findChildren<QHeaderView*>())
    if (const QString name = nameOf(*header); !name.isEmpty()) each(name, *header);
}

}  // namespace

Page::Page(QWidget* parent) : QWidget(parent) {}

QAction* Page::offer(const QString& name, const QKeySequence& keys, std::function<void()> what, const QString& group) {
  auto* action = new QAction(name, this);
  action->setShortcut(keys);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  action->setProperty(kGroup, group);
  connect(action, &QAction::triggered, this, [what = std::move(what)] { what(); });
  addAction(action);
  return action;
}

QVariantMap Page::layoutState() const {
  QVariantMap state;
  forKept(*this, [&state](const QString& name, const auto& widget) { state.insert(name, widget.saveState()); });
  return state;
}

void Page::restoreLayout(const QVariantMap& state) {
  forKept(*this, [&state](const QString& name, auto& widget) {
    if (const auto kept = state.constFind(name); kept != state.constEnd()) widget.restoreState(kept->toByteArray());
  });
}

void letGo(const std::vector<FileThread*>& threads, const std::function<void()>& then) {
  const Worker::Then done = lastOf(threads.size(), then);
  for (FileThread* thread : threads) thread->letGo(done);
}

QString groupOf(const QAction& action) { return action.property(kGroup).toString(); }

QString tipOf(const QAction& action) {
  const QString name = plainName(action);
  return action.shortcut().isEmpty()
             ? name
             : QAction::tr("%1 (%2)").arg(name, action.shortcut().toString(QKeySequence::NativeText));
}

}  // namespace ohmkin::desk
