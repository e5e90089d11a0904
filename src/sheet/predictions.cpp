#include <sheet/book.h>
#include <sheet/predictions.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr std::size_t kFaultsARow = 12;  // a row is never parted, and has to fit on a page

std::string listed(const std::vector<std::string>& names, std::size_t first) {
  std::string all;
  const std::size_t end = std::min(first + kFaultsARow, names.size());
  for (std::size_t i = first; i < end; ++i) all += (i == first ? "" : "; ") + names[i];
  return all;
}

void testBlock(Book& book, const PredictedTest& test) {
  book.need(26);
  book.skip(3);
  book.paragraph(kStrong, test.title);
  book.paragraph(kSmall, test.cost);
  if (!test.hazard.empty()) book.item("!", test.hazard);
  std::vector<std::vector<std::string>> rows{{test.good, "a good circuit"}};
  for (const PredictedResult& result : test.results)
    for (std::size_t i = 0; i < result.points.size(); i += kFaultsARow)
      rows.push_back({i == 0 ? result.result : "", listed(result.points, i)});
  constexpr double kResult = 58;
  book.skip(1.5);
  book.table({{"IT SHOWS", kResult, Anchor::start, Weight::bold}, {"THEN IT MAY BE", book.tableWidth() - kResult}},
             rows);
}

}  // namespace

Pages drawPredictions(const PredictionsSheet& sheet, Paper paper) {
  Book book(sizeOf(paper), {"FAULT TABLE", "What each test shows, and what it points to", sheet.heading.date});
  book.skip(2);
  book.sides(sheet.heading);
  book.skip(1);
  for (const std::string& note : sheet.notes) book.paragraph(kSmall, note);
  book.cautions(sheet.cautions);
  for (const PredictedSetup& setup : sheet.setups) {
    if (setup.tests.empty()) continue;
    book.part(setup.name, 40);
    for (const PredictedTest& test : setup.tests) testBlock(book, test);
  }
  return book.finish();
}

}  // namespace ohmkin::sheet
