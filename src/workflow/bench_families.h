#pragma once
#include <bench/identify.h>
#include <catalog/catalogue.h>
#include <catalog/families.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The resistance families of a catalogue as the bench weighs them. Read once and asked many times: a page keeps it
/// until the catalogue changes.
namespace ohmkin::workflow {

struct BenchFamilies {
  std::vector<bench::FamilyCurve> curves;  ///< coolant temperature, those that have a curve; by name
  std::vector<catalog::FamilyKey> ids;     ///< beside each
  std::vector<bool> temperaturesStated;    ///< beside each; false: two numbers whose temperatures are spans
  [[nodiscard]] std::optional<std::size_t> at(const catalog::FamilyKey& id) const;
  [[nodiscard]] bool empty() const { return curves.empty(); }
};

BenchFamilies benchFamilies(const catalog::Catalogue& catalogue);

/// By id or name, letter case aside; refuses (family-unknown) with near misses, and (family-without-curve).
Expected<std::size_t> familyNamed(const BenchFamilies& families, std::string_view name, std::string_view where);

/// The family a part number claims to be of; none where the catalogue does not have the part, or knows no family of it.
std::optional<std::size_t> familyOfPart(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                        std::string_view part);

}  // namespace ohmkin::workflow
