#include <fmt/format.h>
#include <gauge/draw_dial.h>
#include <sheet/book.h>
#include <sheet/remarked_dial.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace ohmkin::sheet {
namespace {

// Of the margin it leaves around the dial, above and below, what a page does without.
constexpr double kEmptyMargin = 7;

/// A drawing taken out of its own document, to stand on a page in the same scale.
struct Drawing {
  double left = 0;
  double top = 0;
  double width = 0;
  double height = 0;
  std::string elements;
};

/// By the viewBox of a document whose root has one, as drawDial's has.
Drawing taken(const std::string& svg) {
  Drawing drawing;
  constexpr std::string_view kBox = "viewBox=\"";
  const std::size_t box = svg.find(kBox) + kBox.size();
  const char* from = svg.data() + box;
  const char* const end = svg.data() + svg.size();
  for (double* number : {&drawing.left, &drawing.top, &drawing.width, &drawing.height}) {
    from = std::from_chars(from, end, *number).ptr;
    if (from != end) ++from;  // the blank between
  }
  const std::size_t inside = svg.find('>', box) + 1;
  // Its own line about the ruler goes: the page says so in its own type.
  std::string_view rest = std::string_view(svg).substr(inside, svg.rfind("</svg>") - inside);
  while (!rest.empty()) {
    const std::string_view line = rest.substr(0, rest.find('\n') + 1);
    if (line.find("class=\"note\"") == std::string_view::npos) drawing.elements += line;
    rest.remove_prefix(line.empty() ? rest.size() : line.size());
  }
  drawing.elements = cleanedElements(drawing.elements);
  return drawing;
}

void steps(Book& book, const RemarkedDial& sheet) {
  book.part("HOW TO USE IT");
  const std::string all[] = {
      "Print at 100 %, without fitting to the page, and measure the ruler. It must be 50 mm long; if it is not, print "
      "again.",
      "Lay it on the old dial with the feed off: the cross on the needle's pivot, the dots on its stops.",
      "Cut it out and stick it over the old dial, or copy the marks by the angles below, from straight up, clockwise.",
      "Before the dash is closed, hold the needle against a thermometer at the thermostat's temperature.",
  };
  for (std::size_t i = 0; i < std::size(all); ++i) book.item(fmt::format("{}", i + 1), all[i]);
  for (const std::string& note : sheet.notes) book.item("·", note);
}

void angles(Book& book, const RemarkedDial& sheet) {
  book.part("THE MARKS BY ANGLE");
  std::vector<std::vector<std::string>> rows;
  rows.reserve(sheet.marks.size());
  for (const auto& mark : sheet.marks) rows.push_back({mark.mark, mark.temperature, mark.needle});
  book.table({{"MARK", 26, Anchor::start}, {"TEMPERATURE", 36, Anchor::end}, {"NEEDLE", 30, Anchor::end}}, rows);
}

}  // namespace

Expected<gauge::Dial> legible(const gauge::Dial& dial, const gauge::DialSheet& drawn) {
  std::vector<gauge::Mark> marks = dial.marks();
  const auto middle = [&](const gauge::Mark& mark) {
    const double a = mark.angle.degrees * kRadiansPerDegree;
    const double r = gauge::figureRadius(drawn);
    return Spot{r * std::sin(a), -r * std::cos(a)};
  };
  const auto collide = [&](const gauge::Mark& a, const gauge::Mark& b) {
    const double em = drawn.lettering / gauge::kFigureHeight;
    const double across = (widthOf(a.text, em) + widthOf(b.text, em)) / 2 + 0.3 * em;
    return std::abs(middle(a).x - middle(b).x) < across && std::abs(middle(a).y - middle(b).y) < 1.25 * drawn.lettering;
  };
  std::vector<const gauge::Mark*> kept;
  for (const bool hot : {true, false}) {
    for (gauge::Mark& mark : marks) {
      if ((mark.kind == gauge::MarkKind::hot) != hot || mark.text.empty()) continue;
      if (std::any_of(kept.begin(), kept.end(), [&](const gauge::Mark* other) { return collide(mark, *other); }))
        mark.text.clear();
      else kept.push_back(&mark);
    }
  }
  return gauge::Dial::make(std::move(marks), dial.lowStop(), dial.highStop());
}

Expected<Pages> drawRemarkedDial(const RemarkedDial& sheet, const gauge::Dial& dial, Paper paper) {
  gauge::DialSheet drawn;
  drawn.radius = sheet.radius;
  const auto readable = legible(dial, drawn);
  if (!readable) return tl::make_unexpected(readable.error());
  const auto svg = gauge::drawDial(*readable, drawn);
  if (!svg) return tl::make_unexpected(svg.error());
  const Drawing drawing = taken(*svg);
  Book book(sizeOf(paper), {"RE-MARKED DIAL", "The dial this needle needs", sheet.heading.date});
  book.skip(2);
  book.sides(sheet.heading);
  const PaperSize size = sizeOf(paper);
  if (drawing.width > size.width || drawing.height > book.room())
    return refuse("dial-larger-than-paper", "radius",
                  fmt::format("{:g} mm, which needs {:.0f} × {:.0f} mm", sheet.radius, drawing.width, drawing.height),
                  fmt::format("a dial of at most {:.0f} × {:.0f} mm on this paper", size.width, book.room()));
  book.page().place({(size.width - drawing.width) / 2 - drawing.left, book.y() - kEmptyMargin - drawing.top},
                    drawing.elements);
  book.skip(drawing.height - 2 * kEmptyMargin);
  steps(book, sheet);
  book.cautions(sheet.cautions);
  angles(book, sheet);
  return book.finish();
}

}  // namespace ohmkin::sheet
