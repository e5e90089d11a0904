#include <look/role.h>
#include <QAccessibleWidget>
#include <QApplication>
#include <QKeyEvent>
#include <QVariant>
#include <QWidget>

namespace ohmkin::look {
namespace {

constexpr auto kRole = "ohmkinRole";

class Spoken : public QAccessibleWidget {
 public:
  using QAccessibleWidget::QAccessibleWidget;

  [[nodiscard]] QStringList actionNames() const override {
    QStringList names = QAccessibleWidget::actionNames();
    if (role() == QAccessible::Button) names.prepend(pressAction());
    return names;
  }
  void doAction(const QString& name) override {
    if (name != pressAction()) {
      QAccessibleWidget::doAction(name);
      return;
    }
    for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease}) {
      QKeyEvent key(type, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "));
      QApplication::sendEvent(widget(), &key);
    }
  }
};

QAccessibleInterface* make(const QString& /*className*/, QObject* object) {
  auto* widget = qobject_cast<QWidget*>(object);
  const QVariant role = widget == nullptr ? QVariant() : widget->property(kRole);
  return role.isValid() ? new Spoken(widget, static_cast<QAccessible::Role>(role.toInt())) : nullptr;
}

}  // namespace

void setRole(QWidget& widget, QAccessible::Role role) {
  static const bool once = [] {
    QAccessible::installFactory(make);
    return true;
  }();
  Q_UNUSED(once);
  widget.setProperty(kRole, static_cast<int>(role));
}

}  // namespace ohmkin::look
