#include <exchange/cell.h>
#include <exchange/csv.h>
#include <exchange/row_rules.h>
#include <exchange/shown.h>
#include <exchange/table_reader.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <algorithm>

namespace ohmkin::exchange {
namespace {

class TableReader {
 public:
  TableReader(const Limits& limits, Table& table, Complaints& complaints)
      : limits_(limits), table_(table), complaints_(complaints) {}

  bool take(CsvRow& row) {
    if (!headed_) return readHeader(row);
    if (table_.size() >= limits_.rows) {
      complaints_.add("table-too-long", at(row.line), "more rows", fmt::format("at most {}", limits_.rows));
      return false;
    }
    readRow(row);
    return true;
  }
  [[nodiscard]] bool sound() const { return headed_ && sound_; }

 private:
  [[nodiscard]] std::string at(std::size_t line) const { return fmt::format("{}:{}", table_.file, line); }
  [[nodiscard]] std::string at(std::size_t line, const std::string& column) const { return at(line) + ":" + column; }

  bool readHeader(const CsvRow& row) {
    headed_ = true;
    std::vector<std::string> known;
    known.reserve(table_.definition->fields.size());
    for (const FieldDefinition& field : table_.definition->fields) known.push_back(field.name);
    for (const std::string& name : row.cells) {
      const FieldDefinition* field = table_.definition->field(name);
      if (field == nullptr) {
        complain(row.line, "column-unknown", shown(name),
                 "a column of the table " + table_.definition->name + perhaps(nearMisses(name, known)));
      } else if (std::find(table_.columns.begin(), table_.columns.end(), name) != table_.columns.end()) {
        complain(row.line, "column-twice", shown(name), "each column once");
      } else {
        table_.columns.push_back(name);
        fields_.push_back(field);
      }
    }
    for (const FieldDefinition& field : table_.definition->fields)
      if (field.required && std::find(table_.columns.begin(), table_.columns.end(), field.name) == table_.columns.end())
        complain(row.line, "column-missing", "no column " + field.name, "a column " + field.name);
    return sound_;
  }

  void complain(std::size_t line, std::string code, std::string found, std::string expected) {
    complaints_.add(std::move(code), at(line), std::move(found), std::move(expected));
    sound_ = false;
  }

  void readRow(const CsvRow& row) {
    if (row.cells.size() != fields_.size()) {
      complaints_.add("row-width", at(row.line), fmt::format("{} cells", row.cells.size()),
                      fmt::format("{}, as many as columns", fields_.size()));
      return;
    }
    table_.lines.push_back(row.line);
    bool whole = true;
    for (std::size_t c = 0; c < fields_.size(); ++c) {
      auto cell = readCell(row.cells[c], *fields_[c], limits_.cellBytes);
      if (!cell) {
        complaints_.add(cell.error().code, at(row.line, fields_[c]->name),
                        row.cells[c].empty() ? "an empty cell" : shown(row.cells[c]), cell.error().expected);
        whole = false;
      }
      table_.cells.push_back(cell ? std::move(*cell) : Cell{});
    }
    if (whole) checkRowRules(table_, complaints_);
  }

  const Limits& limits_;
  Table& table_;
  Complaints& complaints_;
  std::vector<const FieldDefinition*> fields_;
  bool headed_ = false;
  bool sound_ = true;
};

}  // namespace

bool readTable(std::string_view text, const Limits& limits, Table& table, Complaints& complaints) {
  TableReader reader(limits, table, complaints);
  const auto read = readCsv(text, table.file, [&](CsvRow& row) { return reader.take(row); });
  if (!read) {
    complaints.add(read.error());
    return false;
  }
  if (table.columns.empty() && text.find_first_not_of("\r\n\xEF\xBB\xBF") == std::string_view::npos)
    complaints.add("table-empty", table.file, "an empty file", "a first line with the names of the columns");
  return reader.sound();
}

}  // namespace ohmkin::exchange
