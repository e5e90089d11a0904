#include <dating/lag.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace ohmkin::dating {

namespace {

constexpr double kLongestDays = 3650;        // a casting that lay ten years is no longer a lag
constexpr double kNineInTen = 1.2815515655;  // standard normal quantile of 0.9
constexpr double kLeastSpread = 0.05, kMostSpread = 5;

/// How many sigmas out the usual lags are cut off.
double cutOff() {
  const Lag usual;
  return std::log(usual.longest / usual.median) / usual.sigma;
}

Expected<Lag> made(double half, double sigma, std::string source, std::string_view where) {
  if (!(half > 0 && half <= kLongestDays))
    return refuse("lag-out-of-range", std::string(where), fmt::format("{:g} days", half), "days above 0, at most 3650");
  Lag lag;
  lag.median = half;
  lag.sigma = sigma;
  lag.longest = static_cast<int>(std::clamp(std::ceil(half * std::exp(cutOff() * sigma)), 1.0, kLongestDays));
  lag.source = std::move(source);
  return lag;
}

}  // namespace

std::vector<double> dayProbabilities(const Lag& lag) {
  const auto below = [&](double within) {
    return 0.5 * std::erfc(-std::log(within / lag.median) / lag.sigma * (1 / std::numbers::sqrt2));
  };
  std::vector<double> mass(static_cast<std::size_t>(lag.longest) + 1);
  double sofar = 0;
  for (std::size_t day = 0; day < mass.size(); ++day) {
    const double upTo = below(static_cast<double>(day) + 0.5);
    mass[day] = upTo - sofar;
    sofar = upTo;
  }
  for (double& p : mass) p /= sofar;
  return mass;
}

UsualDays usualDays(const Lag& lag) { return {lag.median, lag.median * std::exp(kNineInTen * lag.sigma)}; }

Expected<Lag> lagWithin(double half, double nineInTen, std::string source, std::string_view where) {
  const double sigma = half > 0 ? std::log(nineInTen / half) / kNineInTen : 0;
  if (!(sigma >= kLeastSpread && sigma <= kMostSpread && nineInTen <= kLongestDays))
    return refuse("lag-out-of-range", std::string(where), fmt::format("{:g} and {:g} days", half, nineInTen),
                  "days for half of them, then more days for nine in ten, at most 3650: 12,38");
  return made(half, sigma, std::move(source), where);
}

Expected<Lag> lagWithin(double half, const Lag& usual, std::string source, std::string_view where) {
  return made(half, usual.sigma, std::move(source), where);
}

}  // namespace ohmkin::dating
