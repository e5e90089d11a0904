#include <dating/lag.h>
#include <cmath>
#include <numbers>
#include <numeric>

namespace ohmkin::dating {

std::vector<double> dayProbabilities(const Lag& lag) {
  const auto below = [&](double days) {
    return 0.5 * std::erfc(-std::log(days / lag.median) / lag.sigma * (1 / std::numbers::sqrt2));
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

}  // namespace ohmkin::dating
