#include <sheet/symbols.h>

#include <cmath>
#include <numbers>

namespace ohmkin::sheet {

void Symbols::ground(Spot at) {
  for (int i = 0; i < 3; ++i)
    canvas_.line({at.x - 3.2 + i, at.y + 1.1 * i}, {at.x + 3.2 - i, at.y + 1.1 * i}, kWireStroke);
}

void Symbols::resistorAcross(Spot from, Spot to, std::string_view words) {
  const double middle = (from.x + to.x) / 2;
  wire(from, to);
  canvas_.box({middle - 6.5, from.y - 2.3, 13, 4.6}, kAddedStroke);
  canvas_.text({middle, from.y - 4}, kStrong, words, Anchor::middle);
}

void Symbols::resistorDown(Spot from, Spot to, std::string_view words) {
  const double middle = (from.y + to.y) / 2;
  wire(from, to);
  canvas_.box({from.x - 2.3, middle - 5, 4.6, 10}, kAddedStroke);
  canvas_.text({from.x + 4, middle + 1}, kStrong, words);
}

void Symbols::sender(Spot from, Spot to, std::string_view words, double room) {
  const double middle = (from.y + to.y) / 2;
  wire(from, to);
  canvas_.box({from.x - 2.3, middle - 5, 4.6, 10}, kWireStroke);
  canvas_.line({from.x - 4.6, middle + 4.2}, {from.x + 4.2, middle - 4.6}, kWireStroke);
  canvas_.line({from.x - 4.6, middle + 4.2}, {from.x - 6.4, middle + 4.2}, kWireStroke);
  canvas_.paragraph({from.x + 5.6, middle}, kPartFace, words, room - 5.6, 2);
}

void Symbols::fuse(Spot middle, std::string_view words) {
  canvas_.box({middle.x - 3.5, middle.y - 1.3, 7, 2.6}, kWireStroke);
  wire({middle.x - 3.5, middle.y}, {middle.x + 3.5, middle.y});
  canvas_.text({middle.x, middle.y + 4.2}, kPostFace, words, Anchor::middle);
}

void Symbols::battery(Spot from, Spot to) {
  const double middle = (from.y + to.y) / 2;
  wire(from, {from.x, middle - 0.9});
  canvas_.line({from.x - 4.4, middle - 0.9}, {from.x + 4.4, middle - 0.9}, kWireStroke);
  canvas_.line({from.x - 2.2, middle + 0.9}, {from.x + 2.2, middle + 0.9}, 0.8);
  wire({from.x, middle + 0.9}, to);
}

void Symbols::makeContact(Spot from, Spot to) {
  canvas_.line(from, {to.x - 0.4, to.y - (to.x - from.x) * 0.45}, kWireStroke);
  node(from);
  node(to);
}

void Symbols::gauge(const Box& body) {
  canvas_.box(body, 0.45, 2);
  const Spot pivot{body.x + body.width / 2, body.y + body.height * 0.6};
  const double radius = body.height * 0.36;
  std::vector<Spot> arc;
  for (int i = -10; i <= 10; ++i) {
    const double a = i * 0.1 * std::numbers::pi / 3;
    arc.push_back({pivot.x + radius * std::sin(a), pivot.y - radius * std::cos(a)});
  }
  canvas_.polyline(arc, kWireStroke);
  canvas_.line(pivot, {pivot.x + radius * 0.45, pivot.y - radius * 0.82}, 0.5);
  canvas_.dot(pivot, 0.9);
  canvas_.text({pivot.x, body.bottom() - 3}, kPartFace, "gauge", Anchor::middle);
}

}  // namespace ohmkin::sheet
