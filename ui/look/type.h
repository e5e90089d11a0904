#pragma once
#include <QFont>
#include <QFontMetricsF>

/// Sizes of type and space. All follow the application's font, so that a person who sets 200 % gets 200 %.
namespace ohmkin::look {

enum class Text {
  small,    ///< notes, axis numbers
  body,     ///< the application's font
  strong,   ///< body, heavier
  heading,  ///< over a part of the page
  headline  ///< the one word of a card
};

QFont typeface(Text text);
QFontMetricsF metrics(Text text);

/// A length on the grid of eight, grown with the font: space(8) between things that belong together, space(16) inside a
/// panel, space(24) around the page.
int space(double atUsualSize);

/// Chooses the family of the program: the first of Inter and Noto Sans that is installed, otherwise the desktop's own.
void chooseFamily();

}  // namespace ohmkin::look
