#include <fmt/format.h>
#include <sheet/book.h>
#include <sheet/swap_plan.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr std::size_t kBeside = 4;  // engines beside one another
constexpr double kDashWidth = 46;
constexpr double kInside = 2.5;

struct Line {
  Face face;
  std::string words;
  double gap = 0;  ///< above it, besides its own height
};

void add(std::vector<Line>& lines, Face face, std::string_view words, double width, std::size_t most, double gap = 0) {
  for (std::string& line : wrapped(words, face.size, face.weight, width, most)) {
    lines.push_back({face, std::move(line), gap});
    gap = 0;
  }
}

/// Each in so many lines at most, so that a row always fits on a page.
std::vector<Line> linesOf(const SwapCell& cell, double width) {
  std::vector<Line> lines;
  if (cell.best) add(lines, kLabel, "NEEDS LEAST", width, 1);
  add(lines, cell.answered ? Face{3.4, Weight::bold} : kBody, cell.part, width, 2, cell.best ? 0.6 : 0);
  for (const std::string& with : cell.with) add(lines, kBody, "+ " + with, width, 2);
  if (!cell.worst.empty()) add(lines, kStrong, "worst " + cell.worst, width, 1, 0.6);
  add(lines, kSmall, cell.verdict, width, 8, 0.6);
  add(lines, kSmall, cell.era, width, 3, 0.6);
  if (!cell.look.empty()) add(lines, kSmall, "Look: " + cell.look, width, 5, 0.6);
  return lines;
}

double heightOf(const std::vector<Line>& lines) {
  double height = 2 * kInside;
  for (const Line& line : lines) height += line.gap + line.face.size * kLeading;
  return height;
}

void write(Canvas& canvas, Spot corner, const std::vector<Line>& lines) {
  double y = corner.y + kInside;
  for (const Line& line : lines) {
    y += line.gap + line.face.size * kLeading;
    canvas.text({corner.x + kInside, y - 0.36 * line.face.size}, line.face, line.words);
  }
}

/// Engines from … until, all dashes under them.
class Grid {
 public:
  Grid(Book& book, const SwapPlan& plan, std::size_t from, std::size_t until)
      : book_(book), plan_(plan), from_(from), until_(until) {
    column_ = (book.width() - kDashWidth) / static_cast<double>(std::max<std::size_t>(until - from, 2));
  }

  void draw() {
    names();
    for (std::size_t dash = 0; dash < plan_.dashes.size(); ++dash) row(dash);
    book_.skip(3);
  }

 private:
  void names() {
    double height = 0;
    std::vector<std::vector<Line>> all;
    for (std::size_t e = from_; e < until_; ++e) {
      std::vector<Line> lines;
      add(lines, kStrong, plan_.engines[e], column_ - 2 * kInside, 4);
      height = std::max(height, heightOf(lines));
      all.push_back(std::move(lines));
    }
    book_.need(height + 30);
    book_.page().text({book_.left(), book_.y() + height - kInside}, kLabel, "DASH  ↓   ENGINE  →");
    for (std::size_t i = 0; i < all.size(); ++i)
      write(book_.page(), {x(from_ + i), book_.y() + height - heightOf(all[i])}, all[i]);
    book_.skip(height);
    rule(0.3);
  }

  void row(std::size_t dash) {
    std::vector<Line> name;
    add(name, kStrong, plan_.dashes[dash], kDashWidth - 2 * kInside, 8);
    double height = heightOf(name);
    std::vector<std::vector<Line>> cells;
    for (std::size_t e = from_; e < until_; ++e) {
      cells.push_back(linesOf(plan_.cells[dash * plan_.engines.size() + e], column_ - 2 * kInside));
      height = std::max(height, heightOf(cells.back()));
    }
    if (book_.room() < height && book_.y() > 60) {
      book_.newPage();
      names();
    }
    write(book_.page(), {book_.left() - kInside, book_.y()}, name);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const Box where{x(from_ + i), book_.y(), column_, height};
      if (plan_.cells[dash * plan_.engines.size() + from_ + i].best)
        book_.page().box({where.x + 0.6, where.y + 0.6, where.width - 1.2, where.height - 1.2}, 0.5, 1);
      write(book_.page(), {where.x, where.y}, cells[i]);
    }
    book_.skip(height);
    rule(0.1);
  }

  [[nodiscard]] double x(std::size_t engine) const {
    return book_.left() + kDashWidth + column_ * static_cast<double>(engine - from_);
  }
  void rule(double stroke) {
    book_.page().line({book_.left(), book_.y()}, {book_.left() + book_.width(), book_.y()}, stroke);
  }

  Book& book_;
  const SwapPlan& plan_;
  std::size_t from_;
  std::size_t until_;
  double column_ = 0;
};

void toBuy(Book& book, const SwapPlan& plan) {
  if (plan.partsToBuy.empty()) return;
  book.part("PARTS TO BUY, WITH THE ENGINE MARKED FOR EACH DASH", 22);
  for (const std::string& part : plan.partsToBuy) {
    const auto lines = wrapped(part, kBody.size, kBody.weight, book.width() - 8);
    book.need(5 * static_cast<double>(std::min<std::size_t>(lines.size(), 3)));
    book.page().box({book.left() + 0.3, book.y() - 2.6, 3, 3}, 0.25);
    for (const std::string& line : lines) {
      book.need(5);
      book.page().text({book.left() + 6, book.y()}, kBody, line);
      book.skip(5);
    }
  }
}

}  // namespace

Pages drawSwapPlan(const SwapPlan& plan, Paper paper) {
  const auto count = [](std::size_t n, const char* one, const char* more) {
    return fmt::format("{} {}", n, n == 1 ? one : more);
  };
  Book book(sizeOf(paper, Way::landscape), {"SWAP PLAN",
                                            count(plan.dashes.size(), "dash", "dashes") + " against " +
                                                count(plan.engines.size(), "engine", "engines"),
                                            plan.date});
  for (std::size_t from = 0; from < plan.engines.size(); from += kBeside) {
    if (from > 0) book.newPage();
    Grid(book, plan, from, std::min(from + kBeside, plan.engines.size())).draw();
  }
  toBuy(book, plan);
  book.cautions(plan.cautions);
  return book.finish();
}

}  // namespace ohmkin::sheet
