#include <gauge/draw_dial.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::gauge {
namespace {

constexpr double kMargin = 8;
constexpr double kRuler = 50;
constexpr double kLongMark = 0.16;  // parts of the radius
constexpr double kShortMark = 0.09;
constexpr const char* kCheckRuler = "The ruler above must measure 50 mm. If it does not, print again at 100\u00a0%.";
constexpr double kTitle = 3;  // heights of the figures in lines of text
constexpr double kNote = 1.8;
constexpr double kLeastHalfWidth = 55;
/// Of a letter on average, by the height of a figure: English in DejaVu Sans comes to 0.78.
constexpr double kWidest = 0.85;

struct Point {
  double x = 0;
  double y = 0;
};

/// From the pivot: clockwise from straight up, y down as SVG has it.
Point at(double radius, Angle angle) {
  const double a = angle.degrees * kRadiansPerDegree;
  return {radius * std::sin(a), -radius * std::cos(a)};
}

/// Text as text: markup escaped, control characters (which XML cannot hold) made blanks.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
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
        out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
    }
  }
  return out;
}

/// Broken at blanks into lines no wider than the paper; a single longer word stands alone.
std::vector<std::string> wrapped(const std::string& words, double height, double width) {
  const auto most = static_cast<std::size_t>(width / (height * kWidest));
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < words.size();) {
    std::size_t to = words.size() - from <= most ? words.size() : words.rfind(' ', from + most);
    if (to == std::string::npos || to <= from) to = std::min(words.find(' ', from), words.size());
    if (to > from) lines.push_back(words.substr(from, to - from));
    from = to + 1;
  }
  return lines;
}

/// What the drawing covers around the pivot: the marks' ends and the pivot's cross.
struct Frame {
  double left = -4;
  double right = 4;
  double top = -4;
  double bottom = 4;

  void take(const Point& p, double around) {
    left = std::min(left, p.x - around);
    right = std::max(right, p.x + around);
    top = std::min(top, p.y - around);
    bottom = std::max(bottom, p.y + around);
  }
};

Frame frameOf(const Dial& dial, const DialSheet& sheet) {
  Frame frame;
  const auto [low, high] = std::minmax({dial.lowStop().degrees, dial.highStop().degrees});
  for (int i = 0; i <= 100; ++i) frame.take(at(sheet.radius, {low + (high - low) * i / 100}), sheet.lettering);
  for (const Mark& mark : dial.marks()) frame.take(at(sheet.radius * 0.7, mark.angle), 2 * sheet.lettering);
  return frame;
}

std::string line(const char* what, Point from, Point to, double width) {
  return fmt::format(
      "  <line class=\"{}\" x1=\"{:.4f}\" y1=\"{:.4f}\" x2=\"{:.4f}\" y2=\"{:.4f}\" stroke-width=\"{:.2f}\"/>\n", what,
      from.x, from.y, to.x, to.y, width);
}

std::string text(const char* what, Point middle, double height, const char* anchor, const std::string& words) {
  if (words.empty()) return {};
  // Lowered by half of its height, a figure's middle is the point.
  return fmt::format(
      "  <text class=\"{}\" x=\"{:.3f}\" y=\"{:.3f}\" font-size=\"{:.2f}\" text-anchor=\"{}\" "
      "stroke=\"none\">{}</text>\n",
      what, middle.x, middle.y + 0.5 * height, height / kFigureHeight, anchor, escaped(words));
}

std::string arc(const char* what, double radius, Angle from, Angle to, double width) {
  const Point start = at(radius, from);
  const Point end = at(radius, to);
  const double turn = (to - from).degrees;
  return fmt::format(
      "  <path class=\"{}\" d=\"M{:.4f} {:.4f} A{:.4f} {:.4f} 0 {} {} {:.4f} {:.4f}\" fill=\"none\" "
      "stroke-width=\"{:.2f}\"/>\n",
      what, start.x, start.y, radius, radius, std::abs(turn) > 180 ? 1 : 0, turn > 0 ? 1 : 0, end.x, end.y, width);
}

bool isLong(const Mark& mark) { return mark.kind != MarkKind::tick; }

std::string drawnMark(const Mark& mark, const DialSheet& sheet) {
  const double length = sheet.radius * (isLong(mark) ? kLongMark : kShortMark);
  const double width = sheet.radius * (mark.kind == MarkKind::hot ? 0.03 : isLong(mark) ? 0.02 : 0.012);
  return line(mark.kind == MarkKind::hot ? "mark hot" : "mark", at(sheet.radius, mark.angle),
              at(sheet.radius - length, mark.angle), width) +
         text("figure", at(figureRadius(sheet), mark.angle), sheet.lettering, "middle", mark.text);
}

/// Where the arcs over the hot field and the normal band lie, none where the dial has no such field.
std::string fields(const Dial& dial, const DialSheet& sheet) {
  const auto& marks = dial.marks();
  const auto kind = [](MarkKind wanted) { return [wanted](const Mark& m) { return m.kind == wanted; }; };
  const auto hot = std::find_if(marks.begin(), marks.end(), kind(MarkKind::hot));
  const auto lastHot = std::find_if(marks.rbegin(), marks.rend(), kind(MarkKind::hot));
  const auto [left, right] = std::minmax({dial.lowStop(), dial.highStop()});
  const Angle end = lastHot->angle != hot->angle ? lastHot->angle : dial.turnsClockwise() ? right : left;
  std::string out = arc("hot-field", sheet.radius * 0.985, hot->angle, end, sheet.radius * 0.03);
  const auto low = std::find_if(marks.begin(), marks.end(), kind(MarkKind::normalLow));
  const auto high = std::find_if(marks.begin(), marks.end(), kind(MarkKind::normalHigh));
  if (low != marks.end() && high != marks.end())
    out += arc("normal-field", sheet.radius * 0.99, low->angle, high->angle, sheet.radius * 0.01);
  return out;
}

std::string drawnStop(Angle stop, double radius) {
  const Point p = at(radius * 1.03, stop);
  return fmt::format(
      "  <circle class=\"stop\" cx=\"{:.4f}\" cy=\"{:.4f}\" r=\"0.6\" fill=\"black\" stroke=\"none\"/>\n", p.x, p.y);
}

std::string drawnRuler(Point origin) {
  std::string out;
  for (int mm = 0; mm <= static_cast<int>(kRuler); ++mm) {
    const double height = mm % 10 == 0 ? 4 : mm % 5 == 0 ? 3 : 2;
    out += line("ruler", {origin.x + mm, origin.y}, {origin.x + mm, origin.y - height}, 0.15);
    if (mm % 10 == 0) out += text("ruler", {origin.x + mm, origin.y + 2.5}, 2, "middle", std::to_string(mm));
  }
  return out + line("ruler", origin, {origin.x + kRuler, origin.y}, 0.15);
}

std::string paragraph(const char* what, Point first, double height, const std::vector<std::string>& lines) {
  std::string out;
  for (std::size_t i = 0; i < lines.size(); ++i)
    out += text(what, {first.x, first.y + 2 * height * static_cast<double>(i)}, height, "start", lines[i]);
  return out;
}

Expected<void> checkSheet(const DialSheet& sheet) {
  if (!(sheet.radius >= 10 && sheet.radius <= 200))
    return refuse("dial-radius", "radius", fmt::format("{:g} mm", sheet.radius),
                  "10 to 200 mm from the pivot to the ends of the marks");
  if (!(sheet.lettering >= 1 && sheet.lettering <= 20))
    return refuse("dial-lettering", "lettering", fmt::format("{:g} mm", sheet.lettering), "figures 1 to 20 mm high");
  return {};
}

}  // namespace

double figureRadius(const DialSheet& sheet) { return sheet.radius * (1 - kLongMark) - 1.4 * sheet.lettering; }

Expected<std::string> drawDial(const Dial& dial, const DialSheet& sheet) {
  if (const auto sound = checkSheet(sheet); !sound) return tl::make_unexpected(sound.error());
  const Frame frame = frameOf(dial, sheet);
  const double half = std::max({-frame.left, frame.right, kLeastHalfWidth});
  const std::vector<std::string> title = wrapped(sheet.title, kTitle, 2 * half);
  std::vector<std::string> notes = wrapped(kCheckRuler, kNote, 2 * half);
  for (const std::string& note : sheet.notes)
    for (std::string& part : wrapped(note, kNote, 2 * half)) notes.push_back(std::move(part));
  const double left = -half - kMargin;
  const double top = frame.top - 2 * kMargin - 2 * kTitle * static_cast<double>(title.size());
  const double rulerAt = frame.bottom + 12;
  const double notesAt = rulerAt + 9;
  const double bottom = notesAt + 2 * kNote * static_cast<double>(notes.size()) + kMargin;

  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0:.4f}mm\" height=\"{1:.4f}mm\" viewBox=\"{2:.4f} {3:.4f} "
      "{0:.4f} {1:.4f}\" font-family=\"DejaVu Sans, sans-serif\">\n"
      "  <rect x=\"{2:.4f}\" y=\"{3:.4f}\" width=\"{0:.4f}\" height=\"{1:.4f}\" fill=\"white\"/>\n"
      "<g stroke=\"black\">\n",
      -2 * left, bottom - top, left, top);
  svg += fields(dial, sheet);
  for (const Mark& mark : dial.marks()) svg += drawnMark(mark, sheet);
  for (const Angle stop : {dial.lowStop(), dial.highStop()}) svg += drawnStop(stop, sheet.radius);
  svg += line("pivot", {-3, 0}, {3, 0}, 0.15) + line("pivot", {0, -3}, {0, 3}, 0.15);
  svg += drawnRuler({-kRuler / 2, rulerAt});
  svg += paragraph("title", {-half, top + kMargin + kTitle / 2}, kTitle, title);
  svg += paragraph("note", {-half, notesAt}, kNote, notes);
  return svg + "</g>\n</svg>\n";
}

}  // namespace ohmkin::gauge
