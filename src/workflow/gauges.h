#pragma once
#include <catalog/gauges.h>
#include <curve/curve.h>
#include <gauge/gauge.h>

namespace ohmkin::workflow {

/// From the catalogue's row to a gauge that can be read. Its movement where the row has one, else taken to be true for
/// its family. `measured` on this very gauge stands in for what the row says of its movement.
Expected<gauge::Gauge> gaugeOf(const catalog::GaugeRecord& record, const curve::Curve& family,
                               const std::optional<gauge::Movement>& measured = std::nullopt);

/// Assumed where a gauge states none (flagged in the answer): a good one may be 5 % of the reading out.
inline constexpr double kAssumedGaugeTolerance = 0.05;

}  // namespace ohmkin::workflow
