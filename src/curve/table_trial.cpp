#include <curve/trial.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmkin::curve {
namespace {

constexpr double kSamePoint = 0.5;  // K: readings closer than this are one point of the table

struct Knot {
  double kelvin = 0;
  double lnOhms = 0;
  double variance = 0;  // of ln R
  int readings = 0;
};

/// Standard deviation of ln R about a straight line through each reading's neighbours, for runs whose uncertainties are
/// not stated.
double roughness(const Readings& readings, const std::vector<std::size_t>& order) {
  double squares = 0;
  double count = 0;
  for (std::size_t i = 1; i + 1 < order.size(); ++i) {
    const double t0 = readings.kelvin[order[i - 1]];
    const double t2 = readings.kelvin[order[i + 1]];
    if (t2 == t0) continue;
    const double w = (readings.kelvin[order[i]] - t0) / (t2 - t0);
    const double between = (1 - w) * readings.lnOhms[order[i - 1]] + w * readings.lnOhms[order[i + 1]];
    const double left = readings.lnOhms[order[i]] - between;
    squares += left * left / (1 + w * w + (1 - w) * (1 - w));
    ++count;
  }
  return count > 0 ? std::sqrt(squares / count) : 0;
}

std::vector<std::vector<std::size_t>> groups(const Readings& readings, const std::vector<std::size_t>& order) {
  std::vector<std::vector<std::size_t>> out;
  for (const std::size_t i : order) {
    if (out.empty() || readings.kelvin[i] - readings.kelvin[out.back().front()] > kSamePoint) out.emplace_back();
    out.back().push_back(i);
  }
  return out;
}

/// Readings of one group averaged; each is first carried to the group's temperature along the chord of the whole run.
Knot knotOf(const Readings& readings, const std::vector<std::size_t>& group, double chord, double rough) {
  Knot knot;
  const auto n = static_cast<double>(group.size());
  for (const std::size_t i : group) knot.kelvin += readings.kelvin[i] / n;
  for (const std::size_t i : group) {
    knot.lnOhms += (readings.lnOhms[i] + chord * (knot.kelvin - readings.kelvin[i])) / n;
    const double spread = readings.stated ? readings.spread(i, chord) : rough;
    knot.variance += spread * spread / (n * n);
  }
  return knot;
}

}  // namespace

Expected<Trial> tryTable(const Readings& readings) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (readings.weight[i] > 0) order.push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return readings.kelvin[a] < readings.kelvin[b]; });
  const std::vector<std::vector<std::size_t>> grouped = groups(readings, order);
  if (grouped.size() < 4)
    return refuse("fit-too-few-points", "fit", fmt::format("readings at {} temperatures", grouped.size()),
                  "readings at 4 temperatures at least for a table");
  const double range = readings.kelvin[order.back()] - readings.kelvin[order.front()];
  if (range < inKelvin(leastRange(Form::table)))
    return refuse("fit-range-too-short", "fit", fmt::format("readings over {:.1f} K", range),
                  fmt::format("at least {:.0f} K for a table", inKelvin(leastRange(Form::table))));

  const double chord = (readings.lnOhms[order.back()] - readings.lnOhms[order.front()]) / range;
  const double rough = readings.stated ? 0 : roughness(readings, order);
  MonotoneTable table;
  Covariance covariance{std::vector<double>(grouped.size() * grouped.size(), 0.0), grouped.size()};
  for (std::size_t k = 0; k < grouped.size(); ++k) {
    const Knot knot = knotOf(readings, grouped[k], chord, rough);
    table.points.emplace_back(kelvin(knot.kelvin), ohms(std::exp(knot.lnOhms)));
    covariance.values[k * grouped.size() + k] = knot.variance * std::exp(2 * knot.lnOhms);
  }
  const TemperatureSpan span{table.points.front().first, table.points.back().first};
  auto curve = Curve::make(std::move(table), span, std::move(covariance));
  if (!curve) return tl::make_unexpected(curve.error());
  Trial trial{Form::table, std::move(*curve), {}, {}};
  for (std::size_t i = 0; i < readings.size(); ++i)
    trial.lnResiduals.push_back(readings.lnOhms[i] - trial.curve.lnOhms(readings.kelvin[i]));
  trial.used = order.size();
  trial.freedom = order.size() - grouped.size();
  trial.scatter = rough;
  for (const std::size_t i : order) {
    const double spread = readings.stated ? readings.spread(i, trial.curve.lnOhmsSlope(readings.kelvin[i])) : 1;
    trial.chiSquare += trial.lnResiduals[i] * trial.lnResiduals[i] / (spread * spread);
    if (readings.stated) trial.scatter += spread / static_cast<double>(order.size());
  }
  return trial;
}

}  // namespace ohmkin::curve
