#include <fmt/format.h>
#include <quantity/decimal_mark.h>
#include <algorithm>
#include <atomic>

namespace ohmkin {
namespace {

std::atomic<DecimalMark> chosen = DecimalMark::point;

}  // namespace

void writeDecimalsWith(DecimalMark mark) { chosen = mark; }

std::string fixedDecimals(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (chosen == DecimalMark::comma) std::replace(text.begin(), text.end(), '.', ',');
  return text;
}

}  // namespace ohmkin
