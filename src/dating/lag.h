#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <string>
#include <string_view>
#include <vector>

namespace ohmkin::dating {

/// Days from one step to the next: log-normal, in whole days from 0 to `longest`, cut off and normalised there.
struct Lag {
  double median = 12;  ///< days, above 0
  double sigma = 0.9;  ///< of the logarithm, above 0
  int longest = 180;   ///< days; slow sellers and strikes
  std::string source = kFromMemory;
  friend bool operator==(const Lag&, const Lag&) = default;
};

/// Probability of each whole number of days, [0] to [longest]: the log-normal's mass within half a day.
std::vector<double> dayProbabilities(const Lag& lag);

/// Days within which half of all, and nine in ten, are done; of the log-normal before it is cut off.
struct UsualDays {
  double half = 0;
  double nineInTen = 0;
};
UsualDays usualDays(const Lag& lag);

/// A lag as a shop tells it: half within `half` days, nine in ten within `nineInTen`; cut off as far out in its tail as
/// the usual ones are. Refuses days that are not above 0 and at most 3650, and a pair no log-normal has.
Expected<Lag> lagWithin(double half, double nineInTen, std::string source, std::string_view where);
/// The same with the spread that `usual` has, in proportion: half within `half` days.
Expected<Lag> lagWithin(double half, const Lag& usual, std::string source, std::string_view where);

}  // namespace ohmkin::dating
