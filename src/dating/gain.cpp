#include <dating/gain.h>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmkin::dating {

double entropyBits(std::span<const double> weights) {
  const double total = std::accumulate(weights.begin(), weights.end(), 0.0);
  if (!(total > 0)) return 0;
  double bits = 0;
  for (const double weight : weights)
    if (weight > 0) bits -= weight / total * std::log2(weight / total);
  return bits;
}

double expectedGainBits(std::span<const double> prior, std::span<const std::vector<double>> outcomes) {
  const double total = std::accumulate(prior.begin(), prior.end(), 0.0);
  if (!(total > 0)) return 0;
  double remaining = 0;
  std::vector<double> after(prior.size());
  for (const std::vector<double>& likelihood : outcomes) {
    for (std::size_t s = 0; s < prior.size(); ++s)
      after[s] = prior[s] / total * (s < likelihood.size() ? likelihood[s] : 0);
    remaining += std::accumulate(after.begin(), after.end(), 0.0) * entropyBits(after);
  }
  return std::max(0.0, entropyBits(prior) - remaining);
}

}  // namespace ohmkin::dating
