#include <fmt/format.h>
#include <gauge/draw_dial.h>
#include <sheet/book.h>
#include <sheet/remarked_dial.h>

#include <charconv>

namespace ohmkin::sheet {
namespace {

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
  drawing.elements = cleanedElements(std::string_view(svg).substr(inside, svg.rfind("</svg>") - inside));
  return drawing;
}

void steps(Book& book, const RemarkedDial& sheet) {
  book.part("HOW TO USE IT");
  const std::string all[] = {
      "Print at 100 %, without fitting to the page, and measure the ruler: 50 mm.",
      "With the feed off, take the old dial's stops and pivot as they are: the dots and the cross come to lie on them.",
      "Cut it out and lay it over the old dial, or copy the marks by the angles below, from straight up, clockwise.",
      "Before the dash is closed, hold the needle against a thermometer at the thermostat's temperature.",
  };
  for (std::size_t i = 0; i < std::size(all); ++i) book.item(fmt::format("{}", i + 1), all[i]);
  for (const std::string& note : sheet.notes) book.item("·", note);
}

void angles(Book& book, const RemarkedDial& sheet) {
  book.part("THE MARKS BY ANGLE");
  std::vector<std::vector<std::string>> rows;
  for (const auto& mark : sheet.marks) rows.push_back({mark.mark, mark.temperature, mark.needle});
  book.table({{"MARK", 26, Anchor::start}, {"TEMPERATURE", 36, Anchor::end}, {"NEEDLE", 30, Anchor::end}}, rows);
}

}  // namespace

Expected<Pages> drawRemarkedDial(const RemarkedDial& sheet, const gauge::Dial& dial, Paper paper) {
  gauge::DialSheet drawn;
  drawn.radius = sheet.radius;
  const auto svg = gauge::drawDial(dial, drawn);
  if (!svg) return tl::make_unexpected(svg.error());
  const Drawing drawing = taken(*svg);
  Book book(sizeOf(paper), {"RE-MARKED DIAL", "The dial this needle needs", sheet.heading.date});
  book.sides(sheet.heading);
  const PaperSize size = sizeOf(paper);
  if (drawing.width > size.width || drawing.height > book.room())
    return refuse("dial-larger-than-paper", "radius",
                  fmt::format("{:g} mm, which needs {:.0f} × {:.0f} mm", sheet.radius, drawing.width, drawing.height),
                  fmt::format("a dial of at most {:.0f} × {:.0f} mm on this paper", size.width, book.room()));
  book.page().place({(size.width - drawing.width) / 2 - drawing.left, book.y() - drawing.top}, drawing.elements);
  book.skip(drawing.height);
  steps(book, sheet);
  angles(book, sheet);
  book.cautions(sheet.cautions);
  return book.finish();
}

}  // namespace ohmkin::sheet
