#include <fmt/format.h>
#include <sheet/canvas.h>

namespace ohmkin::sheet {
namespace {

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : cleaned(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

const char* nameOf(Anchor anchor) {
  return anchor == Anchor::start ? "start" : anchor == Anchor::middle ? "middle" : "end";
}

std::string dashed(std::string_view dashes) {
  return dashes.empty() ? std::string() : fmt::format(" stroke-dasharray=\"{}\"", dashes);
}

std::string listed(const std::vector<Spot>& spots) {
  std::string out;
  for (const Spot& spot : spots) out += fmt::format("{}{:.3f},{:.3f}", out.empty() ? "" : " ", spot.x, spot.y);
  return out;
}

std::string lettered(std::string_view where, Face face, Anchor anchor, std::string_view words) {
  return fmt::format("<text {} font-size=\"{:g}\"{} text-anchor=\"{}\" fill=\"black\">{}</text>\n", where, face.size,
                     face.weight == Weight::bold ? " font-weight=\"bold\"" : "", nameOf(anchor), escaped(words));
}

}  // namespace

Canvas::Canvas(PaperSize size) : size_(size) {}

void Canvas::text(Spot at, Face face, std::string_view words, Anchor anchor) {
  if (words.empty()) return;
  elements_ += lettered(fmt::format("x=\"{:.3f}\" y=\"{:.3f}\"", at.x, at.y), face, anchor, words);
}

double Canvas::paragraph(Spot first, Face face, std::string_view words, double width, std::size_t most) {
  for (const std::string& line : wrapped(words, face.size, face.weight, width, most)) {
    text(first, face, line);
    first.y += face.size * kLeading;
  }
  return first.y;
}

void Canvas::upright(Spot at, Face face, std::string_view words, Anchor anchor) {
  elements_ +=
      lettered(fmt::format("transform=\"translate({:.3f} {:.3f}) rotate(-90)\"", at.x, at.y), face, anchor, words);
}

void Canvas::line(Spot from, Spot to, double stroke, std::string_view dashes) {
  elements_ += fmt::format(
      "<line x1=\"{:.3f}\" y1=\"{:.3f}\" x2=\"{:.3f}\" y2=\"{:.3f}\" stroke=\"black\" stroke-width=\"{:g}\"{}/>\n",
      from.x, from.y, to.x, to.y, stroke, dashed(dashes));
}

void Canvas::polyline(const std::vector<Spot>& spots, double stroke, std::string_view dashes) {
  if (spots.size() < 2) return;
  elements_ += fmt::format(
      "<polyline points=\"{}\" fill=\"none\" stroke=\"black\" stroke-width=\"{:g}\" stroke-linejoin=\"round\"{}/>\n",
      listed(spots), stroke, dashed(dashes));
}

void Canvas::polygon(const std::vector<Spot>& spots, double stroke, bool filled) {
  elements_ += fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"black\" stroke-width=\"{:g}\"/>\n",
                           listed(spots), filled ? "black" : "white", stroke);
}

void Canvas::box(const Box& where, double stroke, double radius) {
  elements_ += fmt::format(
      "<rect x=\"{:.3f}\" y=\"{:.3f}\" width=\"{:.3f}\" height=\"{:.3f}\" rx=\"{:g}\" fill=\"white\" stroke=\"black\" "
      "stroke-width=\"{:g}\"/>\n",
      where.x, where.y, where.width, where.height, radius, stroke);
}

void Canvas::blank(const Box& where) {
  elements_ += fmt::format("<rect x=\"{:.3f}\" y=\"{:.3f}\" width=\"{:.3f}\" height=\"{:.3f}\" fill=\"white\"/>\n",
                           where.x, where.y, where.width, where.height);
}

void Canvas::dot(Spot at, double radius) {
  elements_ += fmt::format("<circle cx=\"{:.3f}\" cy=\"{:.3f}\" r=\"{:g}\" fill=\"black\"/>\n", at.x, at.y, radius);
}

void Canvas::ring(Spot at, double radius, double stroke) {
  elements_ += fmt::format(
      "<circle cx=\"{:.3f}\" cy=\"{:.3f}\" r=\"{:g}\" fill=\"white\" stroke=\"black\" stroke-width=\"{:g}\"/>\n", at.x,
      at.y, radius, stroke);
}

void Canvas::place(Spot at, std::string_view elements) {
  elements_ += fmt::format("<g transform=\"translate({:.3f} {:.3f})\">\n{}</g>\n", at.x, at.y, elements);
}

std::string Canvas::finish() const {
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0:g}mm\" height=\"{1:g}mm\" "
      "viewBox=\"0 0 {0:g} {1:g}\" font-family=\"DejaVu Sans, Verdana, sans-serif\">\n"
      "<rect width=\"{0:g}\" height=\"{1:g}\" fill=\"white\"/>\n{2}</svg>\n",
      size_.width, size_.height, elements_);
}

}  // namespace ohmkin::sheet
