#include <sheet/circuit.h>
#include <sheet/symbols.h>

namespace ohmkin::sheet {

namespace {

/// Where things stand in the drawing; x in parts of 174.
struct Places {
  Spot corner;
  double scale = 1;
  [[nodiscard]] double x(double part) const { return corner.x + part * scale; }
  [[nodiscard]] double rail() const { return corner.y + 25; }
  [[nodiscard]] double foot() const { return corner.y + kCircuitHeight - 9; }
  [[nodiscard]] Box gauge() const { return {x(26), rail() - 11, x(58) - x(26), 22}; }
  [[nodiscard]] double wall() const { return x(128); }
  [[nodiscard]] double sender() const { return x(144); }
};

void drawGauge(Canvas& canvas, Symbols& draw, const Places& at) {
  const Box gauge = at.gauge();
  const double middle = gauge.x + gauge.width / 2;
  draw.wire({at.x(3), at.rail()}, {gauge.x, at.rail()});
  draw.post({at.x(3), at.rail()});
  canvas.text({at.x(1.5), at.rail() + 5}, kPostFace, "keyed feed");
  draw.gauge(gauge);
  draw.wire({middle, gauge.bottom()}, {middle, at.foot()});
  draw.ground({middle, at.foot()});
  canvas.text({gauge.x - 1.5, at.rail() - 2}, kPostFace, "feed post", Anchor::end);
  canvas.text({middle + 2, gauge.bottom() + 4}, kPostFace, "ground post");
  canvas.text({gauge.right() + 1.5, at.rail() + 4}, kPostFace, "sender post");
}

void drawFeedResistor(Symbols& draw, const Places& at, std::string_view ohms) {
  const double over = at.corner.y + 8;
  const double post = at.x(66);
  draw.node({at.x(10), at.rail()});
  draw.node({post, at.rail()});
  draw.wire({at.x(10), at.rail()}, {at.x(10), over});
  draw.resistorAcross({at.x(24), over}, {post, over}, ohms);
  draw.wire({at.x(10), over}, {at.x(24), over});
  draw.fuse({at.x(20), over});
  draw.wire({post, over}, {post, at.rail()});
}

/// From the sender post to the sender, with the resistors on the way.
void drawLead(Canvas& canvas, Symbols& draw, const Places& at, const Circuit& circuit) {
  const bool split = circuit.parallelAtSender && !circuit.series.empty();
  const double seriesEnd = split ? at.x(96) : at.x(104);
  draw.wire({at.gauge().right(), at.rail()}, {split ? at.x(70) : at.x(80), at.rail()});
  if (circuit.series.empty()) draw.wire({at.x(70), at.rail()}, {at.sender(), at.rail()});
  else draw.resistorAcross({split ? at.x(70) : at.x(80), at.rail()}, {seriesEnd, at.rail()}, circuit.series);
  draw.wire({seriesEnd, at.rail()}, {at.sender(), at.rail()});
  if (!circuit.parallel.empty()) {
    const double branch = split ? at.x(102) : at.x(80);
    draw.node({branch, at.rail()});
    draw.resistorDown({branch, at.rail()}, {branch, at.foot()}, circuit.parallel);
    draw.ground({branch, at.foot()});
  }
  canvas.text({at.wall() - 2, at.rail() - 2}, kPostFace, "lead", Anchor::end);
}

}  // namespace

void drawCircuit(Canvas& canvas, const Circuit& circuit, Spot corner, double width) {
  Symbols draw(canvas);
  const Places at{corner, width / 174};
  canvas.line({at.wall(), corner.y + 2}, {at.wall(), corner.y + kCircuitHeight - 2}, 0.2, "2 0.8 0.3 0.8");
  canvas.text({at.wall() - 2, corner.y + 4}, kPostFace, "behind the dash", Anchor::end);
  canvas.text({at.wall() + 2, corner.y + 4}, kPostFace, "engine");
  drawGauge(canvas, draw, at);
  if (!circuit.feed.empty()) drawFeedResistor(draw, at, circuit.feed);
  drawLead(canvas, draw, at, circuit);
  draw.sender({at.sender(), at.rail()}, {at.sender(), at.foot()}, circuit.sender, corner.x + width - at.sender());
  draw.ground({at.sender(), at.foot()});
  canvas.text({at.sender() + 5.6, at.foot() + 1}, kPostFace, "ground at the head");
  // Over the wires that end there.
  const Box gauge = at.gauge();
  draw.post({gauge.x, at.rail()});
  draw.post({gauge.right(), at.rail()});
  draw.post({gauge.x + gauge.width / 2, gauge.bottom()});
}

}  // namespace ohmkin::sheet
