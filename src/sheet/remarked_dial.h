#pragma once
#include <gauge/dial.h>
#include <gauge/draw_dial.h>
#include <sheet/paper.h>

/// The dial the existing needle would need with this sender, at true size, to lay over the old one.
namespace ohmkin::sheet {

struct RemarkedDial {
  Heading heading;
  double radius = 40;  ///< mm, pivot to the outer ends of the marks
  struct MarkLine {
    std::string mark;         ///< "100", "H"
    std::string temperature;  ///< "100 °C"
    std::string needle;       ///< "+12.5°", from straight up, clockwise
  };
  std::vector<MarkLine> marks;
  std::string driverLine;          ///< what the old dial shows
  std::vector<std::string> notes;  ///< marks left out, curve continued
  std::vector<std::string> cautions;
};

/// The same dial without the figures that would run into one another when drawn so; the hot mark keeps its own, and the
/// table has them all.
Expected<gauge::Dial> legible(const gauge::Dial& dial, const gauge::DialSheet& drawn);

/// One page, the dial drawn by gauge::drawDial and placed at 1:1 with its ruler. Refuses what drawDial refuses, and a
/// dial that does not fit on the paper.
Expected<Pages> drawRemarkedDial(const RemarkedDial& sheet, const gauge::Dial& dial, Paper paper);

}  // namespace ohmkin::sheet
