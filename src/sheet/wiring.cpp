#include <sheet/book.h>
#include <sheet/symbols.h>
#include <sheet/wiring.h>

namespace ohmkin::sheet {
namespace {

constexpr double kDrawing = 81;  // mm high

/// "1 feed", its figures, and a line to write the colour on; `first` is the baseline of the number.
void labelWire(Canvas& canvas, Spot first, int number, const WireLine& wire) {
  constexpr double kStep = 3.4;
  canvas.ring({first.x + 1.9, first.y - 0.9}, 1.9, kWireStroke);
  canvas.text({first.x + 1.9, first.y}, kStrong, std::to_string(number), Anchor::middle);
  canvas.text({first.x + 5.4, first.y}, kStrong, elided(wire.name, kStrong.size, kStrong.weight, 24));
  const auto line = [&](int at, const std::string& words) {
    canvas.text({first.x, first.y + 0.8 + kStep * at}, kSmall, elided(words, kSmall.size, kSmall.weight, 36));
  };
  line(1, wire.gauge + " · " + wire.area);
  line(2, wire.length + " · " + wire.current);
  line(3, "drops " + wire.drop);
  line(4, "colour");
  const double at = first.x + 1.2 + widthOf("colour", kSmall.size);
  canvas.line({at, first.y + 1.2 + 4 * kStep}, {first.x + 28, first.y + 1.2 + 4 * kStep}, 0.15);
}

/// Where things stand in the drawing; x in parts of 174.
struct Places {
  Spot corner;
  double scale = 1;
  [[nodiscard]] double x(double part) const { return corner.x + part * scale; }
  [[nodiscard]] double rail() const { return corner.y + 27; }
  [[nodiscard]] double foot() const { return corner.y + kDrawing - 10; }
};

void drawSupply(Canvas& canvas, Symbols& draw, const Places& at, const std::string& fuse) {
  const double battery = at.x(8);
  draw.wire({battery, at.rail()}, {at.x(14), at.rail()});
  draw.makeContact({at.x(14), at.rail()}, {at.x(22), at.rail()});
  draw.wire({at.x(22), at.rail()}, {at.x(30), at.rail()});
  draw.fuse({at.x(30) + 3.5, at.rail()}, fuse + " fuse");
  draw.wire({battery, at.rail()}, {battery, at.rail() + 14});
  draw.battery({battery, at.rail() + 14}, {battery, at.rail() + 24});
  draw.wire({battery, at.rail() + 24}, {battery, at.foot()});
  draw.ground({battery, at.foot()});
  canvas.text({at.x(18), at.rail() + 4.2}, kPostFace, "key", Anchor::middle);
  canvas.text({battery + 6, at.rail() + 20}, kPostFace, "battery");
  canvas.text({battery + 2, at.foot() - 2}, kPostFace, "grounded post");
}

/// In the feed, its housing on the gauge's ground wire.
void drawRegulator(Canvas& canvas, Symbols& draw, const Places& at, const Box& gauge, const std::string& volts) {
  const Box box{at.x(68), at.rail() - 6, 18, 12};
  const double joins = gauge.bottom() + 6;
  const double middle = box.x + box.width / 2;
  draw.wire({middle, box.bottom()}, {middle, joins}, kAddedStroke);
  draw.wire({middle, joins}, {gauge.x + gauge.width / 2, joins}, kAddedStroke);
  draw.node({gauge.x + gauge.width / 2, joins});
  draw.wire({box.right(), at.rail()}, {gauge.x, at.rail()});
  canvas.box(box, 0.45);
  canvas.text({middle, at.rail() - 1}, kPartFace, "regulator", Anchor::middle);
  canvas.text({middle, at.rail() + 3.2}, kStrong, volts, Anchor::middle);
  draw.post({box.x, at.rail()});
  draw.post({box.right(), at.rail()});
  draw.post({middle, box.bottom()});
  canvas.text({box.x - 1.5, at.rail() + 4}, kPostFace, "input", Anchor::end);
  canvas.text({middle - 2, box.bottom() + 3.8}, kPostFace, "housing", Anchor::end);
}

void drawEngine(Canvas& canvas, Symbols& draw, const Places& at, const std::string& sender, double right) {
  const double wall = at.x(137);
  const double x = at.x(151);
  canvas.line({wall, at.rail() - 24}, {wall, at.foot() + 4}, 0.2, "2 0.8 0.3 0.8");
  canvas.text({wall - 2, at.foot() + 3}, kPostFace, "dash", Anchor::end);
  canvas.text({wall + 2, at.foot() + 3}, kPostFace, "engine");
  const double head = at.rail() + 30;
  draw.wire({x, at.rail()}, {x, at.rail() + 10});
  draw.sender({x, at.rail() + 10}, {x, head}, sender, right - x);
  draw.wire({x, head}, {x, head + 3});
  draw.ground({x, head + 3});
  canvas.text({x + 4.6, head + 4}, kPostFace, "by its thread");
  draw.post({x, at.rail() + 10});
  canvas.text({x + 2, at.rail() + 9}, kPostFace, "terminal");
}

void drawWires(Canvas& canvas, const Wiring& wiring, Spot corner, double width) {
  Symbols draw(canvas);
  const Places at{corner, width / 174};
  const bool regulated = !wiring.regulator.empty();
  const Box gauge{at.x(regulated ? 96 : 84), at.rail() - 9.5, 26, 19};
  const double ground = gauge.x + gauge.width / 2;
  drawSupply(canvas, draw, at, wiring.fuse);
  draw.wire({at.x(30) + 7, at.rail()}, {regulated ? at.x(68) : gauge.x, at.rail()}, kAddedStroke);
  draw.wire({gauge.right(), at.rail()}, {at.x(151), at.rail()}, kAddedStroke);
  draw.wire({ground, gauge.bottom()}, {ground, at.foot()}, kAddedStroke);
  draw.ground({ground, at.foot()});
  draw.gauge(gauge);
  if (regulated) drawRegulator(canvas, draw, at, gauge, wiring.regulator);
  drawEngine(canvas, draw, at, wiring.heading.sender, corner.x + width);
  draw.post({gauge.x, at.rail()});
  draw.post({gauge.right(), at.rail()});
  draw.post({ground, gauge.bottom()});
  canvas.text({gauge.x - 1.5, at.rail() - 2}, kPostFace, "feed", Anchor::end);
  canvas.text({gauge.right() + 1.5, at.rail() + 4}, kPostFace, "sender");
  canvas.text({ground + 2, gauge.bottom() + 3.8}, kPostFace, "ground");
  labelWire(canvas, {at.x(38), at.rail() - 20}, 1, wiring.feed);
  labelWire(canvas, {at.x(139), at.rail() - 20}, 2, wiring.lead);
  labelWire(canvas, {ground - 30, gauge.bottom() + 13}, 3, wiring.ground);
}

void wireTable(Book& book, const Wiring& wiring) {
  book.part("WIRES", 40);
  std::vector<std::vector<std::string>> rows;
  int number = 0;
  for (const WireLine& wire : {wiring.feed, wiring.lead, wiring.ground})
    rows.push_back({std::to_string(++number) + " " + wire.name, wire.from + " → " + wire.to + ". " + wire.note,
                    wire.gauge + ", or " + wire.metric, wire.length, wire.current, wire.drop});
  const double rest = book.tableWidth() - 22 - 42 - 18 - 20 - 20;
  book.table({{"WIRE", 22, Anchor::start, Weight::bold},
              {"FROM → TO", rest},
              {"AT LEAST", 42, Anchor::start, Weight::bold},
              {"LENGTH", 18, Anchor::end},
              {"CARRIES", 20, Anchor::end},
              {"DROPS", 20, Anchor::end}},
             rows);
}

}  // namespace

Pages drawWiring(const Wiring& wiring, Paper paper) {
  Book book(sizeOf(paper), {"WIRING PLAN", "Direct wiring, past the old harness", wiring.heading.date});
  book.paragraph({4.2, Weight::bold}, "A last resort: only when the tests leave nothing else.");
  book.skip(4);
  book.sides(wiring.heading);
  book.skip(2);
  drawWires(book.page(), wiring, {book.left(), book.y()}, book.width());
  book.skip(kDrawing);
  book.paragraph(kSmall, "Heavy lines are new wire. The figure at a wire stands in the table below.");
  wireTable(book, wiring);
  book.skip(2);
  for (const std::string& reminder : wiring.reminders) book.item("·", reminder);
  book.cautions(wiring.cautions);
  if (!wiring.assumed.empty()) {
    book.part("ASSUMED", 14);
    for (const std::string& words : wiring.assumed) {
      book.paragraph(kSmall, words);
      book.skip(0.6);
    }
  }
  return book.finish();
}

}  // namespace ohmkin::sheet
