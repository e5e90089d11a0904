#pragma once
#include <pairing/pair.h>
#include <cstddef>
#include <optional>
#include <span>

/// Where over a band the needle reads lowest, or highest. Bare numbers: kelvin.
namespace ohmkin::pairing {

struct ExtremeError {
  double kelvin = 0;  ///< true temperature
  double error = 0;
  std::optional<std::size_t> row;  ///< where it is one of the given places; none: it lies between two of them
};

enum class Reads { low, high };

/// The extreme of the errors at these places, by rising temperature and at least two, and of what lies between the
/// worst of them and its neighbours.
ExtremeError extremeError(const Pair& pair, std::span<const double> places, std::span<const double> errors,
                          Reads reads);

}  // namespace ohmkin::pairing
