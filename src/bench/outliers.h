#pragma once
#include <finding/refusal.h>
#include <cstddef>
#include <span>
#include <vector>

/// Readings of the same thing that do not belong with the others. (Readings along a curve: curve::fit names those.)
namespace ohmkin::bench {

enum class Side { either, highest, lowest };

struct Grubbs {
  std::size_t suspect = 0;  ///< index of the value furthest out
  double g = 0;             ///< its distance from the mean in standard deviations (n − 1)
  double critical = 0;      ///< g beyond this is an outlier at the significance asked for
  bool outlier = false;
};

/// Grubbs' test for one outlier in a normal sample: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1.
/// Refuses fewer than 3 values, values that are not finite, a significance outside 0 to 0.5 (open).
Expected<Grubbs> grubbs(std::span<const double> values, double significance = 0.05, Side side = Side::either);

}  // namespace ohmkin::bench
