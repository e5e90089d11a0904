#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

/// Random inputs of the Monte Carlo, a block of draws at a time. Each block has its own generator, seeded by the seed
/// and its number, so that it does not matter who computes which block.
namespace ohmkin::pairing {

inline constexpr std::size_t kDrawsPerBlock = 2048;

struct DrawBlock {
  // Standard normal.
  std::vector<double> senderCurve;
  std::vector<double> familyCurve;
  // Uniform in −1 … 1: parts of the half-widths.
  std::vector<double> senderTolerance;
  std::vector<double> gaugeTolerance;
  std::vector<double> cluster;
  std::vector<double> supply;
  std::vector<double> location;
  std::vector<double> series;  ///< or the feed resistor
  std::vector<double> parallel;

  [[nodiscard]] std::size_t size() const { return senderCurve.size(); }
};

DrawBlock drawBlock(std::uint64_t seed, std::uint64_t number, std::size_t size);

}  // namespace ohmkin::pairing
