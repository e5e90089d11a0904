#include <circuit/data_table.h>

#include <csv.h>
#include <embedded/ohmkin_circuit_data.h>
#include <fmt/core.h>
#include <algorithm>
#include <charconv>
#include <limits>
#include <memory>

namespace ohmkin::circuit {
namespace {

struct Rows {
  std::vector<std::vector<std::string>> rows{1};
  static void field(void* bytes, std::size_t length, void* self) {
    static_cast<Rows*>(self)->rows.back().emplace_back(bytes == nullptr ? "" : static_cast<const char*>(bytes), length);
  }
  static void row(int, void* self) { static_cast<Rows*>(self)->rows.emplace_back(); }
};

std::string withoutComments(std::string_view text) {
  std::string kept;
  for (const std::string& line : split(text, '\n'))
    if (!line.starts_with('#')) kept += line + '\n';
  return kept;
}

std::vector<std::vector<std::string>> rowsOf(std::string_view text) {
  const std::string plain = withoutComments(text);
  Rows rows;
  csv_parser parser;
  csv_init(&parser, CSV_APPEND_NULL);
  const std::unique_ptr<csv_parser, void (*)(csv_parser*)> owner(&parser, &csv_free);
  csv_parse(&parser, plain.data(), plain.size(), &Rows::field, &Rows::row, &rows);
  csv_fini(&parser, &Rows::field, &Rows::row, &rows);
  rows.rows.pop_back();
  return rows.rows;
}

}  // namespace

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(at), text.size());
    parts.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

std::optional<double> ohmsFrom(std::string_view text) {
  if (text == "open") return std::numeric_limits<double>::infinity();
  if (text == "short") return 0;
  double number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

Expected<DataTable> DataTable::embedded(std::string_view name) {
  const auto files = circuit_data::files();
  const auto file = std::find_if(files.begin(), files.end(), [&](const auto& f) { return f.name == name; });
  if (file == files.end()) return refuse("data-missing", std::string(name), "no such file", "one compiled in");
  DataTable table;
  table.name_ = name;
  table.rows_ = rowsOf(file->text);
  if (table.rows_.empty()) return refuse("data-empty", table.name_, "no rows", "a header row");
  table.columns_ = table.rows_.front();
  table.rows_.erase(table.rows_.begin());
  for (const auto& row : table.rows_)
    if (row.size() != table.columns_.size())
      return refuse("data-row", table.name_, fmt::format("{} cells in the row of '{}'", row.size(), row.front()),
                    fmt::format("{} cells", table.columns_.size()));
  return table;
}

const std::string& DataTable::text(std::size_t row, std::string_view column) const {
  static const std::string kNone;
  const auto found = std::find(columns_.begin(), columns_.end(), column);
  return found == columns_.end() ? kNone : rows_[row][static_cast<std::size_t>(found - columns_.begin())];
}

Expected<double> DataTable::number(std::size_t row, std::string_view column) const {
  const auto found = ohmsFrom(text(row, column));
  if (!found) return wrong(row, column, "a number");
  return *found;
}

Expected<std::vector<double>> DataTable::numbers(std::size_t row, std::string_view column) const {
  std::vector<double> all;
  for (const std::string& word : words(row, column)) {
    const auto found = ohmsFrom(word);
    if (!found) return wrong(row, column, "numbers, 'open' or 'short', with | between them");
    all.push_back(*found);
  }
  return all;
}

std::vector<std::string> DataTable::words(std::size_t row, std::string_view column) const {
  return split(text(row, column), '|');
}

tl::unexpected<Refusal> DataTable::wrong(std::size_t row, std::string_view column, std::string expected) const {
  return refuse("data-cell", fmt::format("{}:{}:{}", name_, rows_[row].front(), column), text(row, column),
                std::move(expected));
}

}  // namespace ohmkin::circuit
