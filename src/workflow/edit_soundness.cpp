#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/layouts.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/curves.h>
#include <workflow/edit_states.h>
#include <workflow/gauges.h>
#include <workflow/layouts.h>
#include <workflow/save_layout.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

using catalog::ThingState;

std::string textIn(const ThingState& state, const std::string& column) {
  const auto found = state.row.find(column);
  if (found == state.row.end()) return {};
  const auto* text = std::get_if<std::string>(&found->second);
  return text == nullptr ? std::string() : *text;
}

Refusal at(std::string where, Refusal refusal) {
  refusal.where = std::move(where);
  return refusal;
}

std::optional<catalog::CurveRecord> curveRecord(const catalog::Catalogue& catalogue, const ThingState& state) {
  std::vector<catalog::CurveRecord> all;
  if (const std::string family = textIn(state, "family"); !family.empty()) {
    if (auto found = catalog::family(catalogue, catalog::FamilyKey(family))) all = std::move(found->curves);
  } else {
    all = catalog::benchCurves(catalogue, catalog::SenderKey(textIn(state, "sender")));
  }
  const std::string id = textIn(state, "id");
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& c) { return c.id.text == id; });
  if (found == all.end()) return {};
  return std::move(*found);
}

std::vector<Refusal> curveFaults(const catalog::Catalogue& catalogue, const ThingState& state) {
  const auto record = curveRecord(catalogue, state);
  if (!record) return {};
  const bool table = record->model == catalog::CurveModel::table;
  if (const auto made = curveOf(*record); !made) return {at(table ? "sample[1].ohms" : "coefficients", made.error())};
  return {};
}

/// Without a curve of its own the family's two numbers must make one.
std::vector<Refusal> familyFaults(const catalog::Catalogue& catalogue, const ThingState& state) {
  auto family = catalog::family(catalogue, catalog::FamilyKey(textIn(state, "id")));
  if (!family || !family->coldHot) return {};
  family->curves.clear();
  if (const auto made = curveOf(*family); !made) return {at("cold_ohms", made.error())};
  return {};
}

std::vector<Refusal> gaugeFaults(const catalog::Catalogue& catalogue, const ThingState& state) {
  const auto record = catalog::gauge(catalogue, catalog::GaugeKey(textIn(state, "id")));
  if (!record) return {};
  const auto family = catalog::family(catalogue, record->family);
  if (!family) return {};
  const auto curve = curveOf(*family);
  if (!curve) return {};  // a family without a curve yet, or of something that is no resistance: nothing to read it by
  const bool noNumbers = record->movement == catalog::MovementKind::unknown &&
                         std::none_of(record->marks.begin(), record->marks.end(), [](const auto& m) { return m.at; });
  if (noNumbers) return {};  // unknown is not wrong: the counter says what is missing when it is asked
  if (const auto made = gaugeOf(*record, curve->curve); !made) {
    const bool movement = made.error().code == "gauge-incomplete";
    return {at(movement ? "movement" : "dial_mark[1].angle", made.error())};
  }
  return {};
}

std::vector<Refusal> layoutFaults(const catalog::Catalogue& catalogue, const ThingState& state) {
  const auto record = catalog::dateLayout(catalogue, catalog::LayoutKey(textIn(state, "id")));
  if (!record) return {};
  const auto layout = dating::checkedLayout(layoutOf(*record));
  if (!layout) return {at("date_field[1].kind", layout.error())};
  if (const auto fine = checkLayoutExample(*layout, record->example, record->exampleDate); !fine)
    return {at("example", fine.error())};
  return {};
}

}  // namespace

std::vector<Refusal> circular(const catalog::Catalogue& catalogue, const ThingState& written) {
  if (written.table != "stands_in_for") return {};
  auto chain = catalog::circleOfReplacements(catalogue, textIn(written, "sender"), textIn(written, "replaces"));
  if (chain.empty()) return {};
  chain.push_back(chain.front());
  return {{"replacement-circle", "sender", fmt::format("a circle: {}", fmt::join(chain, ", replaced by ")),
           "a part that is not itself replaced by the older one"}};
}

std::vector<Refusal> unsound(const catalog::Catalogue& catalogue, const ThingState& written) {
  if (written.table == "curve") return curveFaults(catalogue, written);
  if (written.table == "family") return familyFaults(catalogue, written);
  if (written.table == "gauge") return gaugeFaults(catalogue, written);
  if (written.table == "date_layout") return layoutFaults(catalogue, written);
  return circular(catalogue, written);
}

}  // namespace ohmkin::workflow
