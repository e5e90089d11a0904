#pragma once
#include <quantity/date.h>
#include <vector>

namespace ohmkin::dating {

struct DecadeShare {
  int decade = 1970;  ///< first year: 1970 for the 1970s
  double probability = 0;
};

/// A probability for each day from `first` on; sums to 1, or is empty where nothing fits.
struct DayDistribution {
  Date first;
  std::vector<double> probability;

  [[nodiscard]] bool empty() const { return probability.empty(); }
  [[nodiscard]] double at(Date day) const;  ///< 0 outside
  [[nodiscard]] double within(const DateSpan& span) const;
  [[nodiscard]] Date mostProbable() const;                 ///< earliest of equals; not for an empty one
  [[nodiscard]] Date quantile(double q) const;             ///< first day by which q of the probability has passed
  [[nodiscard]] std::vector<DecadeShare> decades() const;  ///< most probable first, those above 1e-9
};

}  // namespace ohmkin::dating
