#include "reference_table.h"

#include <charconv>
#include <fstream>
#include <stdexcept>

namespace ohmkin::test {
namespace {

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') quoted = !quoted;
    else if (c == ',' && !quoted) out.emplace_back();
    else if (c != '\r') out.back() += c;
  }
  return out;
}

}  // namespace

ReferenceTable::ReferenceTable(const std::string& name) {
  std::ifstream file(std::string(OHMKIN_TEST_DATA "/") + name);
  if (!file) throw std::runtime_error("tests/data/" + name + " cannot be read");
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string> row = cells(line);
    if (columns_.empty()) {
      for (std::size_t i = 0; i < row.size(); ++i) columns_[row[i]] = i;
    } else {
      row.resize(columns_.size());
      rows_.push_back(std::move(row));
    }
  }
}

const std::string& ReferenceTable::text(std::size_t row, const std::string& column) const {
  return rows_.at(row).at(columns_.at(column));
}

double ReferenceTable::number(std::size_t row, const std::string& column) const {
  const std::string& cell = text(row, column);
  double value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc{} || end != cell.data() + cell.size())
    throw std::runtime_error("not a number in column " + column + ": " + cell);
  return value;
}

}  // namespace ohmkin::test
