#pragma once
#include <vector>

/// Likelihoods over the days of a window. Inner header of the room. Bare doubles; only their proportions matter.
namespace ohmkin::dating {

using Likelihoods = std::vector<double>;  ///< one for each day of the window

/// A fact's likelihood: the same on every day (what it says by chance), and more on a run of days.
struct Factor {
  double everywhere = 1;
  int begin = 0;      ///< first day of the run
  Likelihoods above;  ///< added to `everywhere` on the run's days

  [[nodiscard]] int end() const { return begin + static_cast<int>(above.size()); }
};

/// Multiplies a product over all days by the factor, up to a constant: where it can, only the run's days are touched.
void multiply(Likelihoods& product, const Factor& factor);

double sum(const Likelihoods& values);

}  // namespace ohmkin::dating
