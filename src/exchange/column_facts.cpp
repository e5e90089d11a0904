#include <exchange/column_facts.h>
#include <exchange/moment.h>
#include <exchange/run_words.h>
#include <exchange/unit_words.h>

namespace ohmkin::exchange {
namespace {

constexpr std::size_t kMostRows = 2000;
constexpr std::size_t kMostWords = 64;

/// What stands behind the digits: the same whatever the marks are.
std::string_view unitBehind(std::string_view cell) {
  const std::string_view text = trimmedCell(cell);
  const std::size_t last = text.find_last_of("0123456789");
  if (last == std::string_view::npos) return {};
  std::string_view rest = text.substr(last + 1);
  while (rest.starts_with('.') || rest.starts_with(',')) rest.remove_prefix(1);
  return trimmedCell(rest);
}

void look(std::string_view cell, ColumnFacts& facts) {
  const std::string_view text = trimmedCell(cell);
  facts.cells.push_back(text);
  if (text.empty()) return;
  ++facts.filled;
  if (facts.words.size() < kMostWords) facts.words.insert(text);
  if (runWord(text)) ++facts.directions;
  const std::array<ColumnUnit, 3> orders{ColumnUnit::yearMonthDay, ColumnUnit::dayMonthYear, ColumnUnit::monthDayYear};
  bool date = false;
  for (std::size_t i = 0; i < orders.size(); ++i)
    if (momentCell(text, orders[i], {})) ++facts.dates[i], date = true;
  if (date) return;
  if (momentCell(text, ColumnUnit::clock, {})) {
    ++facts.clocks;
    return;
  }
  if (!looksNumeric(text)) return;
  ++facts.numbers;
  if (isOverload(text, {'.', '\0'}) || isOverload(text, {',', '\0'})) ++facts.overloads;
  const std::string_view unit = unitBehind(text);
  if (unit.empty()) return;
  if (const auto degrees = temperatureUnit(unit); degrees && !resistanceUnit(unit))
    ++facts.withDegrees, facts.cellDegrees = degrees;
  else if (resistanceUnit(unit)) ++facts.withOhms;
}

}  // namespace

std::vector<ColumnFacts> columnFacts(const SampleTable& table) {
  std::vector<ColumnFacts> columns(table.width);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    ColumnFacts& column = columns[i];
    if (i < table.heading.size()) {
      column.heading = trimmedCell(table.heading[i]);
      for (char& c : column.heading)
        if (c == '\n' || c == '\r' || c == '\t') c = ' ';
      column.said = headingMeaning(column.heading);
    }
    if (i >= table.unitsBelow.size()) continue;
    const std::string_view unit = table.unitsBelow[i];
    const auto degrees = temperatureUnit(unit);
    const auto ohms = resistanceUnit(unit);
    const auto time = timeUnit(unit);
    // K is kelvin or kilohm: there the heading decides. A unit says more than a word like "sender" above it.
    if (column.said.role == Role::time && time) column.unitBelow = time;
    else if (degrees && (!ohms || column.said.role == Role::temperature))
      column.unitBelow = degrees, column.said.role = Role::temperature;
    else if (ohms) column.unitBelow = ohms, column.said.role = Role::resistance;
    else if (time) column.unitBelow = time, column.said.role = Role::time;
  }
  std::size_t rows = 0;
  for (const SampleRow* row : table.data()) {
    if (rows++ == kMostRows) break;
    for (std::size_t i = 0; i < columns.size(); ++i) look(row->cells[i], columns[i]);
  }
  return columns;
}

std::vector<double> valuesOf(const ColumnFacts& column, Marks marks) {
  std::vector<double> values;
  for (const std::string_view cell : column.cells) {
    if (isOverload(cell, marks)) continue;
    if (const auto number = leadingNumber(cell, marks)) values.push_back(number->value);
  }
  return values;
}

}  // namespace ohmkin::exchange
