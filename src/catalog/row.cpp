#include <catalog/row.h>
#include <fmt/format.h>
#include <charconv>

namespace ohmkin::catalog {

std::string Row::text() {
  const SQLite::Column column = next();
  const char* bytes = column.getText();
  return {bytes, static_cast<std::size_t>(column.getBytes())};
}

double Row::number() { return next().getDouble(); }
int Row::whole() { return next().getInt(); }
std::int64_t Row::longWhole() { return next().getInt64(); }

std::optional<double> Row::maybeNumber() {
  const SQLite::Column column = next();
  if (column.isNull()) return {};
  return column.getDouble();
}

std::optional<int> Row::maybeWhole() {
  const SQLite::Column column = next();
  if (column.isNull()) return {};
  return column.getInt();
}

std::vector<double> Row::numbers() {
  const std::string all = text();
  std::vector<double> values;
  const char* at = all.data();
  const char* const end = at + all.size();
  while (true) {
    while (at != end && *at == ' ') ++at;
    if (at == end) return values;
    double value = 0;
    const auto [after, error] = std::from_chars(at, end, value);
    if (error != std::errc{} || (after != end && *after != ' ')) damaged(all);
    values.push_back(value);
    at = after;
  }
}

std::optional<Date> Row::maybeDate() {
  const std::string iso = text();
  if (iso.empty()) return {};
  const auto day = parseDate(iso);
  if (!day) damaged(iso);
  return *day;
}

Date Row::date() {
  const auto day = maybeDate();
  if (!day) damaged("");
  return *day;
}

ModelYearSpan Row::modelYears() {
  const int from = whole();
  return {{from}, {whole()}};
}

DateSpan Row::dates() {
  auto from = maybeDate();
  return {from, maybeDate()};
}

void Row::damaged(const std::string& found) const {
  throw CatalogueError({"catalogue-damaged", connection_.file().string(),
                        fmt::format("'{}' as {}", found.substr(0, 80), statement_.getColumnName(column_ - 1)),
                        "a value the catalogue's own rules allow; go back to your last copy of it"});
}

std::string loweredName(std::string_view name) {
  const auto from = name.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  std::string lowered(name.substr(from, name.find_last_not_of(" \t\r\n") - from + 1));
  for (char& c : lowered)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lowered;
}

std::string plainNumber(std::string_view number) {
  std::string plain;
  for (const char c : number) {
    if (c == ' ' || c == '-' || c == '.' || c == '/') continue;
    plain += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  return plain;
}

}  // namespace ohmkin::catalog
