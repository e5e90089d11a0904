#pragma once
#include <pairing/trim_proposal.h>

/// Power in the resistors of a trim.
namespace ohmkin::pairing {

/// Film resistors carry their rating up to 70 °C and nothing at 155 °C, straight between (usual for parts to IEC 60115;
/// from memory).
inline constexpr double kFullRatingCelsius = 70;
inline constexpr double kNoRatingCelsius = 155;

std::vector<PartLoad> partLoads(const gauge::Gauge& gauge, const TrimNetwork& network);

/// The next common size that carries this at 105 °C; above the largest (50 W) the bare need.
Watts ratingFor(Watts load);

}  // namespace ohmkin::pairing
