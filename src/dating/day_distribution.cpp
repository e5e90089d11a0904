#include <dating/calendar.h>
#include <dating/day_distribution.h>
#include <algorithm>
#include <numeric>

namespace ohmkin::dating {

using std::chrono::days;

double DayDistribution::at(Date day) const {
  const auto i = (day - first).count();
  return i >= 0 && i < static_cast<std::ptrdiff_t>(probability.size()) ? probability[static_cast<std::size_t>(i)] : 0;
}

double DayDistribution::within(const DateSpan& span) const {
  const std::ptrdiff_t size = static_cast<std::ptrdiff_t>(probability.size());
  const std::ptrdiff_t from = span.from ? std::clamp<std::ptrdiff_t>((*span.from - first).count(), 0, size) : 0;
  const std::ptrdiff_t until = span.until ? std::clamp<std::ptrdiff_t>((*span.until - first).count(), 0, size) : size;
  if (until <= from) return 0;
  return std::accumulate(probability.begin() + from, probability.begin() + until, 0.0);
}

Date DayDistribution::mostProbable() const {
  return first + days{std::ranges::max_element(probability) - probability.begin()};
}

Date DayDistribution::quantile(double q) const {
  double passed = 0;
  for (std::size_t i = 0; i < probability.size(); ++i)
    if (passed += probability[i]; passed >= q && probability[i] > 0) return first + days{static_cast<int>(i)};
  return first + days{static_cast<int>(probability.size()) - 1};
}

std::vector<DecadeShare> DayDistribution::decades() const {
  std::vector<DecadeShare> shares;
  if (empty()) return shares;
  const Date end = first + days{static_cast<int>(probability.size())};
  for (int decade = parts(first).year / 10 * 10; date(decade, 1, 1) < end; decade += 10)
    if (const double p = within({date(decade, 1, 1), date(decade + 10, 1, 1)}); p > 1e-9) shares.push_back({decade, p});
  std::ranges::stable_sort(shares, std::ranges::greater{}, &DecadeShare::probability);
  return shares;
}

}  // namespace ohmkin::dating
