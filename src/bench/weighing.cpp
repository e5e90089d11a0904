#include <bench/distributions.h>
#include <bench/weighing.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmkin::bench {
namespace {

constexpr double kLeastReadingLn = 1e-4;  // no reading is better; keeps every covariance regular
constexpr double kOnePiece = 20;          // K: further apart, a part may deviate anew
constexpr double kMostUncertainLn = 5;
constexpr double kMostUncertainKelvin = 200;

double square(double x) { return x * x; }
bool within(double x, double low, double high) { return x >= low && x <= high; }  // false for NaN

/// The readings in bare numbers, and what an unnamed sender says of each.
struct Seen {
  std::vector<double> lnOhms;
  std::vector<Bath> baths;
  std::vector<Foretold> unnamed;
};

Seen seenBy(std::span<const Reading> readings, const Unnamed& unnamed) {
  std::vector<Temperature> at;
  at.reserve(readings.size());
  for (const Reading& reading : readings) at.push_back(reading.at);
  const std::vector<double> crowd = crowds(at, readings);
  Seen seen;
  seen.lnOhms.reserve(readings.size());
  seen.baths.reserve(readings.size());
  seen.unnamed.reserve(readings.size());
  for (std::size_t i = 0; i < readings.size(); ++i) {
    seen.lnOhms.push_back(std::log(inOhms(readings[i].ohms)));
    seen.baths.push_back({at[i], inKelvin(readings[i].u), readings[i].uLnOhms, crowd[i]});
    seen.unnamed.push_back(foretellUnnamed(seen.baths.back(), unnamed));
  }
  return seen;
}

Weighed weighedUnnamed(const Seen& seen) {
  Weighed out;
  for (std::size_t i = 0; i < seen.lnOhms.size(); ++i)
    out.normal.add(seen.lnOhms[i] - seen.unnamed[i].lnOhms, seen.unnamed[i].shares);
  out.lnEvidence = out.normal.lnDensity();
  out.answered = seen.lnOhms.size();
  return out;
}

/// Where the family's curve does not reach a bath, it says there what an unnamed sender would, given the readings it
/// does answer.
Weighed weighed(const FamilyCurve& family, const Seen& seen, const Weighed& unnamed, const IdentifyModel& model) {
  Weighed out;
  for (std::size_t i = 0; i < seen.lnOhms.size(); ++i) {
    const auto foretold = foretell(family, seen.baths[i], model);
    if (!foretold) continue;
    ++out.answered;
    out.normal.add(seen.lnOhms[i] - foretold->lnOhms, foretold->shares);
  }
  out.lnEvidence = out.normal.lnDensity();
  if (out.answered == seen.lnOhms.size()) return out;
  SharedNormal answered;  // the same readings by an unnamed sender
  for (std::size_t i = 0; i < seen.lnOhms.size(); ++i)
    if (family.curve.valid().holds(seen.baths[i].at))
      answered.add(seen.lnOhms[i] - seen.unnamed[i].lnOhms, seen.unnamed[i].shares);
  out.lnEvidence += unnamed.lnEvidence - answered.lnDensity();
  return out;
}

}  // namespace

Expected<void> checked(std::span<const FamilyCurve> families) {
  if (families.empty()) return refuse("no-families", "families", "none", "at least one family with a curve");
  for (const FamilyCurve& family : families) {
    if (family.tolerance && !within(*family.tolerance, 0, 0.99))
      return refuse("tolerance-out-of-range", family.name, fmt::format("{:g}", *family.tolerance),
                    "a tolerance of ohms, 0 to 0.99 (0.1 is ±10 %)");
    if (!within(family.weight, std::numeric_limits<double>::min(), 1e100))
      return refuse("weight-out-of-range", family.name, fmt::format("{:g}", family.weight), "a weight above 0");
  }
  return {};
}

Expected<void> checked(std::span<const Reading> readings) {
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const Reading& reading = readings[i];
    const std::string where = fmt::format("reading {}", i + 1);
    if (!within(inOhms(reading.ohms), 1e-9, 1e15))
      return refuse("reading-ohms", where, fmt::format("{:g} Ω", inOhms(reading.ohms)), "ohms above 0");
    if (!within(inKelvin(reading.at), 1, 2000))
      return refuse("reading-temperature", where, fmt::format("{:g} K", inKelvin(reading.at)), "a temperature");
    if (!within(inKelvin(reading.u), 0, kMostUncertainKelvin) || !within(reading.uLnOhms, 0, kMostUncertainLn))
      return refuse("reading-uncertainty", where,
                    fmt::format("{:g} K and {:g} of ohms", inKelvin(reading.u), reading.uLnOhms),
                    "standard uncertainties of 0 or above");
  }
  return {};
}

Expected<void> checked(const IdentifyModel& model) {
  const Unnamed& none = model.unnamed;
  const bool fine = within(model.commonShare, 0, 1) && within(model.assumedTolerance, 0, 0.99) &&
                    within(none.probability, 0, 1 - 1e-12) && within(none.level, 0, 100) &&
                    within(none.slopeSpread, 0, 1) && within(none.bend, 0, 10) && std::isfinite(none.lnOhms) &&
                    std::isfinite(none.slope) && within(inKelvin(none.middle), 1, 2000);
  if (fine) return {};
  return refuse("model-out-of-range", "model", "numbers outside their ranges",
                "shares of 0 to 1, spreads of 0 or above");
}

double partSpread(double tolerance) { return rectangular(std::log1p(tolerance)); }

std::optional<Foretold> foretell(const FamilyCurve& family, const Bath& bath, const IdentifyModel& model) {
  const auto knowledge = family.curve.knowledge(bath.at);
  if (!knowledge) return std::nullopt;
  const double t = inKelvin(bath.at);
  const double spread = partSpread(family.tolerance.value_or(model.assumedTolerance));
  Foretold out;
  out.lnOhms = family.curve.lnOhms(t);
  out.shares.first = std::sqrt(model.commonShare) * spread;
  out.shares.second = std::sqrt(0.5) * *knowledge;
  const double moved = bath.uKelvin > 0 ? family.curve.lnOhmsSlope(t) * bath.uKelvin : 0;
  const double own = (1 - model.commonShare) * square(spread) + 0.5 * square(*knowledge);
  out.shares.noise = square(std::max(bath.uLnOhms, kLeastReadingLn)) + square(moved) + bath.crowd * own;
  return out;
}

Foretold foretellUnnamed(const Bath& bath, const Unnamed& unnamed) {
  const double away = inKelvin(bath.at) - inKelvin(unnamed.middle);
  return {unnamed.lnOhms + unnamed.slope * away,
          {unnamed.level, unnamed.slopeSpread * away,
           square(std::max(bath.uLnOhms, kLeastReadingLn)) + square(unnamed.slope * bath.uKelvin) +
               bath.crowd * square(unnamed.bend)}};
}

std::vector<double> crowds(std::span<const Temperature> of, std::span<const Reading> readings) {
  std::vector<double> kelvin;
  kelvin.reserve(readings.size());
  for (const Reading& reading : readings) kelvin.push_back(inKelvin(reading.at));
  std::ranges::sort(kelvin);
  std::vector<double> sums(1, 0.0);  // of the first i temperatures, so that a crowd costs two searches
  sums.reserve(kelvin.size() + 1);
  for (const double t : kelvin) sums.push_back(sums.back() + t);
  const auto place = [&](double t) {
    return static_cast<std::size_t>(std::ranges::lower_bound(kelvin, t) - kelvin.begin());
  };
  std::vector<double> counts;
  counts.reserve(of.size());
  for (const Temperature& at : of) {
    const double t = inKelvin(at);
    const std::size_t first = place(t - kOnePiece);
    const std::size_t middle = place(t);
    const std::size_t last = place(t + kOnePiece);
    const auto below = static_cast<double>(middle - first);
    const auto above = static_cast<double>(last - middle);
    const double apart = below * t - (sums[middle] - sums[first]) + (sums[last] - sums[middle]) - above * t;
    counts.push_back(below + above - apart / kOnePiece);
  }
  return counts;
}

Weighing weigh(std::span<const FamilyCurve> families, std::span<const Reading> readings, const IdentifyModel& model) {
  const Seen seen = seenBy(readings, model.unnamed);
  Weighing out;
  out.unnamed = weighedUnnamed(seen);
  out.families.reserve(families.size());
  for (const FamilyCurve& family : families) out.families.push_back(weighed(family, seen, out.unnamed, model));

  double weights = 0;
  for (const FamilyCurve& family : families) weights += family.weight;
  const double lnNone = std::log(model.unnamed.probability) + out.unnamed.lnEvidence;  // −∞ where it is ruled out
  double most = lnNone;
  for (std::size_t f = 0; f < families.size(); ++f) {
    out.probability.push_back(std::log((1 - model.unnamed.probability) * families[f].weight / weights) +
                              out.families[f].lnEvidence);
    most = std::max(most, out.probability.back());
  }
  out.none = std::exp(lnNone - most);
  double sum = out.none;
  for (double& p : out.probability) sum += p = std::exp(p - most);
  out.none /= sum;
  for (double& p : out.probability) p /= sum;
  return out;
}

std::string percent(double probability) {
  if (probability < 0.001) return "less than 0.1 %";
  if (probability > 0.999) return "more than 99.9 %";
  if (probability < 0.1 || probability > 0.9) return fmt::format("{:.1f} %", 100 * probability);
  return fmt::format("{:.0f} %", 100 * probability);
}

}  // namespace ohmkin::bench
