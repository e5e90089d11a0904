#include <pairing/standing.h>

#include <algorithm>

namespace ohmkin::pairing {
namespace {

Standing stand(double nominal, double withUncertainty, double limit) {
  if (nominal > limit) return Standing::beyond;
  return withUncertainty > limit ? Standing::unclear : Standing::within;
}

Standing lateness(const ErrorTable& table, double limit) {
  if (const auto* reaches = std::get_if<Reaches>(&table.hot)) {
    const double late = inKelvin(reaches->late);
    return stand(late, late + inKelvin(reaches->uncertainty.mismatch), limit);
  }
  if (std::holds_alternative<NeverReaches>(table.hot))
    return table.hotSign == HotSign::late ? Standing::beyond : Standing::unclear;
  return table.hotSign == HotSign::early ? Standing::within : Standing::unclear;
}

}  // namespace

Standings against(const ErrorTable& table, const Limits& limits) {
  // The worst place with its uncertainty need not be the worst place without.
  double lowest = -inKelvin(table.low.error);
  double highest = inKelvin(table.high.error);
  double lowestSure = lowest + inKelvin(table.low.uncertainty.mismatch);
  double highestSure = highest + inKelvin(table.high.uncertainty.mismatch);
  for (const ErrorRow& row : table.rows) {
    lowestSure = std::max(lowestSure, -inKelvin(row.error) + inKelvin(row.uncertainty.mismatch));
    highestSure = std::max(highestSure, inKelvin(row.error) + inKelvin(row.uncertainty.mismatch));
  }
  return {lateness(table, inKelvin(limits.late)), stand(lowest, lowestSure, inKelvin(limits.low)),
          stand(highest, highestSure, inKelvin(limits.high))};
}

}  // namespace ohmkin::pairing
