#pragma once
#include <QAccessible>

class QWidget;

namespace ohmkin::look {

/// What a widget that paints itself is to a screen reader. One that is a button can be pressed from there, as Space
/// presses it.
void setRole(QWidget& widget, QAccessible::Role role);

}  // namespace ohmkin::look
