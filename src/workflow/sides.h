#pragma once
#include <catalog/catalogue.h>
#include <catalog/families.h>
#include <gauge/gauge.h>
#include <workflow/curves.h>
#include <workflow/gauges.h>
#include <string>

/// The two sides of a pair by name, without a vehicle.
namespace ohmkin::workflow {

struct NamedGauge {
  std::string name;
  catalog::Family family;
  SourcedCurve curve;  ///< of the family
  gauge::Gauge gauge;
  double tolerance = kAssumedGaugeTolerance;
};

/// A gauge by id or name; or a resistance family, and so the first gauge of the catalogue built for it. Where none was,
/// a gauge true for the family, marked C and H over its curve. Refuses unknown names with near misses.
/// A movement measured on this gauge stands in for the catalogue's; it needs a dial, so a gauge and not a bare family.
Expected<NamedGauge> findGauge(const catalog::Catalogue& catalogue, const std::string& name,
                               const std::optional<gauge::Movement>& measured = std::nullopt);

struct NamedSender {
  std::string name;
  catalog::Family family;
  SourcedCurve curve;
};

/// A resistance family by id or name, or a part number of a variable sender. Refuses what has no resistance, and
/// unknown names.
Expected<NamedSender> findSender(const catalog::Catalogue& catalogue, const std::string& name);

}  // namespace ohmkin::workflow
