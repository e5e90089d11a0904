#pragma once
#include <finding/refusal.h>

#include <QByteArray>
#include <QList>
#include <QSizeF>
#include <QString>

class QPainter;

/// Sheets as the pages of a PDF: each page of its sheet's own size, drawn without margins, strokes as strokes and text
/// as text.
namespace ohmkin::printing {

/// Millimetres, as the SVG's root says; empty where it does not say so.
QSizeF sheetSize(const QByteArray& svg);

/// Refuses a sheet that is not an SVG of a size in millimetres, and a file that cannot be written; that file is then as
/// it was.
Expected<void> svgToPdf(const QList<QByteArray>& sheets, const QString& file);

/// Draws a sheet with its upper left corner at the painter's origin, `dotsPerMillimetre` on both axes.
void drawSheet(QPainter& painter, const QByteArray& svg, double dotsPerMillimetre);

}  // namespace ohmkin::printing
