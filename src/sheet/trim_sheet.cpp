#include <sheet/book.h>
#include <sheet/plot.h>
#include <sheet/trim_sheet.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

std::string standingWords(TrimStanding standing) {
  switch (standing) {
    case TrimStanding::mayStay:
      return "May stay in the vehicle.";
    case TrimStanding::toGetHomeOnly:
      return "To get home only: not to be left in the vehicle.";
    case TrimStanding::notGoodEnough:
      return "Not good enough: the needle still misleads.";
  }
  return {};
}

std::vector<Spot> spots(const std::vector<TrimPoint>& points, double times = 0) {
  std::vector<Spot> out;
  out.reserve(points.size());
  for (const TrimPoint& point : points) out.push_back({point.truth, point.error + times * point.uncertainty});
  return out;
}

void errorPlot(Book& book, const TrimSheet& sheet) {
  constexpr double kHeight = 45;
  if (sheet.after.empty()) return;
  book.part("ERROR OF THE NEEDLE, INDICATED MINUS TRUE", kHeight + 26);
  Range x{sheet.after.front().truth, sheet.after.front().truth};
  Range y{0, 0};
  for (const TrimPoint& point : sheet.after) {
    x.take(point.truth);
    y.take(point.error + point.uncertainty);
    y.take(point.error - point.uncertainty);
  }
  for (const TrimPoint& point : sheet.before) y.take(point.error);
  const Box where{book.left() + 10, book.y() + 3, book.width() - 10, kHeight};
  Plot plot(book.page(), where, x, y, 8, 6);
  plot.axes("coolant, " + sheet.unit, "needle off by, " + sheet.errorUnit);
  plot.curve(spots(sheet.before), 0.3, "1.4 1");
  plot.curve(spots(sheet.after, 1), 0.12);
  plot.curve(spots(sheet.after, -1), 0.12);
  plot.curve(spots(sheet.after), 0.6);
  if (sheet.hotMark) plot.uprightLine(*sheet.hotMark, "hot mark");
  book.skip(kHeight + 13);
  book.paragraph(kSmall,
                 "Heavy: with the resistors, thin lines its uncertainty (k = 2, about 95 %). Dashed: without them. "
                 "Below zero reads low, the dangerous way.");
  book.skip(2);
}

void partsTable(Book& book, const TrimSheet& sheet) {
  book.part("PARTS TO BUY", 30);
  std::vector<std::vector<std::string>> rows;
  rows.reserve(sheet.parts.size());
  for (const TrimPart& part : sheet.parts)
    rows.push_back({part.part, part.value, part.rating, part.working, part.shorted});
  const double rest = book.tableWidth() - 44 - 30 - 30;
  book.table({{"PART", 44, Anchor::start},
              {"VALUE, 1 %", 30, Anchor::end, Weight::bold},
              {"BUY AT LEAST", 30, Anchor::end, Weight::bold},
              {"WORKING", rest * 0.42, Anchor::end},
              {"SENDER POST SHORTED TO FEED", rest * 0.58, Anchor::end}},
             rows);
  book.paragraph(kSmall, sheet.conditions);
  book.skip(2);
}

void cornersTable(Book& book, const TrimSheet& sheet) {
  if (sheet.corners.empty()) return;
  book.part("WITH THE PARTS AT THEIR WORST CORNERS", 28);
  std::vector<std::vector<std::string>> rows;
  rows.reserve(sheet.corners.size());
  for (const TrimCorner& corner : sheet.corners) rows.push_back({corner.parts, corner.low, corner.high, corner.hot});
  book.table({{"TOLERANCE", 30},
              {"READS LOW", 34, Anchor::end},
              {"READS HIGH", 34, Anchor::end},
              {"AT THE HOT MARK", book.tableWidth() - 98}},
             rows);
}

void errorTable(Book& book, const TrimSheet& sheet) {
  book.part("NEEDLE AGAINST COOLANT", 40);
  std::vector<std::vector<std::string>> rows;
  rows.reserve(sheet.rows.size());
  for (const TrimRow& row : sheet.rows) rows.push_back({row.truth, row.before, row.after, row.error, row.uncertainty});
  const double each = (book.tableWidth()) / 5;
  book.table({{"COOLANT", each, Anchor::end},
              {"WITHOUT", each, Anchor::end},
              {"WITH RESISTORS", each, Anchor::end, Weight::bold},
              {"ERROR", each, Anchor::end},
              {"±", each, Anchor::end}},
             rows);
}

void failureTable(Book& book, const TrimSheet& sheet) {
  book.part("WHAT FAILS, AND WHAT THE NEEDLE THEN SHOWS", 40);
  std::vector<std::vector<std::string>> rows;
  rows.reserve(sheet.failures.size());
  for (const TrimFailure& failure : sheet.failures)
    rows.push_back(
        {failure.misleads ? "!" : "", failure.what, failure.shown, failure.atHot, failure.noticed ? "yes" : "no"});
  const double rest = book.tableWidth() - 8 - 52 - 28 - 22;
  book.table({{"", 8, Anchor::start, Weight::bold},
              {"WHAT FAILS", 52, Anchor::start, Weight::bold},
              {"THE NEEDLE THEN", rest},
              {"AT HOT", 28},
              {"NOTICED", 22}},
             rows);
  const bool any =
      std::any_of(sheet.failures.begin(), sheet.failures.end(), [](const TrimFailure& f) { return f.misleads; });
  if (any) book.paragraph(kSmall, "! reads low, or hot too late, and nobody notices.");
}

}  // namespace

Pages drawTrimSheet(const TrimSheet& sheet, Paper paper) {
  Book book(sizeOf(paper), {"TRIM SHEET", sheet.network, sheet.heading.date});
  book.paragraph({4.2, Weight::bold}, standingWords(sheet.standing));
  book.skip(4);
  book.sides(sheet.heading);
  book.skip(1);
  drawCircuit(book.page(), sheet.circuit, {book.left(), book.y()}, book.width());
  book.skip(kCircuitHeight + 6);
  for (const std::string& sentence : sheet.summary) book.paragraph(kLead, sentence);
  partsTable(book, sheet);
  errorPlot(book, sheet);
  if (!sheet.findings.empty()) {
    book.part("MIND", 24);
    for (const std::string& finding : sheet.findings) book.item("·", finding);
  }
  book.cautions(sheet.cautions);
  failureTable(book, sheet);
  errorTable(book, sheet);
  cornersTable(book, sheet);
  return book.finish();
}

}  // namespace ohmkin::sheet
