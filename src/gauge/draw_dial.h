#pragma once
#include <gauge/dial.h>

#include <string>
#include <vector>

/// A dial as a vector drawing at true size, to print, check against its own ruler, cut out and lay over the old one.
namespace ohmkin::gauge {

/// How the dial is drawn. Lengths in millimetres on paper.
struct DialSheet {
  double radius = 40;      ///< pivot to the outer ends of the marks; 10 to 200
  double lettering = 3.5;  ///< height of the figures; 1 to 20
  std::string title = {};  ///< UTF-8 text, as are the notes and the marks' own; markup in it is printed, not obeyed
  std::vector<std::string> notes = {};  ///< under the drawing: whose dial, for which sender, cautions
};

// How drawDial() letters, for whoever has to know where the figures come to stand.
inline constexpr double kFigureHeight = 0.7;  ///< of a figure, in ems of its type
double figureRadius(const DialSheet& sheet);  ///< mm from the pivot to the middles of the figures

/// SVG of the dial as it is: marks and figures, a thick arc over the hot marks where there are two or from the one to
/// the stop, a thin one over the normal band, dots for the stops, a cross for the pivot and a 50 mm ruler. One user
/// unit is one millimetre; black on white, nothing is said by colour. Refuses a radius or lettering out of range.
Expected<std::string> drawDial(const Dial& dial, const DialSheet& sheet);

}  // namespace ohmkin::gauge
