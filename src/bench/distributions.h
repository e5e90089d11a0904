#pragma once
#include <cmath>
#include <numbers>

/// What the bench needs of two distributions, in bare numbers. Not for other rooms.
namespace ohmkin::bench {

/// Standard deviation of a rectangular distribution over ±limit (JCGM 100:2008, 4.3.7).
inline double rectangular(double limit) { return limit / std::sqrt(3.0); }

/// Probability that a standard normal number lies below z.
inline double normalBelow(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

}  // namespace ohmkin::bench
