#include <bench/outliers.h>
#include <fmt/core.h>

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace ohmkin::bench {

Expected<Grubbs> grubbs(std::span<const double> values, double significance, Side side) {
  if (values.size() < 3)
    return refuse("too-few-readings", "readings", fmt::format("{}", values.size()), "at least 3 readings of one thing");
  if (!std::ranges::all_of(values, [](double v) { return std::abs(v) < 1e150; }))
    return refuse("reading-not-finite", "readings", "a value that is not finite", "numbers");
  if (!(significance > 0 && significance < 0.5))
    return refuse("significance-out-of-range", "significance", fmt::format("{:g}", significance),
                  "a probability above 0 and below 0.5, usually 0.05");
  const auto n = static_cast<double>(values.size());
  double mean = 0;
  for (double v : values) mean += v / n;
  double squares = 0;
  for (double v : values) squares += (v - mean) * (v - mean);
  const double deviation = std::sqrt(squares / (n - 1));

  const auto out = [&](double v) {
    if (side == Side::highest) return v - mean;
    if (side == Side::lowest) return mean - v;
    return std::abs(v - mean);
  };
  const auto suspect = std::ranges::max_element(values, {}, out);
  Grubbs result;
  result.suspect = static_cast<std::size_t>(suspect - values.begin());
  result.g = deviation > 0 ? out(*suspect) / deviation : 0;
  const double tail = significance / (side == Side::either ? 2 * n : n);
  const double t = boost::math::quantile(complement(boost::math::students_t(n - 2), tail));
  result.critical = (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
  result.outlier = result.g > result.critical;
  return result;
}

}  // namespace ohmkin::bench
