#include <cli/table_text.h>
#include <fmt/format.h>
#include <algorithm>

namespace ohmkin::cli {
namespace {

std::size_t columnsOf(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string rightAligned(const std::string& text, std::size_t width) {
  const std::size_t columns = columnsOf(text);
  return columns < width ? std::string(width - columns, ' ') + text : text;
}

std::string shown(const gauge::Reading& reading, const DisplayUnits& units) {
  switch (reading.where) {
    case gauge::Where::belowTheMarks:
      return "below marks";
    case gauge::Where::pastTheMarks:
      return "past marks";
    case gauge::Where::onTheMarks:
      break;
  }
  return print(reading.shown, units);
}

}  // namespace

std::string wrapped(std::string_view text, std::size_t indent, std::size_t firstIndent) {
  std::string out(firstIndent, ' ');
  std::size_t column = firstIndent;
  while (!text.empty()) {
    const auto blank = text.find(' ');
    const std::string_view word = text.substr(0, blank);
    text = blank == std::string_view::npos ? std::string_view{} : text.substr(blank + 1);
    const std::size_t width = columnsOf(word);
    if (column > indent && column + width > kColumns) {
      while (out.back() == ' ') out.pop_back();
      out += "\n" + std::string(indent, ' ');
      column = indent;
    }
    out += word;
    column += width;
    if (!text.empty()) out += ' ', ++column;
  }
  return out + "\n";
}

std::string errorTableText(const pairing::ErrorTable& table, const DisplayUnits& units, std::size_t mostRows) {
  std::string out = "      true    indicated      error   ± (k = 2)\n";
  const std::size_t last = table.rows.size() - 1;
  const std::size_t rows = std::min(mostRows, table.rows.size());
  for (std::size_t i = 0; i < rows; ++i) {
    const auto& row = table.rows[rows > 1 ? i * last / (rows - 1) : 0];
    out += fmt::format("{}{}{}{}{}\n", rightAligned(print(row.trueTemperature, units), 10),
                       rightAligned(shown(row.indicated, units), 13),
                       rightAligned(printDifference(row.error, units, 1), 11),
                       rightAligned(printAmount(row.uncertainty.total(), units, 1), 12),
                       row.extrapolated || row.indicated.extrapolated ? "   continued beyond the curve" : "");
  }
  return out;
}

std::string hotWarningText(const pairing::HotWarning& hot, const DisplayUnits& units) {
  if (const auto* reaches = std::get_if<pairing::Reaches>(&hot)) {
    const double late = inKelvin(reaches->late);
    const std::string amount = printAmount(reaches->late, units, 1);
    return fmt::format("the needle reaches the hot mark at {}, {} (± {})", print(reaches->at, units),
                       late > pairing::kOnTime    ? amount + " late"
                       : late < -pairing::kOnTime ? amount + " early"
                                                  : "on time",
                       printAmount(reaches->uncertainty.mismatch, units, 1));
  }
  if (const auto* never = std::get_if<pairing::NeverReaches>(&hot))
    return fmt::format("the needle has not reached the hot mark where the sender's curve ends, at {}: at least {} late",
                       print(never->curveEnds, units), printAmount(never->atLeastLate, units, 1));
  const auto& past = std::get<pairing::PastAlready>(hot);
  return fmt::format("the needle is past the hot mark already at {}: at least {} early", print(past.curveBegins, units),
                     printAmount(past.atLeastEarly, units, 1));
}

}  // namespace ohmkin::cli
