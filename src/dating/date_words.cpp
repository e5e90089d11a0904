#include <dating/date_words.h>
#include <dating/day_distribution.h>
#include <dating/evidence.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

namespace ohmkin::dating {
namespace {

std::string counted(long number, const char* unit) {
  static constexpr std::array<std::string_view, 13> kWords{"no",    "one",   "two",  "three", "four",   "five",  "six",
                                                           "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  const std::string figure =
      number < 13 ? std::string(kWords[static_cast<std::size_t>(number)]) : fmt::format("{}", number);
  return fmt::format("{} {}{}", figure, unit, number == 1 ? "" : "s");
}

}  // namespace

std::string plainInterval(std::int64_t interval) {
  const double whole = static_cast<double>(std::abs(interval));
  if (whole >= 1.5 * 365) return counted(std::lround(whole / 365.2425), "year");
  if (whole >= 91) return counted(std::lround(whole / 30.44), "month");
  return counted(std::lround(whole), "day");
}

std::string percent(double probability) {
  if (probability > 0.995) return "over 99 %";
  if (probability < 0.005) return "under 1 %";
  return fmt::format("{:.0f} %", probability * 100);
}

std::string eraSummary(const DayDistribution& when) {
  if (when.empty()) return "not known";
  std::string decades;
  constexpr std::size_t kNamed = 3;  // a code without its decade fits all of them: nobody wants them read out
  const std::vector<DecadeShare> shares = when.decades();
  const auto likely = std::ranges::count_if(shares, [](const DecadeShare& share) { return share.probability > 0.05; });
  if (static_cast<std::size_t>(likely) > kNamed) {
    const auto [first, last] = std::ranges::minmax(shares, {}, &DecadeShare::decade);
    return fmt::format("any decade from the {}s to the {}s, none above {}, not settled", first.decade, last.decade,
                       percent(shares.front().probability));
  }
  for (const DecadeShare& share : shares)
    if (decades.empty() || share.probability > 0.05)
      decades += fmt::format("{}{}s ({})", decades.empty() ? "" : " or ", share.decade, percent(share.probability));
  // Where no decade leads, the most probable day is only the first of equals.
  if (shares.front().probability < 0.5) return decades + ", not settled";
  return fmt::format("{}, most probably {}", decades, plainDate(when.mostProbable()));
}

}  // namespace ohmkin::dating
