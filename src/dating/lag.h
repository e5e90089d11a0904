#pragma once
#include <string>
#include <vector>

namespace ohmkin::dating {

/// Days from one step to the next: log-normal, in whole days from 0 to `longest`, cut off and normalised there.
struct Lag {
  double median = 12;  ///< days, above 0
  double sigma = 0.9;  ///< of the logarithm, above 0
  int longest = 180;   ///< days; slow sellers and strikes
  std::string source = "from memory, no source";
  friend bool operator==(const Lag&, const Lag&) = default;
};

/// Probability of each whole number of days, [0] to [longest]: the log-normal's mass within half a day.
std::vector<double> dayProbabilities(const Lag& lag);

}  // namespace ohmkin::dating
