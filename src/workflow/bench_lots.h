#pragma once
#include <catalog/families.h>
#include <curve/curve.h>
#include <finding/finding.h>
#include <quantity/print.h>
#include <optional>
#include <string>

/// A part number is not a curve: what is said of one lot that was measured.
namespace ohmkin::workflow {

/// "bench curve of 2026-11-25, lot 3, by Ann"; of a pack: "bench curve, lot 3".
std::string benchCurveWords(const catalog::Catalogue& catalogue, const catalog::CurveRecord& record);

/// Where the lot's curve leaves the tolerance of the family that its part claims, both curves' knowledge (k = 2)
/// allowed for: a warning that names the temperature where it is furthest off. None where it agrees, or where the two
/// are nowhere known together.
std::optional<Finding> disagreement(const curve::Curve& measured, const catalog::Family& claimed,
                                    const std::string& words, const DisplayUnits& units);

}  // namespace ohmkin::workflow
