#include <sheet/circuit.h>
#include <sheet/symbols.h>

namespace ohmkin::sheet {

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
  canvas.text({wall - 2, corner.y + 4}, kPostFace, "behind the dash", Anchor::end);
  canvas.text({wall + 2, corner.y + 4}, kPostFace, "engine");

  draw.wire({x(3), y}, {gauge.x, y});
  draw.post({x(3), y});
  canvas.text({x(1.5), y + 5}, kPostFace, "keyed feed");
  draw.gauge(gauge);
  draw.wire({gauge.x + gauge.width / 2, gauge.bottom()}, {gauge.x + gauge.width / 2, foot});
  draw.ground({gauge.x + gauge.width / 2, foot});
  canvas.text({gauge.x - 1.5, y - 2}, kPostFace, "feed post", Anchor::end);
  canvas.text({gauge.x + gauge.width / 2 + 2, gauge.bottom() + 4}, kPostFace, "ground post");
  canvas.text({gauge.right() + 1.5, y + 4}, kPostFace, "sender post");

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
  canvas.text({wall - 2, y - 2}, kPostFace, "lead", Anchor::end);
  draw.sender({sender, y}, {sender, foot}, circuit.sender, corner.x + width - sender);
  draw.ground({sender, foot});
  canvas.text({sender + 5.6, foot + 1}, kPostFace, "ground at the head");
  draw.post({gauge.x, y});
  draw.post({gauge.right(), y});
  draw.post({gauge.x + gauge.width / 2, gauge.bottom()});
}

}  // namespace ohmkin::sheet
