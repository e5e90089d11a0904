#include <catalog/engines.h>
#include <catalog/gauges.h>
#include <catalog/vehicles.h>
#include <fmt/format.h>
#include <workflow/plan_names.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

std::string lineName(const catalog::Catalogue& catalogue, const Question& dash) {
  auto found = catalog::linesNamed(catalogue, dash.line);
  if (found.size() > 1 && dash.year)
    std::erase_if(found, [&](const auto& line) { return !line.years.holds(*dash.year); });
  return found.size() == 1 ? found.front().makeName + " " + found.front().name : dash.line;
}

std::string gaugeName(const catalog::Catalogue& catalogue, const std::string& typed) {
  const auto found = catalog::gaugesNamed(catalogue, typed);
  return found.size() == 1 ? found.front().name : "gauge " + typed;
}

}  // namespace

std::string dashName(const catalog::Catalogue& catalogue, const Question& dash) {
  std::string name;
  const auto add = [&](const std::string& words) { name += (name.empty() ? "" : ", ") + words; };
  if (!dash.line.empty()) add(lineName(catalogue, dash));
  if (dash.year)
    name = name.empty() ? fmt::format("{}", dash.year->value) : fmt::format("{} {}", dash.year->value, name);
  if (!dash.gauge.empty()) add(gaugeName(catalogue, dash.gauge));
  if (!dash.cluster.empty()) add(dash.cluster);
  if (dash.built) add("built " + plainDate(*dash.built));
  return name.empty() ? "a dash nothing is known of" : name;
}

std::string engineName(const catalog::Catalogue& catalogue, const Question& engine) {
  std::string name;
  const auto add = [&](const std::string& words) { name += (name.empty() ? "" : ", ") + words; };
  const auto castings =
      engine.casting.empty() ? std::vector<catalog::Casting>{} : catalog::castingsNumbered(catalogue, engine.casting);
  if (!engine.engine.empty()) {
    const auto found = catalog::engineFamiliesNamed(catalogue, engine.engine);
    add(found.size() == 1 ? found.front().makeName + " " + found.front().name : engine.engine);
  } else if (castings.size() == 1) {
    // The number alone says little at the counter; the engine it belongs to does.
    if (const auto family = catalog::engineFamily(catalogue, castings.front().engine))
      add(family->makeName + " " + family->name);
  }
  if (!engine.casting.empty())
    add(castings.empty()
            ? "casting " + engine.casting
            : fmt::format("{} casting {}", catalog::text(castings.front().role), castings.front().id.text));
  if (!engine.castingDate.empty()) add("dated " + engine.castingDate);
  if (engine.engineBuilt) add("built " + plainDate(*engine.engineBuilt));
  if (!engine.portThread.empty()) add("port " + engine.portThread);
  if (!engine.portLocation.empty()) add(engine.portLocation);
  return name.empty() ? "an engine nothing is known of" : name;
}

}  // namespace ohmkin::workflow
