#include <catalog/senders.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/sides.h>

namespace ohmkin::workflow {
namespace {

using catalog::Catalogue;

Refusal unknownName(const char* argument, const std::string& name, const char* expected,
                    const std::vector<std::string>& known) {
  return {"name-unknown", argument, fmt::format("'{}'", name), expected + perhaps(nearMisses(name, known))};
}

std::vector<std::string> familyNames(const Catalogue& catalogue) {
  std::vector<std::string> names;
  for (const auto& family : catalog::families(catalogue)) names.insert(names.end(), {family.id.text, family.name});
  return names;
}

/// A gauge true for its family with plain marks over the curve: for a family no gauge of the catalogue was built for.
Expected<gauge::Gauge> plainGauge(const curve::Curve& curve) {
  const TemperatureSpan span = curve.established();
  constexpr double kHalfSweep = 45;  // degrees either side; only the drawing depends on it
  std::vector<gauge::Mark> marks{{gauge::MarkKind::cold, "C", span.low, {-kHalfSweep}},
                                 {gauge::MarkKind::hot, "H", span.high, {kHalfSweep}}};
  auto dial = gauge::Dial::make(std::move(marks), {-kHalfSweep - 5}, {kHalfSweep + 5});
  if (!dial) return tl::make_unexpected(dial.error());
  return gauge::Gauge::trueForFamily(std::move(*dial), curve);
}

}  // namespace

Expected<NamedGauge> findGauge(const Catalogue& catalogue, const std::string& name,
                               const std::optional<gauge::Movement>& measured) {
  std::vector<catalog::GaugeRecord> records = catalog::gaugesNamed(catalogue, name);
  std::vector<catalog::Family> families;
  if (records.empty()) {
    families = catalog::familiesNamed(catalogue, name);
    if (families.empty()) {
      std::vector<std::string> known = familyNames(catalogue);
      for (const auto& gauge : catalog::gauges(catalogue)) known.insert(known.end(), {gauge.id.text, gauge.name});
      return tl::make_unexpected(unknownName("--gauge", name, "a resistance family or gauge of this catalogue", known));
    }
    records = catalog::gaugesOfFamily(catalogue, families.front().id);
  } else if (auto family = catalog::family(catalogue, records.front().family)) {
    families.push_back(std::move(*family));
  }
  if (families.empty())
    return refuse("gauge-without-family", "--gauge", fmt::format("'{}'", name), "a gauge whose family is known");
  auto curve = curveOf(families.front());
  if (!curve) return tl::make_unexpected(curve.error());
  if (records.empty() && measured)
    return refuse("gauge-without-dial", "--gauge", fmt::format("'{}'", name),
                  "a gauge of this catalogue, whose dial the measured movement turns a needle over");
  auto gauge = records.empty() ? plainGauge(curve->curve) : gaugeOf(records.front(), curve->curve, measured);
  if (!gauge) return tl::make_unexpected(gauge.error());
  return NamedGauge{
      records.empty() ? "a gauge true for " + families.front().name : records.front().name, families.front(),
      std::move(*curve), std::move(*gauge),
      records.empty() ? kAssumedGaugeTolerance : records.front().tolerance.value_or(kAssumedGaugeTolerance)};
}

Expected<NamedSender> findSender(const Catalogue& catalogue, const std::string& name) {
  std::optional<catalog::Family> family;
  std::string shown = name;
  if (auto found = catalog::familiesNamed(catalogue, name); !found.empty()) {
    family = std::move(found.front());
    shown = family->name;
  } else if (auto parts = catalog::sendersNumbered(catalogue, name); !parts.empty()) {
    shown = parts.front().id.text;
    if (!parts.front().family)
      return refuse("sender-without-resistance", "--sender",
                    fmt::format("{}, a {}", shown, catalog::text(parts.front().kind)), "a variable sender");
    family = catalog::family(catalogue, *parts.front().family);
  }
  if (!family) {
    std::vector<std::string> known = familyNames(catalogue);
    for (auto& part : catalog::partNumbers(catalogue)) known.push_back(std::move(part));
    return tl::make_unexpected(
        unknownName("--sender", name, "a resistance family or part number of this catalogue", known));
  }
  auto curve = curveOf(*family);
  if (!curve) return tl::make_unexpected(curve.error());
  return NamedSender{std::move(shown), std::move(*family), std::move(*curve)};
}

}  // namespace ohmkin::workflow
