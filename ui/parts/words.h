#pragma once
#include <QFont>
#include <QPainter>
#include <QString>

/// Setting plain text into a box: wrapped at words, at most so many lines, the last one elided. Never rich text.
namespace ohmkin::parts {

struct Wrapped {
  QStringList lines;
  double height = 0;
  bool elided = false;
};

Wrapped wrap(const QString& text, const QFont& font, double width, int mostLines);
/// Draws the lines from the top of `box`; returns the height used.
double drawWords(QPainter& painter, const QRectF& box, const QString& text, const QFont& font, const QColor& ink,
                 int mostLines, Qt::Alignment alignment = Qt::AlignLeft);

/// Text for setToolTip: wrapped, and never taken for mark-up.
QString plainTip(const QString& text);

}  // namespace ohmkin::parts
