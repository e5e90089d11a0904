#pragma once
#include <sheet/canvas.h>

/// Symbols of IEC 60617 that the circuits on paper share: a resistor is a plain box, a variable one has an arrow
/// through it, a fuse is a box with the line through it, a battery a long and a short stroke. Not for other rooms.
namespace ohmkin::sheet {

inline constexpr double kWireStroke = 0.3;
inline constexpr double kAddedStroke = 0.6;  ///< of what is added to the car
inline constexpr Face kPostFace{2.2, Weight::regular};
inline constexpr Face kPartFace{2.6, Weight::regular};

/// Placed by the wires they stand in.
class Symbols {
 public:
  explicit Symbols(Canvas& canvas) : canvas_(canvas) {}

  void wire(Spot from, Spot to, double stroke = kWireStroke) { canvas_.line(from, to, stroke); }
  void node(Spot at) { canvas_.dot(at, 0.8); }
  void post(Spot at) { canvas_.ring(at, 0.9, kWireStroke); }
  void ground(Spot at);
  void resistorAcross(Spot from, Spot to, std::string_view words);
  void resistorDown(Spot from, Spot to, std::string_view words);
  void sender(Spot from, Spot to, std::string_view words, double room);
  void fuse(Spot middle, std::string_view words = "fuse");
  void battery(Spot from, Spot to);      ///< downward, the positive post above
  void makeContact(Spot from, Spot to);  ///< a switch, open
  /// A case with the arc of a dial and its needle; the posts are the caller's.
  void gauge(const Box& body);

 private:
  Canvas& canvas_;
};

}  // namespace ohmkin::sheet
