#include <pairing/draw_block.h>

#include <cmath>
#include <numbers>
#include <random>

namespace ohmkin::pairing {
namespace {

/// Its sequence is fixed by the C++ standard; those of the distributions are not, so they are written out.
using Generator = std::mt19937_64;

double unit(Generator& generator) { return static_cast<double>(generator() >> 11) * 0x1p-53; }

std::vector<double> uniform(Generator& generator, std::size_t size) {
  std::vector<double> out(size);
  for (double& each : out) each = 2 * unit(generator) - 1;
  return out;
}

/// Two independent columns by Box and Muller (1958).
void normal(Generator& generator, std::size_t size, std::vector<double>& a, std::vector<double>& b) {
  a.resize(size);
  b.resize(size);
  for (std::size_t i = 0; i < size; ++i) {
    const double radius = std::sqrt(-2 * std::log1p(-unit(generator)));
    const double turn = 2 * std::numbers::pi * unit(generator);
    a[i] = radius * std::cos(turn);
    b[i] = radius * std::sin(turn);
  }
}

}  // namespace

DrawBlock drawBlock(std::uint64_t seed, std::uint64_t number, std::size_t size) {
  std::seed_seq words{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32),
                      static_cast<std::uint32_t>(number), static_cast<std::uint32_t>(number >> 32)};
  Generator generator(words);
  DrawBlock out;
  normal(generator, size, out.senderCurve, out.familyCurve);
  for (auto* column : {&out.senderTolerance, &out.gaugeTolerance, &out.cluster, &out.supply, &out.location, &out.series,
                       &out.parallel})
    *column = uniform(generator, size);
  return out;
}

}  // namespace ohmkin::pairing
