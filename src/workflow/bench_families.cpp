#include <catalog/senders.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/bench_families.h>
#include <workflow/curves.h>
#include <algorithm>

namespace ohmkin::workflow {

std::optional<std::size_t> BenchFamilies::at(const catalog::FamilyKey& id) const {
  const auto found = std::find(ids.begin(), ids.end(), id);
  if (found == ids.end()) return std::nullopt;
  return static_cast<std::size_t>(found - ids.begin());
}

BenchFamilies benchFamilies(const catalog::Catalogue& catalogue) {
  BenchFamilies all;
  for (const catalog::Family& family : catalog::families(catalogue)) {
    if (family.measurand != catalog::Measurand::coolantTemperature) continue;
    auto curve = curveOf(family);
    if (!curve) continue;
    all.curves.push_back({family.name, std::move(curve->curve), family.tolerance});
    all.ids.push_back(family.id);
    all.temperaturesStated.push_back(curve->temperaturesStated);
  }
  return all;
}

Expected<std::size_t> familyNamed(const BenchFamilies& families, std::string_view name, std::string_view where) {
  std::vector<std::string> known;
  for (std::size_t i = 0; i < families.ids.size(); ++i) {
    const std::string& id = families.ids[i].text;
    if (folded(id) == folded(name) || folded(families.curves[i].name) == folded(name)) return i;
    known.insert(known.end(), {id, families.curves[i].name});
  }
  return refuse("family-unknown", std::string(where), fmt::format("'{}'", name),
                "a resistance family of this catalogue that has a curve" + perhaps(nearMisses(name, known)));
}

std::optional<std::size_t> familyOfPart(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                        std::string_view part) {
  for (const catalog::Sender& sender : catalog::sendersNumbered(catalogue, part)) {
    if (!sender.family) continue;
    if (const auto at = families.at(*sender.family)) return at;
  }
  return std::nullopt;
}

}  // namespace ohmkin::workflow
