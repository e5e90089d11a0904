#include <sheet/circuit.h>

#include <cmath>
#include <numbers>

namespace ohmkin::sheet {
namespace {

constexpr double kWire = 0.3;
constexpr double kAdded = 0.6;
constexpr Face kPost{2.2, Weight::regular};
constexpr Face kThere{2.6, Weight::regular};

/// The symbols, placed by the wires they stand in.
class Symbols {
 public:
  explicit Symbols(Canvas& canvas) : canvas_(canvas) {}

  void wire(Spot from, Spot to) { canvas_.line(from, to, kWire); }
  void node(Spot at) { canvas_.dot(at, 0.8); }
  void post(Spot at) { canvas_.ring(at, 0.9, kWire); }
  void ground(Spot at) {
    for (int i = 0; i < 3; ++i) canvas_.line({at.x - 3.2 + i, at.y + 1.1 * i}, {at.x + 3.2 - i, at.y + 1.1 * i}, kWire);
  }
  void resistorAcross(Spot from, Spot to, const std::string& words) {
    const double middle = (from.x + to.x) / 2;
    wire(from, to);
    canvas_.box({middle - 6.5, from.y - 2.3, 13, 4.6}, kAdded);
    canvas_.text({middle, from.y - 4}, kStrong, words, Anchor::middle);
  }
  void resistorDown(Spot from, Spot to, const std::string& words) {
    const double middle = (from.y + to.y) / 2;
    wire(from, to);
    canvas_.box({from.x - 2.3, middle - 5, 4.6, 10}, kAdded);
    canvas_.text({from.x + 4, middle + 1}, kStrong, words);
  }
  void sender(Spot from, Spot to, const std::string& words, double room) {
    const double middle = (from.y + to.y) / 2;
    wire(from, to);
    canvas_.box({from.x - 2.3, middle - 5, 4.6, 10}, kWire);
    canvas_.line({from.x - 4.6, middle + 4.2}, {from.x + 4.2, middle - 4.6}, kWire);
    canvas_.line({from.x - 4.6, middle + 4.2}, {from.x - 6.4, middle + 4.2}, kWire);
    canvas_.paragraph({from.x + 5.6, middle}, kThere, words, room - 5.6, 2);
  }
  void fuse(Spot middle) {
    canvas_.box({middle.x - 3.5, middle.y - 1.3, 7, 2.6}, kWire);
    wire({middle.x - 3.5, middle.y}, {middle.x + 3.5, middle.y});
    canvas_.text({middle.x, middle.y + 4.2}, kPost, "fuse", Anchor::middle);
  }
  /// A case with the arc of a dial and its needle, and the three posts on its edges.
  void gauge(const Box& body) {
    canvas_.box(body, 0.45, 2);
    const Spot pivot{body.x + body.width / 2, body.y + body.height * 0.6};
    const double radius = body.height * 0.36;
    std::vector<Spot> arc;
    for (int i = -10; i <= 10; ++i) {
      const double a = i * 0.1 * std::numbers::pi / 3;
      arc.push_back({pivot.x + radius * std::sin(a), pivot.y - radius * std::cos(a)});
    }
    canvas_.polyline(arc, kWire);
    canvas_.line(pivot, {pivot.x + radius * 0.45, pivot.y - radius * 0.82}, 0.5);
    canvas_.dot(pivot, 0.9);
    canvas_.text({pivot.x, body.bottom() - 3}, kThere, "gauge", Anchor::middle);
  }

 private:
  Canvas& canvas_;
};

}  // namespace

void drawCircuit(Canvas& canvas, const Circuit& circuit, Spot corner, double width) {
  Symbols draw(canvas);
  const double y = corner.y + 25;
  const double foot = corner.y + kCircuitHeight - 9;
  const auto x = [&](double part) { return corner.x + part * width / 174; };
  const Box gauge{x(26), y - 11, x(58) - x(26), 22};
  const double post = x(66);
  const double wall = x(128);
  const double sender = x(144);

  canvas.line({wall, corner.y + 2}, {wall, corner.y + kCircuitHeight - 2}, 0.2, "2 0.8 0.3 0.8");
  canvas.text({wall - 2, corner.y + 4}, kPost, "behind the dash", Anchor::end);
  canvas.text({wall + 2, corner.y + 4}, kPost, "engine");

  draw.wire({x(3), y}, {gauge.x, y});
  draw.post({x(3), y});
  canvas.text({x(1.5), y + 5}, kPost, "keyed feed");
  draw.gauge(gauge);
  draw.wire({gauge.x + gauge.width / 2, gauge.bottom()}, {gauge.x + gauge.width / 2, foot});
  draw.ground({gauge.x + gauge.width / 2, foot});
  canvas.text({gauge.x - 1.5, y - 2}, kPost, "feed post", Anchor::end);
  canvas.text({gauge.x + gauge.width / 2 + 2, gauge.bottom() + 4}, kPost, "ground post");
  canvas.text({gauge.right() + 1.5, y + 4}, kPost, "sender post");

  if (!circuit.feed.empty()) {
    const double over = corner.y + 8;
    draw.node({x(10), y});
    draw.node({post, y});
    draw.wire({x(10), y}, {x(10), over});
    draw.resistorAcross({x(24), over}, {post, over}, circuit.feed);
    draw.wire({x(10), over}, {x(24), over});
    draw.fuse({x(20), over});
    draw.wire({post, over}, {post, y});
  }
  const double seriesEnd = x(104);
  const bool split = circuit.parallelAtSender && !circuit.series.empty();
  draw.wire({gauge.right(), y}, {split ? x(70) : x(80), y});
  if (circuit.series.empty()) draw.wire({x(70), y}, {sender, y});
  else draw.resistorAcross({split ? x(70) : x(80), y}, {split ? x(96) : seriesEnd, y}, circuit.series);
  draw.wire({split ? x(96) : seriesEnd, y}, {sender, y});
  if (!circuit.parallel.empty()) {
    const double at = split ? x(102) : x(80);
    draw.node({at, y});
    draw.resistorDown({at, y}, {at, foot}, circuit.parallel);
    draw.ground({at, foot});
  }
  canvas.text({wall - 2, y - 2}, kPost, "lead", Anchor::end);
  draw.sender({sender, y}, {sender, foot}, circuit.sender, corner.x + width - sender);
  draw.ground({sender, foot});
  canvas.text({sender + 5.6, foot + 1}, kPost, "ground at the head");
  draw.post({gauge.x, y});
  draw.post({gauge.right(), y});
  draw.post({gauge.x + gauge.width / 2, gauge.bottom()});
}

}  // namespace ohmkin::sheet
