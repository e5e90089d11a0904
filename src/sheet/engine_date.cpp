#include <fmt/format.h>
#include <sheet/book.h>
#include <sheet/engine_date.h>
#include <sheet/plot.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr double kNames = 58;  // mm left of the time line
constexpr double kColumns = 15;
constexpr double kRow = 6.4;
constexpr double kBar = 2.4;
constexpr double kLeastBar = 0.8;  // a single day is still seen
constexpr std::size_t kMostBars = 30;

/// Columns as high as they are likely: where it may be one of two years, two columns are seen.
void columns(Canvas& page, const std::vector<DateChance>& chances, const Box& where, const auto& x) {
  double most = 0;
  for (const DateChance& chance : chances) most = std::max(most, chance.probability);
  for (const DateChance& chance : chances) {
    const double high = std::max(0.4, chance.probability / most * (where.height - 1));
    const double left = x(chance.from);
    const double right = std::max(x(chance.until), left + kLeastBar);
    page.polygon({{left, where.bottom()},
                  {left, where.bottom() - high},
                  {right, where.bottom() - high},
                  {right, where.bottom()}},
                 0.05, true);
  }
  page.line({where.x, where.bottom()}, {where.right(), where.bottom()}, 0.2);
}

void timeLine(Book& book, const EngineDate& what) {
  if (what.bars.empty() && what.chances.empty()) return;
  const std::size_t count = std::min(what.bars.size(), kMostBars);
  const double top = what.chances.empty() ? 0 : kColumns;
  const double height = top + kRow * static_cast<double>(count);
  book.part("TIME LINE", height + 20);
  const double any = what.bars.empty() ? what.chances.front().from : what.bars.front().from;
  Range years{any, any};
  for (const DateBar& bar : what.bars) {
    years.take(bar.from);
    years.take(bar.until);
  }
  for (const DateChance& chance : what.chances) {
    years.take(chance.from);
    years.take(chance.until);
  }
  const Ticks ticks = ticksOver(years, 7);
  const Box where{book.left() + kNames, book.y() - 3, book.width() - kNames, height};
  const auto x = [&](double year) {
    return where.x + (year - ticks.first) / (ticks.last() - ticks.first) * where.width;
  };
  Canvas& page = book.page();
  for (int i = 0; i <= ticks.count; ++i) {
    const double year = ticks.first + ticks.step * i;
    page.line({x(year), where.y}, {x(year), where.bottom() + 1}, 0.1);
    page.text({x(year), where.bottom() + 4.4}, kSmall, fmt::format("{:.0f}", year),
              i == ticks.count ? Anchor::end : Anchor::middle);
  }
  if (top > 0) {
    page.text({book.left(), where.y + top - 1}, kStrong, "Engine assembled, chance by year");
    columns(page, what.chances, {where.x, where.y, where.width, top}, x);
  }
  for (std::size_t i = 0; i < count; ++i) {
    const DateBar& bar = what.bars[i];
    const double middle = where.y + top + kRow * (static_cast<double>(i) + 0.5);
    page.text({book.left(), middle + 0.5}, kBody, elided(bar.name, kBody.size, kBody.weight, kNames - 4));
    page.text({book.left(), middle + 3.2}, kSmall, elided(bar.words, kSmall.size, kSmall.weight, kNames - 4));
    const double wide = std::max(kLeastBar, x(bar.until) - x(bar.from));
    page.box({std::min(x(bar.from), where.right() - wide), middle - kBar / 2, wide, kBar}, 0.35, 0.4);
  }
  book.skip(height + 6);
}

}  // namespace

Pages drawEngineDate(const EngineDate& what, Paper paper) {
  Book book(sizeOf(paper), {"ENGINE DATE", what.summary, what.date});
  book.skip(2);
  if (!what.engine.empty()) book.paragraph({4.2, Weight::bold}, what.engine);
  for (const std::string& alarm : what.alarms) book.item("!", alarm);
  if (!what.meanings.empty()) {
    book.part("WHAT THE CODES CAN MEAN", 24);
    std::vector<std::vector<std::string>> rows;
    rows.reserve(what.meanings.size());
    for (const DateMeaning& meaning : what.meanings)
      rows.push_back({meaning.code, meaning.reading, meaning.how, meaning.chance});
    const double rest = book.tableWidth() - 26;
    book.table({{"CODE", rest * 0.34, Anchor::start, Weight::bold},
                {"READ AS", rest * 0.28},
                {"HOW", rest * 0.38},
                {"CHANCE", 26, Anchor::end}},
               rows);
  }
  timeLine(book, what);
  if (!what.reasons.empty()) {
    book.part("WHY", 20);
    for (const std::string& reason : what.reasons) book.item("·", reason);
  }
  book.skip(3);
  book.paragraph(kSmall, what.judgement);
  return book.finish();
}

}  // namespace ohmkin::sheet
