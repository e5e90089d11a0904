#include <exchange/heading_words.h>
#include <exchange/reading_cell.h>
#include <exchange/record_reader.h>
#include <exchange/sample_table.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <map>
#include <sstream>

namespace ohmkin::exchange {
namespace {

constexpr std::array<std::string_view, 5> kComments{"#", "//", "%", "!", "*"};
constexpr std::size_t kMostBadRows = 50;

std::string_view commentOf(std::string_view line) {
  const std::string_view text = trimmedCell(line);
  for (const std::string_view mark : kComments)
    if (text.starts_with(mark)) return mark;
  return {};
}

/// A separator other than the one tried between two digits: the row has been cut at the wrong places.
bool holdsSeparator(std::string_view cell, char tried) {
  // 20,5 480,3 cut at its commas leaves "5 480"; where commas separate, blanks do not mark thousands.
  const bool bare = cell.find_first_not_of("0123456789. ") == std::string_view::npos;
  for (std::size_t i = 1; i + 1 < cell.size(); ++i) {
    if (std::string_view(";\t|").find(cell[i]) != std::string_view::npos && cell[i] != tried) return true;
    if (bare && tried == ',' && cell[i] == ' ' && cell[i - 1] != ' ' &&
        cell.find_first_not_of(' ', i) != std::string_view::npos)
      return true;
  }
  return false;
}

/// Cut by one separator. A row that cannot be cut (a title with quotes in it) stands as it is.
Expected<std::vector<SampleRow>> cut(const SampleText& sample, char separator, std::string_view file) {
  std::vector<SampleRow> rows;
  std::size_t from = 0;
  std::size_t linesBefore = 0;
  for (std::size_t bad = 0;; ++bad) {
    std::istringstream in(sample.text.substr(from));
    TextSource source(in, "utf-8");
    RecordReader reader(source, separator, sample.carriageReturns, file);
    Record record;
    for (;;) {
      const auto more = reader.next(record);
      if (!more && (bad == kMostBadRows || more.error().found.find("a double quote") == std::string::npos))
        return tl::make_unexpected(more.error());
      if (!more) break;
      if (!*more) return rows;
      SampleRow row;
      row.line = linesBefore + record.line;
      row.text = record.text.substr(0, record.text.find_first_of("\r\n"));
      row.cells.assign(record.cells.begin(), record.cells.end());
      row.blank = record.blank();
      rows.push_back(std::move(row));
    }
    for (std::size_t i = 0; i <= reader.lines(); ++i) {
      const std::size_t end = sample.text.find(sample.carriageReturns ? '\r' : '\n', from);
      if (i == reader.lines())
        rows.push_back({linesBefore + i + 1,
                        sample.text.substr(from, std::min(end - from, std::size_t{400})),
                        {},
                        0,
                        false,
                        false,
                        false});
      if (end == std::string::npos) return rows;
      from = end + 1;
    }
    linesBefore += reader.lines() + 1;
  }
}

/// Marks the rows of numbers; how many there are.
std::size_t weigh(std::vector<SampleRow>& rows, char separator, std::size_t& width) {
  std::map<std::size_t, std::size_t> widths;
  for (SampleRow& row : rows) {
    const bool quotes = row.text.find('"') != std::string::npos;
    bool wrong = false;
    for (const std::string& cell : row.cells) {
      wrong = wrong || (!quotes && holdsSeparator(cell, separator));
      if (looksNumeric(cell, separator != ',' || quotes)) ++row.numbers;
    }
    row.data = !wrong && row.numbers >= 2;
    if (row.data) ++widths[row.cells.size()];
  }
  const auto most =
      std::max_element(widths.begin(), widths.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  if (most == widths.end()) return 0;
  width = most->first;
  for (SampleRow& row : rows) row.data = row.data && row.cells.size() == width;
  return most->second;
}

/// sep=; on the first line.
std::optional<char> namedSeparator(const SampleText& sample) {
  const std::string_view text = trimmedCell(std::string_view(sample.text).substr(0, sample.text.find_first_of("\r\n")));
  const std::string_view line =
      text.starts_with('"') && text.ends_with('"') && text.size() > 1 ? text.substr(1, text.size() - 2) : text;
  if (line.size() < 4 || (line.substr(0, 4) != "sep=" && line.substr(0, 4) != "SEP=")) return {};
  if (line.size() == 4)
    return sample.text.starts_with("sep=\t") || sample.text.starts_with("SEP=\t") ? std::optional('\t') : std::nullopt;
  return line.size() == 5 && std::string_view(",;|").find(line[4]) != std::string_view::npos ? std::optional(line[4])
                                                                                             : std::nullopt;
}

/// Serial numbers as headings look like numbers: they are not, where the row below has a number in place of a word.
bool headsColumns(const SampleRow& row, const SampleRow& below) {
  for (std::size_t i = 0; i < row.cells.size() && i < below.cells.size(); ++i) {
    const bool word = !trimmedCell(row.cells[i]).empty() && !looksNumeric(row.cells[i]);
    if (word && looksNumeric(below.cells[i]) && headingMeaning(row.cells[i]).role) return true;
  }
  return false;
}

bool onlyUnits(const SampleRow& row) {
  std::size_t units = 0;
  for (const std::string& cell : row.cells) {
    const std::string_view text = trimmedCell(cell);
    if (text.empty() || text == "-") continue;
    if (!temperatureUnit(text) && !resistanceUnit(text) && !timeUnit(text) && text.find(':') == std::string_view::npos)
      return false;
    ++units;
  }
  return units > 0;
}

std::size_t filled(const SampleRow& row) {
  return static_cast<std::size_t>(std::count_if(row.cells.begin(), row.cells.end(),
                                                [](const std::string& cell) { return !trimmedCell(cell).empty(); }));
}

void findHeading(SampleTable& table) {
  std::size_t above = table.first;
  while (above > 0 &&
         (table.rows[above - 1].blank || (table.rows[above - 1].comment && filled(table.rows[above - 1]) < 2)))
    --above;
  table.skip = table.rows[table.first].line - 1;
  if (above == 0) return;
  const auto take = [&](std::size_t at) {
    SampleRow& row = table.rows[at];
    table.heading = headingNames(row.cells, row.text, table.separator, row.comment ? table.comment : "", table.width);
    table.skip = row.line - 1;
  };
  const auto named = [](const SampleRow& row) {
    return std::any_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) {
      return headingMeaning(trimmedCell(cell).starts_with('#') ? trimmedCell(cell).substr(1) : std::string_view(cell))
          .role.has_value();
    });
  };
  const SampleRow& last = table.rows[above - 1];
  if (filled(last) < 2 || last.numbers >= 2) return;
  // What stands between heading and numbers (blank lines, comments) would be rows: only the reader knows how to pass
  // them over.
  if (above >= 2 && onlyUnits(last) && filled(table.rows[above - 2]) >= 2 && !table.rows[above - 2].data) {
    take(above - 2);
    table.unitsBelow = last.cells;
    table.headingRows = 2;
  } else if (!last.comment || named(last)) {
    take(above - 1);
    table.headingRows = 1;
  }
}

}  // namespace

std::vector<std::string> headingNames(std::vector<std::string> cells, std::string_view text, char separator,
                                      std::string_view comment, std::size_t width) {
  if (cells.empty()) return cells;
  const std::string_view first = trimmedCell(cells.front());
  if (!comment.empty() && first.starts_with(comment)) {
    cells.front() = std::string(trimmedCell(first.substr(comment.size())));
    if (cells.front().empty() && cells.size() > width) cells.erase(cells.begin());
    if (trimmedCell(text).starts_with(comment)) text = trimmedCell(text).substr(comment.size());
  }
  if (separator != ' ' || cells.size() == width) return cells;
  std::vector<std::string> wide;
  for (text = trimmedCell(text); !text.empty(); text = trimmedCell(text)) {
    const std::size_t end = std::min(text.find("  "), std::min(text.find('\t'), text.size()));
    wide.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return wide.size() == width ? wide : std::vector<std::string>();
}

std::vector<const SampleRow*> SampleTable::data() const {
  std::vector<const SampleRow*> found;
  for (std::size_t i = first; i < rows.size(); ++i)
    if (rows[i].data) found.push_back(&rows[i]);
  return found;
}

bool looksNumeric(std::string_view cell, bool blankGroups) {
  const std::string_view text = trimmedCell(cell);
  if (text.empty() || text.size() > 60) return false;
  if (bareNumber(text, {'.', '\0'}) || bareNumber(text, {',', '\0'})) return true;  // most cells
  if (isOverload(text, {'.', '\0'}) || isOverload(text, {',', '\0'})) return true;
  for (const char decimal : {'.', ','}) {
    for (const char thousands : {'\0', ' ', '\'', decimal == '.' ? ',' : '.'}) {
      if (thousands == ' ' && !blankGroups) continue;
      const auto number = leadingNumber(text, {decimal, thousands});
      if (!number) continue;
      const std::string_view rest = number->rest;
      if (rest.empty() || temperatureUnit(rest) || resistanceUnit(rest) || timeUnit(rest)) return true;
      if (std::string_view("kKMR").find(rest.front()) != std::string_view::npos &&
          ohmsCell(text, ColumnUnit::ohm, {decimal, thousands}))
        return true;
    }
  }
  return false;
}

Expected<SampleTable> sampleTable(const SampleText& sample, std::optional<char> told, std::string_view file) {
  const auto named = told ? told : namedSeparator(sample);
  SampleTable best;
  std::size_t most = 0;
  std::optional<Refusal> refusal;
  // In this order: each of the earlier ones is rarer inside a number or a name than those after it.
  for (const char separator : {'\t', ';', '|', ',', ' '}) {
    if (named && separator != *named) continue;
    auto rows = cut(sample, separator, file);
    if (!rows) {
      if (!refusal) refusal = rows.error();
      continue;
    }
    std::size_t width = 0;
    const std::size_t found = weigh(*rows, separator, width);
    if (found <= most) continue;
    most = found;
    best.separator = separator;
    best.rows = std::move(*rows);
    best.width = width;
  }
  if (most == 0) {
    if (refusal) return tl::make_unexpected(*refusal);
    return refuse("readings-none", std::string(file), "no row with two numbers",
                  "rows of temperature and resistance, separated by comma, semicolon, tab, | or blanks");
  }
  best.separatorReason = told    ? "you named it"
                         : named ? "the first line names it"
                                 : fmt::format("it makes rows of {} cells, {} of them", best.width, most);
  for (SampleRow& row : best.rows) {
    const std::string_view mark = commentOf(row.text);
    if (mark.empty() || row.data || (!best.comment.empty() && best.comment != mark)) continue;
    best.comment = mark;
    row.comment = true;
  }
  best.first = static_cast<std::size_t>(
      std::find_if(best.rows.begin(), best.rows.end(), [](const SampleRow& row) { return row.data; }) -
      best.rows.begin());
  if (best.first + 1 < best.rows.size() && best.rows[best.first + 1].data &&
      headsColumns(best.rows[best.first], best.rows[best.first + 1])) {
    best.rows[best.first].data = false;
    best.rows[best.first].numbers = 0;
    ++best.first;
  }
  findHeading(best);
  return best;
}

}  // namespace ohmkin::exchange
