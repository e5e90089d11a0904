#include <pairing/extreme_error.h>

#include <algorithm>
#include <boost/math/tools/minima.hpp>

namespace ohmkin::pairing {

ExtremeError extremeError(const Pair& pair, std::span<const double> places, std::span<const double> errors,
                          Reads reads) {
  const double sign = reads == Reads::low ? 1 : -1;
  const auto smallest =
      std::min_element(errors.begin(), errors.end(), [&](double a, double b) { return sign * a < sign * b; });
  const auto i = static_cast<std::size_t>(smallest - errors.begin());
  const double low = places[i == 0 ? 0 : i - 1];
  const double high = places[std::min(i + 1, places.size() - 1)];
  constexpr int kBits = 26;  // of the place; the error is flat there, so it comes out to twice as many
  const auto found =
      boost::math::tools::brent_find_minima([&](double t) { return sign * (pair.shown(t) - t); }, low, high, kBits);
  if (!(found.second < sign * *smallest) || found.first == places[i]) return {places[i], *smallest, i};
  return {found.first, pair.shown(found.first) - found.first, std::nullopt};
}

}  // namespace ohmkin::pairing
