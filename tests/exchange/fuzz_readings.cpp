#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string_view>

using namespace ohmkin;
using namespace ohmkin::exchange;

namespace {

void hold(bool so) {
  if (!so) std::abort();
}

class Checking : public ReadingSink {
 public:
  bool row(const ReadingRow& row) override {
    ++rows;
    hold(inKelvin(row.at) > 0 && inCelsius(row.at) <= 1000.001);
    if (row.ohms) hold(inOhms(*row.ohms) > 0 && std::isfinite(inOhms(*row.ohms)));
    if (row.seconds) hold(std::isfinite(*row.seconds));
    hold(row.line >= line_);
    line_ = row.line;
    return rows < 5000;
  }
  bool rejected(const RejectedCell& cell) override {
    hold(cell.column >= 1 && cell.text.size() < 400 && !cell.expected.empty());
    return true;
  }
  std::uint64_t rows = 0;

 private:
  std::uint64_t line_ = 1;
};

void readBy(const ReadingPlan& plan, std::string_view text) {
  std::istringstream in{std::string(text)};
  Checking sink;
  if (const auto tally = readRows(in, plan, "fuzz.csv", sink))
    hold(tally->rows == sink.rows && tally->bytes <= text.size());
}

}  // namespace

/// The first byte chooses what the person says; the rest is the file.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static constexpr std::array<const char*, 8> corrections{
      "",
      "",
      "temperature=1:K, resistance=2:kohm",
      "encoding=windows-1252, separator=semicolon",
      "encoding=utf-16be",
      "separator=blank, decimal=comma, thousands=point",
      "time=1:dmy, temperature=2:F, resistance=3, curve=4, parts=blank-line",
      "lines=cr, comment=//, skip=1, heading=2"};
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  const std::string said = corrections[data[0] % corrections.size()];
  if (const auto proposal = propose(text, "fuzz.csv", {TemperatureUnit::celsius, data[0] % 16 < 8, said})) {
    const auto again = parsePlan(planText(proposal->plan));
    hold(again && *again == proposal->plan);
    hold(proposal->columns.size() == proposal->plan.columns.size() && proposal->signature.size() == 32);
    for (const PlanQuestion& question : proposal->questions)
      for (const std::string& answer : question.answers) hold(parsePlan(answer, proposal->plan).has_value());
    readBy(proposal->plan, text);
  }
  // A remembered plan meets a file of another habit.
  if (const auto plan = parsePlan("temperature=1:C, resistance=2:ohm, " + said)) readBy(*plan, text);
  // Whatever a person types as a correction is refused or understood.
  if (const auto plan = parsePlan(text.substr(0, 200))) hold(parsePlan(planText(*plan)).has_value());
  return 0;
}
