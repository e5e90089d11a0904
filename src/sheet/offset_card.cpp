#include <sheet/canvas.h>
#include <sheet/offset_card.h>
#include <sheet/plot.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr double kCardWidth = 180;
constexpr double kCardHeight = 122;  // two of them with room to cut, on the shorter of the two papers
constexpr double kPadding = 8;
constexpr double kLeastRow = 3.3;
constexpr double kMostRow = 4.6;

/// Short strokes outside the corners, where the knife goes.
void cutMarks(Canvas& canvas, const Box& card) {
  constexpr double kGap = 1.5;
  constexpr double kLength = 5;
  for (const double x : {card.x, card.right()}) {
    for (const double y : {card.y, card.bottom()}) {
      const double outX = x == card.x ? -1 : 1;
      const double outY = y == card.y ? -1 : 1;
      canvas.line({x + outX * kGap, y}, {x + outX * (kGap + kLength), y}, 0.15);
      canvas.line({x, y + outY * kGap}, {x, y + outY * (kGap + kLength)}, 0.15);
    }
  }
}

/// Every line, or as many as there is room for; never without the one for the thermostat.
std::vector<CardLine> printed(const std::vector<CardLine>& lines, std::size_t most) {
  std::size_t stride = 1;
  std::vector<CardLine> kept = lines;
  while (kept.size() > std::max<std::size_t>(most, 2)) {
    ++stride;
    kept.clear();
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (i % stride == 0 || lines[i].warm) kept.push_back(lines[i]);
  }
  return kept;
}

void table(Canvas& canvas, const std::vector<CardLine>& all, const Box& where) {
  const double columns[] = {where.x + 15, where.x + 55, where.x + 68, where.right()};
  canvas.text({where.x, where.y}, kLabel, "COOLANT");
  canvas.text({where.x + 19, where.y}, kLabel, "NEEDLE SHOWS");
  canvas.text({columns[2], where.y}, kLabel, "ERROR", Anchor::end);
  canvas.text({columns[3], where.y}, kLabel, "±", Anchor::end);
  canvas.line({where.x, where.y + 1.6}, {where.right(), where.y + 1.6}, 0.25);
  const double room = where.height - 2;
  const auto lines = printed(all, static_cast<std::size_t>(room / kLeastRow));
  const double row = std::min(kMostRow, room / static_cast<double>(std::max<std::size_t>(lines.size(), 1)));
  const double size = std::min(2.8, row * 0.74);
  double y = where.y + 1.6;
  for (const CardLine& line : lines) {
    y += row;
    const double base = y - 0.28 * row;
    const Face face{size, line.warm ? Weight::bold : Weight::regular};
    if (line.warm)
      canvas.polygon({{where.x - 3.2, base - 0.72 * size}, {where.x - 1.2, base - 0.36 * size}, {where.x - 3.2, base}},
                     0, true);
    canvas.text({columns[0], base}, face, elided(line.truth, size, face.weight, 15), Anchor::end);
    canvas.text({where.x + 19, base}, {size, Weight::bold}, elided(line.shown, size, Weight::bold, 37));
    canvas.text({columns[2], base}, face, elided(line.error, size, face.weight, 13), Anchor::end);
    canvas.text({columns[3], base}, face, elided(line.uncertainty, size, face.weight, 10), Anchor::end);
    canvas.line({where.x, y}, {where.right(), y}, 0.06);
  }
}

void plot(Canvas& canvas, const OffsetCard& card, const Box& where) {
  std::vector<Spot> needle;
  std::vector<Spot> above;
  std::vector<Spot> below;
  for (const CardPoint& point : card.points) {
    if (!point.onTheMarks) continue;
    needle.push_back({point.truth, point.shown});
    above.push_back({point.truth, point.shown + point.uncertainty});
    below.push_back({point.truth, point.shown - point.uncertainty});
  }
  if (needle.size() < 2) {
    canvas.paragraph({where.x, where.y + 20}, kLead, "The needle is off the marks throughout.", where.width);
    return;
  }
  Range x{card.points.front().truth, card.points.front().truth};
  Range y = x;
  for (const CardPoint& point : card.points) x.take(point.truth);
  for (const Spot& spot : needle) y.take(spot.y);
  y.take(x.low);
  y.take(x.high);
  if (card.hotMark) y.take(*card.hotMark);
  Plot drawn(canvas, where, x, y, 6, 6);
  drawn.axes("coolant, " + card.unit, "needle shows, " + card.unit);
  drawn.curve({{x.low, x.low}, {x.high, x.high}}, 0.22, "1.4 1");
  drawn.curve(above, 0.12);
  drawn.curve(below, 0.12);
  drawn.curve(needle, 0.6);
  if (card.hotMark) drawn.levelLine(*card.hotMark, "hot mark on the dial");
  if (card.warm && card.warm->onTheMarks) canvas.ring(drawn.at(card.warm->truth, card.warm->shown), 1.3, 0.45);
}

void foot(Canvas& canvas, const OffsetCard& card, const Box& where) {
  const double inner = where.width - 2 * kPadding;
  std::string all = "± is k = 2, about 95 %. ";
  for (const std::string& caution : card.cautions) all += caution + " ";
  const auto lines = wrapped(all, kSmall.size, kSmall.weight, inner, 3);
  const double step = kSmall.size * 1.35;
  double y = where.bottom() - 5 - step * static_cast<double>(lines.size() - 1);
  canvas.line({where.x + kPadding, y - 4}, {where.right() - kPadding, y - 4}, 0.12);
  for (const std::string& line : lines) {
    canvas.text({where.x + kPadding, y}, kSmall, line);
    y += step;
  }
}

void drawCard(Canvas& canvas, const OffsetCard& card, const Box& where, std::string_view label) {
  const double left = where.x + kPadding;
  const double right = where.right() - kPadding;
  const double inner = right - left;
  canvas.line({left, where.y + 7}, {right, where.y + 7}, 0.9);
  canvas.text({left, where.y + 11.4}, kLabel, label);
  canvas.text({right, where.y + 11.4}, kSmall, elided(card.heading.date, kSmall.size, kSmall.weight, 60), Anchor::end);
  double y = where.y + 19;
  for (const std::string& line : balanced(card.driverLine, kTitle.size, kTitle.weight, inner, 2)) {
    canvas.text({left, y}, kTitle, line);
    y += kTitle.size * 1.25;
  }
  if (!card.hotLine.empty())
    y = canvas.paragraph({left, y - 1}, {3.1, card.hotLate ? Weight::bold : Weight::regular}, card.hotLine, inner, 2);
  y += 1;
  const double half = inner / 2 - 4;
  const auto side = [&](double x, std::string_view name, const std::string& what, const std::string& family) {
    canvas.text({x, y + 1}, kLabel, name);
    const std::string words = family.empty() || what.find(family) != std::string::npos ? what : what + " · " + family;
    canvas.paragraph({x + 13, y + 1}, kSmall, words, half - 13, 2);
  };
  side(left, "GAUGE", card.heading.gauge, card.heading.gaugeFamily);
  side(left + inner / 2 + 4, "SENDER", card.heading.sender, card.heading.senderFamily);
  const double top = y + 11;
  const double bottom = where.bottom() - 18;
  table(canvas, card.lines, {left, top, half, bottom - top});
  plot(canvas, card, {left + inner / 2 + 13, top + 3, half - 9, bottom - top - 11});
  foot(canvas, card, where);
}

}  // namespace

Pages drawOffsetCard(const OffsetCard& card, Paper paper) {
  const PaperSize size = sizeOf(paper);
  Canvas canvas(size);
  const double x = (size.width - kCardWidth) / 2;
  const double half = size.height / 2;
  const char* labels[] = {"OFFSET CARD · FOR THE GLOVE BOX", "OFFSET CARD · FOR THE FILE"};
  for (int i = 0; i < 2; ++i) {
    const Box where{x, i * half + (half - kCardHeight) / 2, kCardWidth, kCardHeight};
    cutMarks(canvas, where);
    drawCard(canvas, card, where, labels[i]);
  }
  return {canvas.finish()};
}

}  // namespace ohmkin::sheet
