#include <dating/enumeration.h>
#include <dating/model_year.h>
#include <algorithm>
#include <numeric>

namespace ohmkin::dating {
namespace {

DayDistribution normalised(Date first, Likelihoods weights) {
  const double total = sum(weights);
  if (!(total > 0)) return {first, {}};
  const double share = 1 / total;
  for (double& w : weights) w *= share;
  return {first, std::move(weights)};
}

/// sums[k]: probability of at most k days.
std::vector<double> running(const std::vector<double>& lag) {
  std::vector<double> sums(lag.size());
  std::partial_sum(lag.begin(), lag.end(), sums.begin());
  return sums;
}

double atMost(const std::vector<double>& sums, int days) {
  return days < 0 ? 0 : sums[std::min(static_cast<std::size_t>(days), sums.size() - 1)];
}

Days cut(const DateSpan& span, const Days& window) {
  return {std::max(span.from.value_or(window.from), window.from),
          std::min(span.until.value_or(window.until), window.until)};
}

}  // namespace

std::optional<Days> vehicleDays(const VehicleDate& vehicle, const Days& window) {
  if (vehicle.built) return cut({*vehicle.built, *vehicle.built + std::chrono::days{1}}, window);
  if (!vehicle.year && !vehicle.yearProduced) return {};
  return cut(vehicle.yearProduced ? *vehicle.yearProduced : usualProduction(*vehicle.year), window);
}

Enumeration::Enumeration(const Evidence& evidence, const Days& window)
    : window_(window),
      size_(static_cast<int>((window.until - window.from).count())),
      castingLag_(dayProbabilities(evidence.beliefs.castingToAssembly)),
      vehicleLag_(dayProbabilities(evidence.beliefs.assemblyToVehicle)) {
  const Beliefs& beliefs = evidence.beliefs;
  for (const DatedCasting& casting : evidence.castings)
    castings_.push_back(
        enumerate(casting, casting.role == CastingRole::block ? beliefs.blockStays : beliefs.headStays));
  if (evidence.stamp && !evidence.stamp->readings.empty())
    addStamp(*evidence.stamp, evidence.stamp->padRecut ? beliefs.recutStampTrue : beliefs.stampTrue);
  if (const auto built = vehicleDays(evidence.vehicle, window)) addVehicle(*built, beliefs.firstEngine);
  engineKnown_ = stamp_ || std::ranges::any_of(castings_, &Casting::informative);
  all_ = productWithout(castings_.size());
}

/// Days before the first and behind the last reading are left out.
Enumeration::Run Enumeration::likelihoodOf(const std::vector<Reading>& readings, const Days& limit) const {
  const auto cutToLimit = [&](const Reading& r) {
    return std::pair{dayOf(std::max(r.from, limit.from)), dayOf(std::min(r.until, limit.until))};
  };
  int begin = size_;
  int end = 0;
  for (const Reading& reading : readings)
    if (const auto [from, until] = cutToLimit(reading); from < until) {
      begin = std::min(begin, from);
      end = std::max(end, until);
    }
  if (begin >= end) return {};
  Run run{begin, Likelihoods(static_cast<std::size_t>(end - begin), 0.0)};
  for (const Reading& reading : readings) {
    const auto [from, until] = cutToLimit(reading);
    for (int day = from; day < until; ++day) {
      double& seen = run.at[static_cast<std::size_t>(day - begin)];
      seen = std::max(seen, reading.weight);
    }
  }
  return run;
}

Enumeration::Casting Enumeration::enumerate(const DatedCasting& casting, double stays) const {
  Casting result;
  result.stays = stays;
  const Days produced = cut(casting.produced, window_);
  const bool coded = !casting.readings.empty();
  if (coded) result.seen = likelihoodOf(casting.readings, produced);
  else if (produced.from < produced.until)
    result.seen = {dayOf(produced.from),
                   Likelihoods(static_cast<std::size_t>((produced.until - produced.from).count()), 1.0)};
  result.total = sum(result.seen.at);
  result.informative = result.total > 0 && (coded || result.seen.at.size() < static_cast<std::size_t>(size_));
  if (!result.informative) return result;
  result.fact = {(1 - stays) * result.total / size_, result.seen.begin, belongs(result.seen, !coded)};
  for (double& likelihood : result.fact.above) likelihood *= stays;
  return result;
}

/// Likelihood of each assembly day from the run's first, if the casting was fitted then: poured some lag before.
Likelihoods Enumeration::belongs(const Run& seen, bool constant) const {
  const int longest = static_cast<int>(castingLag_.size()) - 1;
  const int poured = static_cast<int>(seen.at.size());
  const int length = std::min(poured + longest, size_ - seen.begin);
  Likelihoods likelihood(static_cast<std::size_t>(length), 0.0);
  if (constant) {
    // Every day of a span alike: a difference of two running sums instead of a sum for every day.
    const std::vector<double> sums = running(castingLag_);
    for (int a = 0; a < length; ++a)
      likelihood[static_cast<std::size_t>(a)] = atMost(sums, a) - atMost(sums, a - poured);
    return likelihood;
  }
  for (int c = 0; c < poured; ++c) {
    const double weight = seen.at[static_cast<std::size_t>(c)];
    if (weight == 0) continue;
    const int lags = std::min(longest, length - 1 - c);
    for (int k = 0; k <= lags; ++k)
      likelihood[static_cast<std::size_t>(c) + static_cast<std::size_t>(k)] +=
          weight * castingLag_[static_cast<std::size_t>(k)];
  }
  return likelihood;
}

void Enumeration::addStamp(const AssemblyStamp& stamp, double reliability) {
  Run seen = likelihoodOf(stamp.readings, window_);
  if (seen.at.empty()) return;  // readings that all lie outside the window say nothing
  const double byChance = (1 - reliability) * sum(seen.at) / size_;
  for (double& likelihood : seen.at) likelihood *= reliability;
  stamp_ = Factor{byChance, seen.begin, std::move(seen.at)};
}

void Enumeration::addVehicle(const Days& built, double firstEngine) {
  const std::vector<double> sums = running(vehicleLag_);
  const int from = dayOf(built.from);
  const int until = dayOf(built.until);
  Factor fact{
      (1 - firstEngine) * (until - from) / size_, std::max(0, from - static_cast<int>(vehicleLag_.size()) + 1), {}};
  for (int a = fact.begin; a < until; ++a)
    fact.above.push_back(firstEngine * (atMost(sums, until - 1 - a) - atMost(sums, from - 1 - a)));
  vehicle_ = std::move(fact);
}

Likelihoods Enumeration::productWithout(std::size_t casting) const {
  Likelihoods product(static_cast<std::size_t>(size_), 1.0);
  for (std::size_t i = 0; i < castings_.size(); ++i)
    if (i != casting) multiply(product, castings_[i].fact);
  if (stamp_) multiply(product, *stamp_);
  if (vehicle_) multiply(product, *vehicle_);
  return product;
}

DayDistribution Enumeration::assembly() const {
  if (!anythingKnown()) return {window_.from, {}};
  return normalised(window_.from, all_);
}

CastingPosterior Enumeration::casting(std::size_t i) const {
  const Casting& casting = castings_[i];
  CastingPosterior posterior;
  posterior.days.first = window_.from;
  posterior.fittedAtAssembly = casting.stays;
  if (casting.total == 0 || !anythingKnown()) return posterior;
  const Likelihoods others = productWithout(i);
  const double changed = (1 - casting.stays) / size_ * sum(others);
  Likelihoods poured(casting.seen.at.size(), 0.0);
  double fitted = 0;
  for (std::size_t day = 0; day < poured.size(); ++day) {
    const double seen = casting.seen.at[day];
    if (seen == 0) continue;
    const std::size_t c = static_cast<std::size_t>(casting.seen.begin) + day;
    const std::size_t lags = std::min(castingLag_.size(), others.size() - c);
    double belonging = 0;
    for (std::size_t k = 0; k < lags; ++k) belonging += castingLag_[k] * others[c + k];
    belonging *= casting.stays;
    poured[day] = seen * (belonging + changed);
    fitted += seen * belonging;
  }
  const double total = sum(poured);
  if (!(total > 0)) return posterior;
  posterior.fittedAtAssembly = fitted / total;
  posterior.days = normalised(window_.from + std::chrono::days{casting.seen.begin}, std::move(poured));
  posterior.decades = posterior.days.decades();
  return posterior;
}

std::optional<double> Enumeration::firstEngine() const {
  if (!engineKnown_ || !vehicle_) return {};
  const double total = sum(all_);
  if (!(total > 0)) return {};
  double first = 0;
  for (std::size_t i = 0; i < vehicle_->above.size(); ++i)
    if (const double above = vehicle_->above[i]; above > 0)
      first += all_[static_cast<std::size_t>(vehicle_->begin) + i] * above / (vehicle_->everywhere + above);
  return first / total;
}

}  // namespace ohmkin::dating
