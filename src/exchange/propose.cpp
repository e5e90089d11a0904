#include <exchange/column_roles.h>
#include <exchange/content_hash.h>
#include <exchange/number_marks.h>
#include <exchange/plan_corrections.h>
#include <exchange/sample_table.h>
#include <exchange/shown.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::exchange {
namespace {

constexpr std::size_t kShownRows = 20;
constexpr double kHottest = 1000;  // °C or °F: a temperature read by the wrong marks is far beyond

std::string_view separatorName(char separator) {
  switch (separator) {
    case ',':
      return "comma";
    case ';':
      return "semicolon";
    case '\t':
      return "tab";
    case '|':
      return "vertical bar";
    default:
      return "blanks";
  }
}

void say(Proposal& into, std::string code, Severity severity, std::string sentence, std::string evidence) {
  into.findings.push_back({std::move(code), severity, std::move(sentence), std::move(evidence), "the file itself"});
}

std::vector<std::string_view> numberCells(const std::vector<ColumnFacts>& facts, bool named) {
  std::vector<std::string_view> cells;
  for (const ColumnFacts& column : facts) {
    const bool belongs = column.said.role == Role::temperature || column.said.role == Role::resistance ||
                         column.withDegrees + column.withOhms > 0;
    if (!column.mostly(column.numbers) || (named && !belongs)) continue;
    for (const std::string_view cell : column.cells)
      if (looksNumeric(cell)) cells.push_back(cell);
  }
  return cells;
}

/// The largest step of ln R between rows neighbouring in temperature.
double roughness(const ColumnFacts& temperature, const ColumnFacts& resistance, Marks marks) {
  std::vector<std::pair<double, double>> points;
  for (std::size_t i = 0; i < temperature.cells.size(); ++i) {
    const auto t = leadingNumber(temperature.cells[i], marks);
    const auto r = leadingNumber(resistance.cells[i], marks);
    if (t && r && r->value > 0 && !isOverload(resistance.cells[i], marks))
      points.emplace_back(t->value, std::log(r->value));
  }
  std::sort(points.begin(), points.end());
  double most = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    most = std::max(most, std::abs(points[i].second - points[i - 1].second));
  return most;
}

/// 1,234: no thermometer reads 1234 in a bath, and ohms do not jump a thousandfold between neighbours.
void settleMarks(MarksTold& told, const std::vector<ColumnFacts>& facts, const ReadingPlan& plan) {
  for (const std::size_t i : plan.with(Role::temperature)) {
    const std::vector<double> grouped = valuesOf(facts[i], told.other);
    const std::vector<double> plain = valuesOf(facts[i], told.marks);
    if (grouped.empty() || plain.empty() || grouped == plain) continue;
    if (*std::max_element(grouped.begin(), grouped.end()) > kHottest) {
      told.open = false;
      told.reason = fmt::format("'{}' as a thousands mark would make a temperature above 1000", told.marks.decimal);
      return;
    }
  }
  if (plan.with(Role::temperature).empty()) return;
  for (const std::size_t i : plan.with(Role::resistance)) {
    const ColumnFacts& temperature = facts[plan.with(Role::temperature).front()];
    const double asDecimal = roughness(temperature, facts[i], told.marks);
    const double asGroups = roughness(temperature, facts[i], told.other);
    const bool groups = asDecimal > 4 && asGroups < 2;
    if (!groups && !(asGroups > 4 && asDecimal < 2)) continue;
    if (groups) std::swap(told.marks, told.other);
    told.open = false;
    told.reason = "the other way the ohms would jump a hundredfold between neighbouring temperatures";
    return;
  }
}

void sayMarks(const MarksTold& told, Proposal& into) {
  into.plan.decimal = told.marks.decimal;
  into.plan.thousands = told.marks.thousands;
  const auto answer = [](Marks marks) {
    const std::string_view thousands = marks.thousands == '.'    ? "point"
                                       : marks.thousands == ','  ? "comma"
                                       : marks.thousands == ' '  ? "blank"
                                       : marks.thousands == '\'' ? "apostrophe"
                                                                 : "none";
    return fmt::format("decimal={}, thousands={}", marks.decimal == '.' ? "point" : "comma", thousands);
  };
  say(into, "decimal-mark", told.open || told.mixed ? Severity::caution : Severity::note,
      fmt::format("The decimal mark is the {}.", told.marks.decimal == '.' ? "point" : "comma"), told.reason);
  if (told.open) {
    const auto decimal = leadingNumber(told.example, told.marks);
    const auto grouped = leadingNumber(told.example, told.other);
    into.questions.push_back({"decimal-or-thousands",
                              fmt::format("Is '{}' {} or {}? Every such number of the file can be read both ways.",
                                          told.example, decimal ? decimal->plain : "?", grouped ? grouped->plain : "?"),
                              {answer(told.marks), answer(told.other)}});
  }
  if (told.mixed) {
    const Marks turned{told.marks.decimal == '.' ? ',' : '.', '\0'};
    into.questions.push_back(
        {"decimal-mark-mixed",
         fmt::format("Points and commas are both used as decimal marks, for example {}; which of them is meant?",
                     shown(told.example)),
         {answer(told.marks), answer(turned)}});
  }
}

enum class BlankLines { none, within, between };

/// Blank lines begin another curve where a title or the heading follows, or where the temperature turns; where it goes
/// on as before they only lie between. Every other line blank means nothing either.
BlankLines blankLines(const SampleTable& table, const ReadingPlan& plan) {
  const std::vector<std::size_t> thermometers = plan.with(Role::temperature);
  std::size_t gaps = 0;
  std::size_t data = 0;
  bool gap = false;
  bool words = false;
  bool part = false;
  std::optional<double> last;
  double step = 0;
  for (std::size_t i = table.first; i < table.rows.size(); ++i) {
    const SampleRow& row = table.rows[i];
    if (row.blank) gap = true, words = false;
    else if (!row.data && !row.comment) words = true;
    if (!row.data) continue;
    ++data;
    const auto t = thermometers.empty()
                       ? std::nullopt
                       : leadingNumber(row.cells[thermometers.front()], {plan.decimal, plan.thousands});
    const double next = t && last ? t->value - *last : 0;
    if (gap && data > 1) {
      ++gaps;
      part = part || words || next == 0 || step * next < 0;
    }
    if (t) step = gap ? 0 : next, last = t->value;
    gap = words = false;
  }
  if (gaps == 0 || !plan.with(Role::curve).empty()) return BlankLines::none;
  return part && gaps * 2 < data ? BlankLines::between : BlankLines::within;
}

void sayBlankLines(const SampleTable& table, Proposal& into) {
  const BlankLines blanks = blankLines(table, into.plan);
  into.plan.blankLineParts = blanks == BlankLines::between;
  if (blanks == BlankLines::between)
    say(into, "parts", Severity::note, "Blank lines begin another curve.",
        "titles follow them, or the temperature turns there");
  if (blanks == BlankLines::within)
    say(into, "parts", Severity::note, "Blank lines are passed over.", "the temperature goes on beyond them as before");
}

/// What the files of one habit share: words, not numbers; keys, not what is written behind them.
std::string signature(const SampleTable& table, const Proposal& proposal) {
  std::string shape =
      fmt::format("{}\n{}\n{}\n{}\n", proposal.plan.separator, proposal.plan.comment, table.width, table.headingRows);
  for (std::size_t i = 0; i < table.rows.size() && table.rows[i].line <= table.skip; ++i) {
    const std::string& line = table.rows[i].text;
    shape += folded(line.substr(0, line.find_first_of("0123456789:=\t;,|"))) + "\n";
  }
  for (const auto* row : {&table.heading, &table.unitsBelow})
    for (const std::string& cell : *row) shape += folded(cell) + "\t";
  if (table.headingRows == 0)
    for (const ColumnPlan& column : proposal.plan.columns) shape += fmt::format("{} ", static_cast<int>(column.role));
  ContentHash hash;
  hash.add(shape);
  return hash.hex().substr(0, 32);
}

void sayShape(const SampleText& text, const SampleTable& table, Proposal& into) {
  ReadingPlan& plan = into.plan;
  plan.encoding = text.encoding;
  plan.carriageReturns = text.carriageReturns;
  plan.separator = table.separator;
  plan.comment = table.comment;
  plan.skip = table.skip;
  plan.heading = table.headingRows;
  say(into, "encoding", Severity::note, fmt::format("The text is {}.", text.encoding), text.reason);
  say(into, "separator", Severity::note, fmt::format("Cells are separated by {}.", separatorName(table.separator)),
      table.separatorReason);
  if (table.skip > 0)
    say(into, "preamble", Severity::note,
        fmt::format("{} above the {} {} passed over.",
                    table.skip == 1 ? "The one line" : fmt::format("The {} lines", table.skip),
                    table.headingRows > 0 ? "heading" : "first row", table.skip == 1 ? "is" : "are"),
        fmt::format("rows of numbers begin on line {}", table.rows[table.first].line));
  if (table.headingRows == 0)
    say(into, "heading-none", Severity::caution, "No line names the columns; they are told by what they hold.",
        "no words stand above the numbers");
  for (const SampleRow& row : table.rows)
    if (row.line <= table.skip && into.preamble.size() < kShownRows) into.preamble.push_back(row.text);
  for (const SampleRow* row : table.data())
    if (into.firstRows.size() < kShownRows) into.firstRows.push_back(row->cells);
  const auto odd = std::find_if(table.rows.begin() + static_cast<std::ptrdiff_t>(table.first), table.rows.end(),
                                [](const SampleRow& row) { return row.numbers >= 2 && !row.data; });
  if (odd != table.rows.end())
    say(into, "width-changes", Severity::caution,
        fmt::format("Line {} has {} cells where most have {}.", odd->line, odd->cells.size(), table.width),
        shown(odd->text));
}

/// 20,5,480,3 under "temperature,ohms": nothing can tell which commas are decimal.
bool commasBothWays(const SampleTable& table) {
  return table.separator == ',' && !table.heading.empty() && table.heading.size() < table.width &&
         table.heading.size() * 2 >= table.width && table.heading.size() > 1;
}

/// Temperature,20,40,60 over Ohms,480,230,120: the table lies on its side.
bool liesOnItsSide(const SampleTable& table) {
  bool temperature = false;
  bool resistance = false;
  for (const SampleRow* row : table.data()) {
    if (looksNumeric(row->cells.front())) continue;
    const HeadingMeaning said = headingMeaning(row->cells.front());
    temperature = temperature || said.role == Role::temperature;
    resistance = resistance || said.role == Role::resistance;
  }
  return temperature && resistance;
}

Expected<Proposal> proposeFor(std::string_view sample, std::string_view file, const ProposalHints& hints,
                              const Told& told) {
  const bool whole = hints.wholeFile && sample.size() <= kSampleBytes;
  const auto text = sampleText(sample.substr(0, kSampleBytes), whole, told.encoding, file);
  if (!text) return tl::make_unexpected(text.error());
  const auto table = sampleTable(*text, told.separator, file);
  if (!table) return tl::make_unexpected(table.error());
  const SampleRow& first = table->rows[table->first];
  const std::string where = fmt::format("{}:{}", file, first.line);
  if (table->width > kMostColumns)
    return refuse("csv-unreadable", where, fmt::format("{} columns", table->width),
                  fmt::format("at most {} columns", kMostColumns));
  if (commasBothWays(*table))
    return refuse("decimal-comma-unquoted", where,
                  fmt::format("{} cells under {} headings: {}", table->width, table->heading.size(), shown(first.text)),
                  "another separator or quotes, where the comma is the decimal mark as well");
  if (liesOnItsSide(*table))
    return refuse("readings-sideways", where, "temperatures and ohms along the lines",
                  "a reading a line: turn the table round and save it again");
  Proposal proposal;
  sayShape(*text, *table, proposal);
  std::vector<ColumnFacts> facts = columnFacts(*table);
  std::vector<std::string_view> cells = numberCells(facts, true);
  if (cells.empty()) cells = numberCells(facts, false);
  MarksTold marks = numberMarks(cells, table->separator == ';');
  if (told.marks) marks = {*told.marks, "you named it", {}, false, false, {}};
  const Proposal shapeOnly = proposal;
  const auto roles = [&] {
    proposal = shapeOnly;
    proposal.plan.decimal = marks.marks.decimal;
    proposal.plan.thousands = marks.marks.thousands;
    giveRoles(facts, hints, proposal);
  };
  roles();
  if (marks.open) {
    const char decimal = marks.marks.decimal;
    settleMarks(marks, facts, proposal.plan);
    if (marks.marks.decimal != decimal) roles();  // what was said of the numbers' sizes no longer holds
  }
  sayMarks(marks, proposal);
  sayBlankLines(*table, proposal);
  proposal.signature = signature(*table, proposal);
  return proposal;
}

}  // namespace

Expected<Proposal> propose(std::string_view sample, std::string_view file, const ProposalHints& hints) {
  auto untouched = proposeFor(sample, file, hints, {});
  if (hints.corrections.empty()) return untouched;
  const auto told = toldBy(hints.corrections, file);
  if (!told) return tl::make_unexpected(told.error());
  auto proposal = proposeFor(sample, file, hints, *told);
  if (!proposal) return proposal;
  if (untouched) proposal->signature = untouched->signature;
  if (const auto corrected = correct(hints.corrections, file, *proposal); !corrected)
    return tl::make_unexpected(corrected.error());
  return proposal;
}

}  // namespace ohmkin::exchange
