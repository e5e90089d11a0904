#include <pairing/stations.h>

#include <pairing/error_table.h>
#include <pairing/hot_mark.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::pairing {

std::vector<std::size_t> spreadOrder(std::size_t count) {
  std::vector<std::size_t> out;
  out.reserve(count);
  std::size_t step = 1;
  while (step < count) step *= 2;
  if (count > 0) out.push_back(0);
  for (; step >= 1; step /= 2)
    for (std::size_t i = step; i < count; i += 2 * step) out.push_back(i);
  return out;
}

Stations stationsOf(const curve::Curve& sender, TemperatureSpan covered, std::size_t rows) {
  const std::vector<double> evenlySpread = evenly(covered, rows);
  Stations out;
  std::vector<std::size_t> order = spreadOrder(rows);
  std::swap(order[1], *std::find(order.begin(), order.end(), rows - 1));  // both ends first: they rule out most
  for (const std::size_t i : order) {
    out.kelvin.push_back(evenlySpread[i]);
    out.ohms.push_back(std::exp(sender.lnOhms(evenlySpread[i])));
  }
  return out;
}

Expected<HotBy> hotBy(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureDifference latest) {
  const Temperature by = kelvin(matchedHotKelvin(gauge, {})) + latest;
  const auto reaching = sender.valid().holds(by)
                            ? Expected<curve::Curve>(sender)
                            : sender.extendedTo({std::min(by, sender.valid().low), std::max(by, sender.valid().high)});
  if (!reaching) return tl::make_unexpected(reaching.error());
  return HotBy{std::exp(reaching->lnOhms(inKelvin(by))), inKelvin(gauge.hotMark())};
}

}  // namespace ohmkin::pairing
