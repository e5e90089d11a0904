#pragma once
#include <QPainter>
#include <QWidget>

/// What every field somebody types into has in common.
namespace ohmkin::parts {

/// A rounded sheet with an edge: an accent ring around what has the keyboard.
void drawField(QPainter& painter, const QRectF& rect, bool focus, bool wrong = false);
/// Clear ground, so that the sheet under it shows, and what is selected in the accent. To be called again at every
/// change of palette.
void tintField(QWidget& field);

}  // namespace ohmkin::parts
