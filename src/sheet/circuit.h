#pragma once
#include <sheet/canvas.h>

/// A trim network as it is wired: feed, the gauge's posts, resistors behind the dash, lead, sender in the head, ground.
namespace ohmkin::sheet {

struct Circuit {
  std::string series;             ///< "12 Ω"; empty where there is none
  std::string parallel;           ///< to ground
  std::string feed;               ///< from the feed post to the sender post
  bool parallelAtSender = false;  ///< (R ∥ p) + s: on the sender's side of the series resistor
  std::string sender;             ///< name of the sender
};

inline constexpr double kCircuitHeight = 56;

/// Symbols of IEC 60617: a resistor is a plain box, a variable one has an arrow through it, a fuse a line. What is
/// added is drawn heavy. At least 150 mm wide.
void drawCircuit(Canvas& canvas, const Circuit& circuit, Spot corner, double width);

}  // namespace ohmkin::sheet
