#include <pairing/part_loads.h>

#include <quantity/print.h>
#include <algorithm>
#include <array>
#include <limits>

namespace ohmkin::pairing {
namespace {

constexpr std::array kCommonSizes{0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 15.0, 25.0, 50.0};  // W

/// What drives the sender post: open-circuit volts behind ohms.
struct Source {
  double volts;
  double ohms;
};

std::optional<Source> behindTheGauge(const gauge::Gauge& gauge) {
  if (!gauge.movement()) return std::nullopt;
  if (const auto* coil = std::get_if<gauge::CrossedCoil>(&*gauge.movement())) {
    if (!coil->feedCoil || !coil->groundCoil) return std::nullopt;
    const double a = inOhms(*coil->feedCoil);
    const double b = inOhms(*coil->groundCoil);
    return Source{kTrimVolts * b / (a + b), a * b / (a + b)};
  }
  // The regulator may be stuck: the whole supply then stands behind the heater.
  if (const auto* bimetal = std::get_if<gauge::Bimetal>(&*gauge.movement()))
    return Source{kTrimVolts, inOhms(bimetal->heater)};
  return std::nullopt;
}

/// Power in both resistors for one sender; 0 or infinite allowed.
struct Powers {
  double series = 0;
  double parallel = 0;
};
Powers powers(const TrimNetwork& network, const Source& source, Ohms sender) {
  const double s = inOhms(network.seriesOhms());
  const double p = inOhms(network.parallelOhms());
  const double seen = inOhms(network.seen(sender));
  const double current = source.volts / (source.ohms + seen);
  const double post = source.ohms == 0 ? source.volts : source.volts - current * source.ohms;
  switch (network.topology()) {
    case Topology::series:
      return {current * current * s, 0};
    case Topology::parallel:
      return {0, post * post / p};
    case Topology::parallelThenSeries: {
      const double across = post - current * s;
      return {current * current * s, across * across / p};
    }
    case Topology::seriesThenParallel: {
      const double branch = post / (inOhms(sender) + s);
      return {branch * branch * s, post * post / p};
    }
    case Topology::none:
    case Topology::feedToSender:
      break;
  }
  return {};
}

/// A series resistor works hardest with the sender grounded, a parallel one with it open; in between both only grow one
/// way.
Powers worst(const TrimNetwork& network, const Source& source) {
  const Powers grounded = powers(network, source, ohms(0));
  const Powers open = powers(network, source, ohms(std::numeric_limits<double>::infinity()));
  return {std::max(grounded.series, open.series), std::max(grounded.parallel, open.parallel)};
}

PartLoad load(const std::string& name, Ohms resistance, std::optional<double> working, double shorted) {
  PartLoad out{name + " " + printNominal(resistance), resistance, std::nullopt, watts(shorted), watts(0)};
  if (working) out.working = watts(*working);
  out.rating = ratingFor(watts(std::max(shorted, working.value_or(0))));
  return out;
}

}  // namespace

Watts ratingFor(Watts load) {
  const double part = (kNoRatingCelsius - kTrimCelsius) / (kNoRatingCelsius - kFullRatingCelsius);
  const double need = inWatts(load) / part;
  for (const double size : kCommonSizes)
    if (size >= need) return watts(size);
  return watts(need);
}

std::vector<PartLoad> partLoads(const gauge::Gauge& gauge, const TrimNetwork& network) {
  std::vector<PartLoad> out;
  if (network.topology() == Topology::feedToSender) {
    // With the lead grounded the whole supply stands across it, whatever the coils; with the post shorted to the feed,
    // nothing does.
    const double grounded = kTrimVolts * kTrimVolts / inOhms(network.feedOhms());
    out.push_back(load("feed resistor", network.feedOhms(), grounded, 0));
    return out;
  }
  const Powers shorted = worst(network, {kTrimVolts, 0});
  std::optional<Powers> working;
  if (const auto source = behindTheGauge(gauge)) working = worst(network, *source);
  if (network.hasSeries())
    out.push_back(load("series resistor", network.seriesOhms(), working ? std::optional(working->series) : std::nullopt,
                       shorted.series));
  if (network.hasParallel())
    out.push_back(load("parallel resistor", network.parallelOhms(),
                       working ? std::optional(working->parallel) : std::nullopt, shorted.parallel));
  return out;
}

}  // namespace ohmkin::pairing
