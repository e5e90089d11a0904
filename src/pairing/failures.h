#pragma once
#include <pairing/trim_proposal.h>

/// What the needle shows when a part of the trim, or the lead, fails.
namespace ohmkin::pairing {

inline constexpr double kDrift = 0.2;  ///< of ohms, as a part: an old resistor, a judgement

std::vector<Failure> failuresOf(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                                TemperatureSpan covered, const TrimOptions& options);

/// True where it must not be left in a vehicle: something opens or shorts, the needle reads low, and nobody sees it.
/// Drift is slow and a grounded lead reads high: they are told, not refused.
bool forbidsStaying(const Failure& failure);

}  // namespace ohmkin::pairing
