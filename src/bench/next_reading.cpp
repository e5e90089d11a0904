#include <bench/weighing.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace ohmkin::bench {
namespace {

constexpr double kForgotten = 1e-6;      // probability below which nobody runs in front
constexpr double kWorthTheWater = 0.02;  // bits; below, heating the bath tells nothing
constexpr std::size_t kMostTemperatures = 2000;

/// A front-runner's prediction of the reading to come, ln ohms.
struct Component {
  double probability = 0;
  double mean = 0;
  double deviation = 1;
  [[nodiscard]] double density(double y) const {
    const double z = (y - mean) / deviation;
    return std::exp(-0.5 * z * z) / (deviation * std::sqrt(2 * std::numbers::pi));
  }
};

/// Expected information and expected greatest posterior. The trapezium rule on a normal density converges faster than
/// any power; at a fifth of a deviation what is left comes from narrow components inside wide ones.
Separation separate(Temperature at, std::span<const Component> components) {
  constexpr double kStep = 0.2;
  constexpr int kNodes = 31;  // either way: 6.2 deviations
  Separation out{at, 0, 0};
  double nats = 0;
  for (const Component& own : components) {
    for (int node = -kNodes; node <= kNodes; ++node) {
      const double z = kStep * node;
      const double y = own.mean + own.deviation * z;
      double mixture = 0;
      double greatest = 0;
      for (const Component& other : components) {
        const double joint = other.probability * other.density(y);
        mixture += joint;
        greatest = std::max(greatest, joint);
      }
      const double weight = own.probability * own.density(y) * own.deviation * kStep;
      if (!(weight > 0 && mixture > 0)) continue;
      nats += weight * std::log(own.density(y) / mixture);
      out.certainty += weight * greatest / mixture;
    }
  }
  out.bits = std::max(0.0, nats / std::numbers::ln2);
  out.certainty = std::min(1.0, out.certainty);
  return out;
}

Expected<void> checked(const NextOptions& o) {
  const double low = inKelvin(o.within.low);
  const double high = inKelvin(o.within.high);
  const bool fine = low >= 1 && high >= low && high <= 2000 && inKelvin(o.step) >= 0.5 &&
                    (high - low) / inKelvin(o.step) <= kMostTemperatures && inKelvin(o.uKelvin) >= 0 &&
                    inKelvin(o.uKelvin) <= 200 && o.uLnOhms >= 0 && o.uLnOhms <= 5 && o.mostFrontRunners >= 2 &&
                    o.mostFrontRunners <= 32;
  if (fine) return {};
  return refuse("next-reading-options", "options", "numbers outside their ranges",
                "a span of temperatures, steps of 0.5 K or more, uncertainties of 0 or above, 2 to 32 front-runners");
}

Finding finding(const NextReading& next, std::span<const FamilyCurve> families, const DisplayUnits& units) {
  if (next.best.bits < kWorthTheWater)
    return {"next-reading-useless", Severity::note,
            "No further reading within the bath's reach would tell the front-runners apart.",
            fmt::format("{:.2f} bit at most", next.best.bits), "computed"};
  std::string whom = families[next.frontRunners.front()].name;
  if (next.frontRunners.size() > 1) whom += " from " + families[next.frontRunners[1]].name;
  else whom += " from a sender of no family here";
  return {"next-reading", Severity::note,
          fmt::format("Read it near {} next: that tells {} best.", print(next.best.at, units), whom),
          fmt::format("expected certainty {} now, {} then ({:.2f} bit)", percent(next.certaintyNow),
                      percent(next.best.certainty), next.best.bits),
          "computed"};
}

/// The most probable families; ties by index.
std::vector<std::size_t> frontRunners(const Weighing& weighing, std::size_t most) {
  const std::vector<double>& probability = weighing.probability;
  std::vector<std::size_t> order(probability.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto end = order.begin() + static_cast<std::ptrdiff_t>(std::min(most, order.size()));
  std::partial_sort(order.begin(), end, order.end(), [&](std::size_t a, std::size_t b) {
    return probability[a] != probability[b] ? probability[a] > probability[b] : a < b;
  });
  const auto forgotten =
      std::find_if(order.begin() + 1, end, [&](std::size_t f) { return probability[f] < kForgotten; });
  order.erase(forgotten, order.end());
  return order;
}

/// What each front-runner predicts of a reading in this bath, and last what an unnamed sender does.
std::vector<Component> componentsAt(const Bath& bath, std::span<const FamilyCurve> families, const Weighing& weighing,
                                    const std::vector<std::size_t>& frontRunners, const IdentifyModel& model) {
  double sum = weighing.none;
  for (const std::size_t f : frontRunners) sum += weighing.probability[f];
  const Foretold unnamed = foretellUnnamed(bath, model.unnamed);
  const auto open = weighing.unnamed.normal.predict(unnamed.shares);
  const Component none{weighing.none / sum, unnamed.lnOhms + open.mean, std::sqrt(open.variance)};
  std::vector<Component> components;
  for (const std::size_t f : frontRunners) {
    Component& component = components.emplace_back(none);  // where its curve does not reach, it says the same
    component.probability = weighing.probability[f] / sum;
    const auto foretold = foretell(families[f], bath, model);
    if (!foretold) continue;
    const auto own = weighing.families[f].normal.predict(foretold->shares);
    component.mean = foretold->lnOhms + own.mean;
    component.deviation = std::sqrt(own.variance);
  }
  components.push_back(none);
  return components;
}

}  // namespace

Expected<NextReading> nextReading(std::span<const FamilyCurve> families, std::span<const Reading> soFar,
                                  const NextOptions& options, const IdentifyModel& model, const DisplayUnits& units) {
  if (auto fine = checked(families)
                      .and_then([&] { return checked(soFar); })
                      .and_then([&] { return checked(model); })
                      .and_then([&] { return checked(options); });
      !fine)
    return tl::make_unexpected(fine.error());
  const Weighing weighing = weigh(families, soFar, model);
  NextReading next;
  next.frontRunners = frontRunners(weighing, options.mostFrontRunners);
  next.certaintyNow = std::max(weighing.none, weighing.probability[next.frontRunners.front()]);

  const double low = inKelvin(options.within.low);
  const double step = inKelvin(options.step);
  const auto steps = static_cast<std::size_t>(std::floor((inKelvin(options.within.high) - low) / step + 1e-9));
  for (std::size_t i = 0; i <= steps; ++i) {
    const Temperature at = kelvin(low + step * static_cast<double>(i));
    const Bath bath{at, inKelvin(options.uKelvin), options.uLnOhms, 1 + crowds(std::span(&at, 1), soFar).front()};
    next.tried.push_back(separate(at, componentsAt(bath, families, weighing, next.frontRunners, model)));
  }
  next.best = *std::ranges::max_element(next.tried, {}, &Separation::bits);
  next.finding = finding(next, families, units);
  return next;
}

}  // namespace ohmkin::bench
