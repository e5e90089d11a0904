#include <fmt/format.h>
#include <sheet/book.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr double kRule = 0.9;   // over a page
constexpr double kHair = 0.12;  // under a row
constexpr double kLine = kBody.size * kLeading;
// Of one cell, and of cautions in a frame: a row or a frame has to fit on a page of its own, the flattest of them too.
constexpr std::size_t kMostLines = 30;

/// A triangle with an exclamation mark, the general warning sign of ISO 7010 (W001), in black.
void warningSign(Canvas& canvas, Spot top, double side) {
  const double height = side * 0.87;
  canvas.polygon({top, {top.x + side / 2, top.y + height}, {top.x - side / 2, top.y + height}}, 0.5, false);
  canvas.line({top.x, top.y + 0.38 * height}, {top.x, top.y + 0.68 * height}, 0.7);
  canvas.dot({top.x, top.y + 0.83 * height}, 0.42);
}

}  // namespace

/// Where a cell's text is anchored in a column that begins at x.
double Book::placeOf(const Column& column, double x) {
  return column.anchor == Anchor::start    ? x
         : column.anchor == Anchor::middle ? x + (column.width - kGap) / 2
                                           : x + column.width - kGap;
}

Book::Book(PaperSize size, Front front) : size_(size), front_(std::move(front)) {
  pages_.emplace_back(size_);
  Canvas& first = page();
  const double right = left() + width();
  first.line({left(), 18}, {right, 18}, kRule);
  first.text({left(), 22.8}, kLabel, elided(front_.label, kLabel.size, kLabel.weight, width() / 2));
  first.text({right, 22.8}, kSmall, elided(front_.date, kSmall.size, kSmall.weight, width() / 3), Anchor::end);
  y_ = first.paragraph({left(), 33}, kHero, front_.title, width(), 2) - 2;
}

void Book::need(double height) {
  if (room() < height) newPage();
}

void Book::newPage() {
  pages_.emplace_back(size_);
  const double right = left() + width();
  page().line({left(), 14}, {right, 14}, kRule);
  page().text({left(), 18.8}, kLabel, elided(front_.label, kLabel.size, kLabel.weight, 50));
  page().text({right, 18.8}, kSmall, elided(front_.title, kSmall.size, kSmall.weight, width() - 60), Anchor::end);
  y_ = 26;
}

void Book::sides(const Heading& heading) {
  const double half = width() / 2 - 4;
  double lowest = y_;
  const auto side = [&](double x, std::string_view name, const std::string& what, const std::string& family) {
    page().text({x, y_}, kLabel, name);
    double y = page().paragraph({x, y_ + 4.4}, kStrong, what, half, 2);
    if (!family.empty() && what != family) y = page().paragraph({x, y}, kBody, family, half, 1);
    lowest = std::max(lowest, y);
  };
  page().line({left(), y_ - 4.4}, {left() + width(), y_ - 4.4}, kHair);
  side(left(), "GAUGE", heading.gauge, heading.gaugeFamily);
  side(left() + width() / 2 + 4, "SENDER", heading.sender, heading.senderFamily);
  y_ = lowest + 1;
}

void Book::part(std::string_view name, double with) {
  need(with);
  y_ += 5;
  page().text({left(), y_}, kLabel, name);
  page().line({left(), y_ + 1.6}, {left() + width(), y_ + 1.6}, 0.3);
  y_ += 6.4;
}

void Book::paragraph(Face face, std::string_view words) {
  for (const std::string& line : wrapped(words, face.size, face.weight, width())) {
    need(face.size * kLeading);
    page().text({left(), y_}, face, line);
    y_ += face.size * kLeading;
  }
}

void Book::item(std::string_view mark, std::string_view words) {
  constexpr double kHang = 5;
  const auto lines = wrapped(words, kBody.size, kBody.weight, width() - kHang);
  need(kLine * static_cast<double>(std::min<std::size_t>(lines.size(), 4)));
  page().text({left(), y_}, kStrong, mark);
  for (const std::string& line : lines) {
    need(kLine);
    page().text({left() + kHang, y_}, kBody, line);
    y_ += kLine;
  }
  y_ += 0.6;
}

void Book::columnNames(const std::vector<Column>& columns) {
  double x = left();
  for (const Column& column : columns) {
    page().text({placeOf(column, x), y_}, kLabel, elided(column.name, kLabel.size, kLabel.weight, column.width - 1),
                column.anchor);
    x += column.width;
  }
  page().line({left(), y_ + 1.6}, {x - kGap, y_ + 1.6}, 0.2);
  y_ += 1.6;
}

void Book::table(const std::vector<Column>& columns, const std::vector<std::vector<std::string>>& rows) {
  double whole = -kGap;
  for (const Column& column : columns) whole += column.width;
  need(3 * kLine);
  columnNames(columns);
  for (const auto& row : rows) {
    std::vector<std::vector<std::string>> cells;
    std::size_t lines = 1;
    for (std::size_t c = 0; c < columns.size() && c < row.size(); ++c) {
      cells.push_back(wrapped(row[c], kBody.size, columns[c].weight, columns[c].width - kGap, kMostLines));
      lines = std::max(lines, cells.back().size());
    }
    const double height = kLine * static_cast<double>(lines) + 0.9;
    if (room() < height) {
      newPage();
      columnNames(columns);
    }
    double x = left();
    for (std::size_t c = 0; c < cells.size(); ++c) {
      double base = y_ + kLine;
      for (const std::string& line : cells[c]) {
        page().text({placeOf(columns[c], x), base}, {kBody.size, columns[c].weight}, line, columns[c].anchor);
        base += kLine;
      }
      x += columns[c].width;
    }
    y_ += height;
    page().line({left(), y_}, {left() + whole, y_}, 0.06);
  }
  y_ += 3;
}

void Book::cautions(const std::vector<std::string>& cautions) {
  constexpr double kIndent = 15;
  constexpr double kEdge = 4;
  std::vector<std::string> lines;
  for (const std::string& caution : cautions)
    for (std::string& line : wrapped(caution, kBody.size, kBody.weight, width() - kIndent - kEdge))
      lines.push_back(std::move(line));
  if (lines.empty()) return;
  if (lines.size() > kMostLines) {  // no frame is that high; every word is printed all the same
    for (const std::string& caution : cautions) item("!", caution);
    return;
  }
  const double height = std::max(14.0, kLine * static_cast<double>(lines.size()) + 2 * kEdge - 1);
  need(height + 4);
  y_ += 4;
  page().box({left(), y_, width(), height}, 0.4);
  warningSign(page(), {left() + 7.5, y_ + 3.4}, 8);
  double base = y_ + kEdge + kBody.size * 0.8;
  for (const std::string& line : lines) {
    page().text({left() + kIndent, base}, kBody, line);
    base += kLine;
  }
  y_ += height + 4;
}

Pages Book::finish(std::size_t following) {
  Pages out;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const double y = size_.height - 12;
    pages_[i].text({left(), y}, kSmall, "Ohmkin · " + elided(front_.date, kSmall.size, kSmall.weight, 60));
    pages_[i].text({left() + width(), y}, kSmall, fmt::format("page {} of {}", i + 1, pages_.size() + following),
                   Anchor::end);
    out.push_back(pages_[i].finish());
  }
  return out;
}

}  // namespace ohmkin::sheet
