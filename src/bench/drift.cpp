#include <bench/acceptance.h>
#include <bench/weighing.h>
#include <fmt/core.h>
#include <quantity/percent.h>

#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>

namespace ohmkin::bench {
namespace {

double square(double x) { return x * x; }

struct Compared {
  double ln;         ///< ohms now over then
  double meter;      ///< standard: one meter, whose error is mostly the same at every reading
  double bath;       ///< standard, through the slope: another one at every reading
  double knowledge;  ///< of the earlier curve, standard
  [[nodiscard]] double variance() const { return square(meter) + square(bath); }  ///< of the reading alone
};

Finding finding(const Drift& drift, const DisplayUnits& units) {
  const std::string evidence = fmt::format("{} ± {:.1f} % of ohms (k = 2) over {} readings",
                                           signedPercent(drift.ratio, 1), 200 * drift.u, drift.compared);
  if (!drift.significant)
    return {"drift-none", Severity::note, "It reads as that curve has it, within the doubt of the measurement.",
            evidence, "your readings"};
  const bool cold = inKelvin(drift.shows) < 0;
  return {
      "drift", cold ? Severity::warning : Severity::caution,
      fmt::format("It has moved away from that curve: at the hottest reading the gauge shows {} {} than it did by it.",
                  printAmount(cold ? -drift.shows : drift.shows, units, 1), cold ? "less" : "more"),
      evidence, "your readings"};
}

/// Of ln of the ratio, weighted by the readings' own variances.
struct Mean {
  double ln = 0;
  double u = 0;  ///< standard
};

Mean meanOf(const std::vector<Compared>& compared) {
  double weights = 0;
  double sum = 0;
  double baths = 0;
  double meters = 0;     // neither the meter's error
  double knowledge = 0;  // nor what is not known of the earlier curve averages out
  for (const Compared& c : compared) {
    const double weight = 1 / c.variance();
    weights += weight;
    sum += c.ln * weight;
    baths += square(c.bath * weight);
    meters += c.meter * weight;
    knowledge += c.knowledge * weight;
  }
  return {sum / weights, std::sqrt(baths + square(meters) + square(knowledge)) / weights};
}

/// Whether one factor explains all of them (χ², 95 %).
bool oneFactor(const std::vector<Compared>& compared, double mean) {
  if (compared.size() < 2) return true;
  double chiSquare = 0;
  for (const Compared& c : compared) chiSquare += square(c.ln - mean) / (c.variance() + square(c.knowledge));
  const auto freedom = static_cast<double>(compared.size() - 1);
  return chiSquare <= boost::math::quantile(boost::math::chi_squared(freedom), 0.95);
}

void addRemarks(Drift& drift, std::size_t readings) {
  if (!drift.uniform)
    drift.findings.push_back({"drift-uneven", Severity::caution,
                              "The change is not the same all along the curve: the element has changed, not only its "
                              "scale, or one reading is off.",
                              "", "your readings"});
  if (drift.compared < readings)
    drift.findings.push_back({"curve-not-reaching", Severity::note,
                              fmt::format("{} of {} readings lie outside the earlier curve and do not count.",
                                          readings - drift.compared, readings),
                              "", "the curve's valid span"});
}

}  // namespace

Expected<Drift> drift(const curve::Curve& earlier, std::span<const Reading> now, const DisplayUnits& units) {
  if (now.empty()) return refuse("no-readings", "readings", "none", "at least one reading");
  if (auto fine = checked(now); !fine) return tl::make_unexpected(fine.error());
  std::vector<Compared> compared;
  std::optional<Temperature> hottest;
  for (const Reading& reading : now) {
    const auto knowledge = earlier.knowledge(reading.at);
    if (!knowledge) continue;
    const double t = inKelvin(reading.at);
    compared.push_back({std::log(inOhms(reading.ohms)) - earlier.lnOhms(t), std::max(reading.uLnOhms, 1e-4),
                        earlier.lnOhmsSlope(t) * inKelvin(reading.u), *knowledge});
    if (!hottest || reading.at > *hottest) hottest = reading.at;
  }
  if (!hottest)
    return refuse("drift-not-comparable", "readings", "none within the earlier curve's span",
                  "a reading at a temperature the earlier curve reaches");

  const Mean mean = meanOf(compared);
  Drift out;
  out.compared = compared.size();
  out.ratio = std::expm1(mean.ln);
  out.u = std::exp(mean.ln) * mean.u;
  out.significant = std::abs(mean.ln) > 2 * mean.u;
  out.uniform = oneFactor(compared, mean.ln);
  out.shows = kelvins(mean.ln / earlier.lnOhmsSlope(inKelvin(*hottest)));
  out.findings.push_back(finding(out, units));
  addRemarks(out, now.size());
  return out;
}

}  // namespace ohmkin::bench
