#pragma once
#include <bench/reading.h>
#include <quantity/print.h>

/// What the person at the bench is told before and between readings.
namespace ohmkin::bench {

enum class BathKind { ice, boilingWater, heatedWater };

/// Before anything is heated. Never empty: local codes and licensed practice come first.
std::vector<Finding> cautions(BathKind kind);

/// One finding for each thing that is wrong or was not looked at: dwell, immersion, stirring, probes.
std::vector<Finding> practiceFindings(const Practice& practice);

/// Where the readings reach and where the answer is wanted: ice and boiling water are two points, so what lies above
/// them (and what bends between them) is an extrapolation. None where the readings hold `wanted` with at least three
/// different temperatures (3 K apart).
std::optional<Finding> reachOf(std::span<const Reading> readings, TemperatureSpan wanted,
                               const DisplayUnits& units = {});

}  // namespace ohmkin::bench
