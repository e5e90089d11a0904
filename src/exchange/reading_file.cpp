#include <exchange/csv.h>
#include <exchange/reading_file.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>

namespace ohmkin::exchange {
namespace {

struct Columns {
  std::optional<std::size_t> temperature, ohms, direction;
  std::string temperatureUnit;  ///< put behind a bare number
  std::string ohmsUnit;
};

Columns columnsOf(const CsvRow& header, TemperatureUnit bare) {
  Columns columns;
  columns.temperatureUnit = bare == TemperatureUnit::celsius ? "C" : "F";
  for (std::size_t i = 0; i < header.cells.size(); ++i) {
    const std::string name = folded(header.cells[i]);  // "Temperature (°C)" → temperature°c with the sign's bytes kept
    const auto begins = [&](std::string_view beginning) { return name.starts_with(beginning); };
    if (begins("direction") || begins("run")) {
      columns.direction = i;
    } else if (begins("temp") || name == "t" || name == "tc" || name == "tf" || name == "tk") {
      columns.temperature = i;
      if (name.ends_with('c')) columns.temperatureUnit = "C";
      else if (name.ends_with('f')) columns.temperatureUnit = "F";
      else if (name.ends_with('k')) columns.temperatureUnit = "K";
    } else if (begins("ohm") || begins("res") || name == "r" || name == "kohm" || begins("kohm") || begins("rk")) {
      columns.ohms = i;
      if (begins("kohm") || name.ends_with("kohm") || name.ends_with("kohms") || begins("rk")) columns.ohmsUnit = "k";
    }
  }
  return columns;
}

bool bareNumber(const std::string& cell) { return cell.find_first_not_of("0123456789.,+-eE \t") == std::string::npos; }

class ReadingReader {
 public:
  ReadingReader(const std::string& file, TemperatureUnit bare) : file_(file), bare_(bare) {}

  bool take(const CsvRow& row) {
    if (!columns_) return header(row);
    if (readings_.size() == kMostReadings) {
      complaints_.add("readings-too-many", at(row, 0), "more than that", fmt::format("at most {} readings", kMostReadings));
      return false;
    }
    const std::string degrees = cell(row, *columns_->temperature);
    const auto t = parseTemperature(bareNumber(degrees) ? degrees + columns_->temperatureUnit : degrees, bare_, at(row, *columns_->temperature));
    const std::string resistance = cell(row, *columns_->ohms);
    const auto r = parseOhms(bareNumber(resistance) ? resistance + columns_->ohmsUnit : resistance, at(row, *columns_->ohms));
    if (!t) complaints_.add(t.error());
    if (!r) complaints_.add(r.error());
    bool cooling = false;
    if (columns_->direction) {
      const std::string direction = folded(cell(row, *columns_->direction));
      cooling = direction.starts_with("cool") || direction == "down" || direction == "falling";
      const bool heating = direction.empty() || direction.starts_with("heat") || direction == "up" || direction == "rising";
      if (!cooling && !heating) complaints_.add("direction-unknown", at(row, *columns_->direction), "'" + direction + "'", "heating or cooling");
    }
    if (t && r) readings_.push_back({*t, *r, cooling});
    return true;
  }

  tl::expected<std::vector<FileReading>, Complaints> result() {
    if (complaints_.none() && !columns_) complaints_.add("readings-empty", file_, "no line", "a header and a reading a line");
    if (!complaints_.none()) return tl::make_unexpected(std::move(complaints_));
    return std::move(readings_);
  }
  Complaints& complaints() { return complaints_; }

 private:
  bool header(const CsvRow& row) {
    columns_ = columnsOf(row, bare_);
    if (columns_->temperature && columns_->ohms) return true;
    std::string names;
    for (const std::string& name : row.cells) names += (names.empty() ? "" : ", ") + name.substr(0, 40);
    complaints_.add("readings-header", fmt::format("{}:{}", file_, row.line), fmt::format("columns {}", names),
                    "a column 'temperature_c' (or _f, _k) and a column 'ohms'");
    return false;
  }
  static std::string cell(const CsvRow& row, std::size_t column) { return column < row.cells.size() ? row.cells[column] : std::string(); }
  std::string at(const CsvRow& row, std::size_t column) const { return fmt::format("{}:{}:{}", file_, row.line, column + 1); }

  const std::string& file_;
  TemperatureUnit bare_;
  std::optional<Columns> columns_;
  std::vector<FileReading> readings_;
  Complaints complaints_;
};

}  // namespace

tl::expected<std::vector<FileReading>, Complaints> readReadings(std::string_view text, const std::string& file, TemperatureUnit bare) {
  ReadingReader reader(file, bare);
  if (text.size() > kLargestReadingFile) {
    reader.complaints().add("readings-too-large", file, fmt::format("{} bytes", text.size()), fmt::format("at most {} bytes", kLargestReadingFile));
    return reader.result();
  }
  if (const auto read = readCsv(text, file, [&](CsvRow& row) { return reader.take(row); }); !read) reader.complaints().add(read.error());
  return reader.result();
}

}  // namespace ohmkin::exchange
