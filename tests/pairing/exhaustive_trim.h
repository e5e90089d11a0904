#pragma once
#include <pairing/trim_search.h>
#include <algorithm>
#include <cmath>

/// The plain way: every network of the five topologies computed at every temperature. Oracle of the tests and baseline
/// of the benchmark.
namespace ohmkin::test {

struct Exhaustive {
  std::array<double, 5> best{INFINITY, INFINITY, INFINITY, INFINITY, INFINITY};  ///< weighted worst, by Topology
  std::array<pairing::TrimNetwork, 5> network;
  std::size_t networks = 0;
};

inline Exhaustive tryEveryNetwork(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureSpan band,
                                  pairing::Series series, std::size_t temperatures, double lowWeight,
                                  std::optional<double> hotByKelvin = {}) {
  using pairing::TrimNetwork;
  const std::vector<double> kelvins = pairing::evenly(band, temperatures);
  std::vector<double> r;
  r.reserve(kelvins.size());
  for (const double t : kelvins) r.push_back(std::exp(sender.lnOhms(t)));
  Exhaustive out;
  const auto tryOne = [&](const TrimNetwork& network) {
    double worst = -INFINITY;
    for (std::size_t i = 0; i < r.size(); ++i) {
      const double error = gauge.shownAtOhms(inOhms(network.seen(ohms(r[i])))) - kelvins[i];
      worst = std::max(worst, error > 0 ? error : -lowWeight * error);
    }
    if (hotByKelvin && gauge.shownAtOhms(inOhms(network.seen(ohms(std::exp(sender.lnOhms(*hotByKelvin)))))) <
                           inKelvin(gauge.hotMark()))
      worst = INFINITY;
    const auto topology = static_cast<std::size_t>(network.topology());
    if (worst < out.best[topology]) {
      out.best[topology] = worst;
      out.network[topology] = network;
    }
    ++out.networks;
  };
  const auto values = pairing::preferredOhms(series, ohms(1), ohms(100e3));
  tryOne(TrimNetwork());
  for (const double v : values) {
    tryOne(TrimNetwork::series(ohms(v)));
    tryOne(TrimNetwork::parallel(ohms(v)));
    for (const double w : values) {
      tryOne(TrimNetwork::parallelThenSeries(ohms(v), ohms(w)));
      tryOne(TrimNetwork::seriesThenParallel(ohms(w), ohms(v)));
    }
  }
  return out;
}

}  // namespace ohmkin::test
