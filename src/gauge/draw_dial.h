#pragma once
#include <gauge/dial.h>

#include <string>
#include <utility>
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

/// SVG of the dial as it is: marks and figures, a thick arc over the hot marks where there are two or from the one to
/// the stop, a thin one over the normal band, dots for the stops, a cross for the pivot and a 50 mm ruler. One user
/// unit is one millimetre; black on white, nothing is said by colour. Refuses a radius or lettering out of range.
Expected<std::string> drawDial(const Dial& dial, const DialSheet& sheet);

/// A scale to be put on a dial: the temperature to be marked and where the existing needle stands at it.
struct NewMark {
  Temperature at;
  Angle needle;
  std::string text;  ///< the figure; empty for a bare tick
  bool hot = false;
};
/// The dial the existing needle would need: `marks` by rising temperature, on the stops of the old one. Marks the
/// needle cannot reach past a stop are left out, and a note under the drawing names them. Refuses what Dial::make
/// refuses of the rest.
Expected<std::string> drawNewScale(const std::vector<NewMark>& marks, Angle lowStop, Angle highStop, DialSheet sheet);

}  // namespace ohmkin::gauge
