#pragma once
#include <QScrollArea>

namespace ohmkin::parts {

/// Round what may be taller than its place, at 200 % text or in a small window: it scrolls instead of squeezing what it
/// says. No frame, the ground of what lies behind, and no stop of its own for the keyboard.
QScrollArea* scrolling(QWidget* inner, QWidget* parent);

}  // namespace ohmkin::parts
