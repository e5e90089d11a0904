#pragma once
#include <QColor>
#include <QPalette>
#include <array>

/// Every colour of the window, in one table, light and dark. One accent, one warning colour; nothing is told by colour
/// alone.
namespace ohmkin::look {

enum class Paint {
  ground,       ///< behind everything
  panel,        ///< cards
  ink,          ///< what is read
  quiet,        ///< what is read second
  line,         ///< edges that only separate
  edge,         ///< edges of what can be operated: 3:1 against ground and panel
  accent,       ///< chosen, fits, true of the selected sender
  accentWash,   ///< behind what is chosen
  warning,      ///< misreads, does not fit, can hurt
  warningWash,  ///< behind it
  unknownWash   ///< behind what is not known yet
};
inline constexpr std::size_t kPaints = 11;

enum class Tone { light, dark };

QColor colour(Paint paint, Tone tone);
/// In the tone in use now.
QColor colour(Paint paint);
Tone tone();

/// The tone a desktop's own palette speaks of: dark where its window text is lighter than its window.
Tone toneOf(const QPalette& desktop);

/// Changes the tone of the whole program; every widget gets a palette change and paints itself anew.
void setTone(Tone tone);

/// Contrast ratio of WCAG 2.2 (relative luminance of sRGB), 1 … 21.
double contrast(const QColor& one, const QColor& other);

/// `over` laid on `under` with this much cover, 0 … 1.
QColor blended(const QColor& over, const QColor& under, double cover);

}  // namespace ohmkin::look
