#include <csv.h>
#include <exchange/csv.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::exchange {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

struct Collecting {
  CsvRow row;
  bool ended = false;
};

extern "C" {
static void ohmkinCsvCell(void* bytes, size_t length, void* collecting) {
  auto& row = static_cast<Collecting*>(collecting)->row;
  if (bytes == nullptr) row.cells.emplace_back();
  else row.cells.emplace_back(static_cast<const char*>(bytes), length);
}
static void ohmkinCsvRowEnd(int, void* collecting) { static_cast<Collecting*>(collecting)->ended = true; }
static int ohmkinCsvNoBlank(unsigned char) { return 0; }
}

class Parser {
 public:
  Parser() {
    csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI);
    // libcsv would take blanks off unquoted cells: they are complained of instead.
    csv_set_space_func(&parser_, ohmkinCsvNoBlank);
  }
  ~Parser() { csv_free(&parser_); }
  Parser(const Parser&) = delete;
  Parser& operator=(const Parser&) = delete;

  bool feed(std::string_view piece, Collecting& into) {
    return csv_parse(&parser_, piece.data(), piece.size(), ohmkinCsvCell, ohmkinCsvRowEnd, &into) == piece.size();
  }
  bool finish(Collecting& into) { return csv_fini(&parser_, ohmkinCsvCell, ohmkinCsvRowEnd, &into) == 0; }

 private:
  csv_parser parser_{};
};

}  // namespace

Expected<void> readCsv(std::string_view text, std::string_view file, const std::function<bool(CsvRow&)>& row) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  Parser parser;
  Collecting collecting;
  std::size_t line = 1;
  const auto badQuote = [&](std::size_t at) {
    return refuse("csv-unreadable", fmt::format("{}:{}", file, at), "a double quote out of place",
                  "quotes around a whole cell, and doubled inside it");
  };
  // libcsv counts no lines, so it is fed one at a time; a row may span several.
  std::size_t begins = 1;
  bool inside = false;
  const auto handOver = [&] {
    inside = false;
    collecting.ended = false;
    collecting.row.line = begins;
    const bool goOn = row(collecting.row);
    collecting.row.cells.clear();
    return goOn;
  };
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size() - 1) + 1;
    const std::string_view piece = text.substr(0, end);
    text.remove_prefix(end);
    if (!inside && piece != "\n" && piece != "\r") {
      begins = line;
      inside = true;
    }
    if (!parser.feed(piece, collecting)) return badQuote(line);
    const bool carriageReturnOfTwo = piece.back() == '\r' && !text.empty() && text.front() == '\n';
    if ((piece.back() == '\n' || piece.back() == '\r') && !carriageReturnOfTwo) ++line;
    if (collecting.ended && !handOver()) return {};
  }
  if (!parser.finish(collecting)) return badQuote(begins);
  if (collecting.ended) handOver();
  return {};
}

}  // namespace ohmkin::exchange
