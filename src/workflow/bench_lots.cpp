#include <catalog/bench_records.h>
#include <curve/assumed_tolerance.h>
#include <fmt/format.h>
#include <quantity/percent.h>
#include <workflow/bench_lots.h>
#include <workflow/curves.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::workflow {
namespace {
constexpr int kLooks = 12;  ///< temperatures at which two curves are compared
}

std::string benchCurveWords(const catalog::Catalogue& catalogue, const catalog::CurveRecord& record) {
  const auto run = catalog::runOfCurve(catalogue, record.id);
  std::string words = "bench curve";
  if (run) words += " of " + run->at.substr(0, 10);
  if (!record.lot.empty()) words += ", lot " + record.lot;
  if (run && !run->who.empty()) words += ", by " + run->who;
  return words;
}

std::optional<Finding> disagreement(const curve::Curve& measured, const catalog::Family& claimed,
                                    const std::string& words, const DisplayUnits& units) {
  const auto family = curveOf(claimed);
  if (!family) return std::nullopt;
  const Temperature low = std::max(measured.established().low, family->curve.established().low);
  const Temperature high = std::min(measured.established().high, family->curve.established().high);
  if (!(low < high)) return std::nullopt;
  const double tolerance = claimed.tolerance.value_or(curve::kAssumedTolerance);
  double worst = 0, off = 0, beyond = 0;
  for (int i = 0; i <= kLooks; ++i) {
    const double at = inKelvin(low) + (inKelvin(high) - inKelvin(low)) * i / kLooks;
    const double apart = measured.lnOhms(at) - family->curve.lnOhms(at);
    const double known =
        2 * std::hypot(measured.knowledge(kelvin(at)).value_or(0), family->curve.knowledge(kelvin(at)).value_or(0));
    const double over = std::abs(apart) - known - std::log1p(tolerance);
    if (over <= beyond) continue;
    beyond = over;
    worst = at;
    off = apart;
  }
  if (beyond <= 0) return std::nullopt;
  return Finding{"bench-curve-off-family", Severity::warning,
                 fmt::format("Its {} lies {} of ohms off {}, which the part number claims, at {}: a part number "
                             "is not a curve.",
                             words, signedPercent(std::expm1(off), 0), claimed.name, print(kelvin(worst), units)),
                 fmt::format("tolerance ±{:.3g} %{}", 100 * tolerance, claimed.tolerance ? "" : ", assumed"),
                 family->source};
}

}  // namespace ohmkin::workflow
