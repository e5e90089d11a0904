#pragma once
#include <catalog/families.h>
#include <curve/curve.h>
#include <finding/finding.h>
#include <optional>
#include <string>

/// From the catalogue's rows to curves that can be asked.
namespace ohmkin::workflow {

/// A curve and what must be said about it: where it comes from, that its temperatures are not stated, …
struct SourcedCurve {
  curve::Curve curve;
  bool temperaturesStated = true;  ///< false: a two-number family whose temperatures are spans
  std::string lot;                 ///< of a bench curve; else empty
  std::string source;
};

/// The family's own curve where it has one, else the one through its two numbers. Refuses a family with neither.
Expected<SourcedCurve> curveOf(const catalog::Family& family);

/// A measured curve of one lot.
Expected<SourcedCurve> curveOf(const catalog::CurveRecord& record);

}  // namespace ohmkin::workflow
