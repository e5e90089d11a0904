#include <pairing/trim_network.h>

#include <fmt/format.h>
#include <quantity/print.h>
#include <cmath>

namespace ohmkin::pairing {
namespace {

/// a ∥ b for 0 … ∞.
double beside(double a, double b) {
  if (std::isinf(a)) return b;
  if (std::isinf(b)) return a;
  return a == 0 || b == 0 ? 0 : a * b / (a + b);
}

}  // namespace

bool TrimNetwork::hasSeries() const {
  return topology_ == Topology::series || topology_ == Topology::parallelThenSeries ||
         topology_ == Topology::seriesThenParallel;
}

bool TrimNetwork::hasParallel() const {
  return topology_ == Topology::parallel || topology_ == Topology::parallelThenSeries ||
         topology_ == Topology::seriesThenParallel;
}

int TrimNetwork::parts() const {
  return int(hasSeries()) + int(hasParallel()) + int(topology_ == Topology::feedToSender);
}

Ohms TrimNetwork::seen(Ohms sender) const {
  const double r = inOhms(sender);
  const double s = inOhms(series_);
  const double p = inOhms(parallel_);
  switch (topology_) {
    case Topology::series:
      return ohms(r + s);
    case Topology::parallel:
      return ohms(beside(r, p));
    case Topology::parallelThenSeries:
      return ohms(beside(r, p) + s);
    case Topology::seriesThenParallel:
      return ohms(beside(r + s, p));
    case Topology::none:
    case Topology::feedToSender:
      break;
  }
  return sender;
}

std::optional<Ohms> TrimNetwork::senderBehind(Ohms seen) const {
  const double s = inOhms(series_);
  const double p = inOhms(parallel_);
  const auto without = [p](double both) { return both < p ? both * p / (p - both) : -1; };
  double r = inOhms(seen);
  if (topology_ == Topology::series) r -= s;
  else if (topology_ == Topology::parallel) r = without(r);
  else if (topology_ == Topology::parallelThenSeries) r = without(r - s);
  else if (topology_ == Topology::seriesThenParallel) r = without(r) - s;
  if (!(r > 0) || !std::isfinite(r)) return std::nullopt;
  return ohms(r);
}

TrimNetwork::Sensitivity TrimNetwork::sensitivity(Ohms sender) const {
  const double r = inOhms(sender);
  const double s = inOhms(series_);
  const double p = inOhms(parallel_);
  // Of a ∥ b, d ln / d ln a = b/(a + b).
  switch (topology_) {
    case Topology::series:
      return {r / (r + s), s / (r + s), 0};
    case Topology::parallel:
      return {p / (r + p), 0, r / (r + p)};
    case Topology::parallelThenSeries: {
      const double both = beside(r, p);
      const double share = both / (both + s);
      return {share * p / (r + p), s / (both + s), share * r / (r + p)};
    }
    case Topology::seriesThenParallel: {
      const double branch = r + s;
      const double share = p / (branch + p);
      return {share * r / branch, share * s / branch, branch / (branch + p)};
    }
    case Topology::none:
    case Topology::feedToSender:
      break;
  }
  return {};
}

std::string TrimNetwork::name() const {
  const auto s = [this] { return printNominal(series_); };
  const auto p = [this] { return printNominal(parallel_); };
  switch (topology_) {
    case Topology::none:
      return "no resistor";
    case Topology::series:
      return s() + " in series";
    case Topology::parallel:
      return p() + " in parallel";
    case Topology::parallelThenSeries:
      return "(sender ∥ " + p() + ") + " + s();
    case Topology::seriesThenParallel:
      return "(sender + " + s() + ") ∥ " + p();
    case Topology::feedToSender:
      return printNominal(feed_) + " from feed to sender post";
  }
  return {};
}

Expected<TrimNetwork> makeNetwork(Topology topology, Ohms series, Ohms parallel, Ohms feed) {
  TrimNetwork out;
  switch (topology) {
    case Topology::none:
      break;
    case Topology::series:
      out = TrimNetwork::series(series);
      break;
    case Topology::parallel:
      out = TrimNetwork::parallel(parallel);
      break;
    case Topology::parallelThenSeries:
      out = TrimNetwork::parallelThenSeries(parallel, series);
      break;
    case Topology::seriesThenParallel:
      out = TrimNetwork::seriesThenParallel(series, parallel);
      break;
    case Topology::feedToSender:
      out = TrimNetwork::feedToSender(feed);
      break;
  }
  struct Part {
    const char* name;
    bool wanted;
    Ohms given;
  };
  for (const Part& part : {Part{"series", out.hasSeries(), series},
                           {"parallel", out.hasParallel(), parallel},
                           {"feed", topology == Topology::feedToSender, feed}}) {
    const double r = inOhms(part.given);
    if (part.wanted && (!(r > 0) || !std::isfinite(r)))
      return refuse("resistor-out-of-range", part.name, fmt::format("{:g} Ω", r), "a resistor above 0 Ω");
    if (!part.wanted && r != 0)
      return refuse("resistor-not-in-network", part.name, fmt::format("{:g} Ω", r), "no resistor there");
  }
  return out;
}

Expected<gauge::Gauge> trimmed(const gauge::Gauge& gauge, const TrimNetwork& network) {
  if (network.topology() != Topology::feedToSender) return gauge;
  const auto* coil = gauge.movement() ? std::get_if<gauge::CrossedCoil>(&*gauge.movement()) : nullptr;
  if (coil == nullptr)
    return refuse("feed-resistor-needs-crossed-coil", "trim", network.name(),
                  "a crossed-coil gauge whose two coils were measured at the posts");
  const auto altered = gauge::withFeedResistor(*coil, network.feedOhms());
  if (!altered) return tl::make_unexpected(altered.error());
  return gauge::Gauge::withMovement(gauge.dial(), *altered, gauge.family());
}

}  // namespace ohmkin::pairing
