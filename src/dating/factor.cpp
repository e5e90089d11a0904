#include <dating/factor.h>
#include <algorithm>
#include <numeric>

namespace ohmkin::dating {

double sum(const Likelihoods& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

void multiply(Likelihoods& product, const Factor& factor) {
  if (factor.above.empty()) return;
  const double greatest = factor.everywhere + *std::ranges::max_element(factor.above);
  if (!(greatest > 0)) {
    std::ranges::fill(product, 0.0);
    return;
  }
  // In units of the constant part only the run changes. Where that is next to nothing, in units of the greatest: many
  // such facts would overflow the one, and underflow only what is impossible anyway in the other.
  const bool small = factor.everywhere < 1e-6 * greatest;
  const double unit = 1 / (small ? greatest : factor.everywhere);
  if (small) {
    const double outside = factor.everywhere * unit;
    for (int day = 0; day < factor.begin; ++day) product[static_cast<std::size_t>(day)] *= outside;
    for (std::size_t day = static_cast<std::size_t>(factor.end()); day < product.size(); ++day) product[day] *= outside;
  }
  double* run = product.data() + factor.begin;
  for (std::size_t i = 0; i < factor.above.size(); ++i) run[i] *= (factor.everywhere + factor.above[i]) * unit;
}

}  // namespace ohmkin::dating
