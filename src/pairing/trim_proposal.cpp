#include <pairing/trim_proposal.h>

#include <fmt/format.h>
#include <pairing/extreme_error.h>
#include <pairing/failures.h>
#include <pairing/hot_mark.h>
#include <pairing/part_loads.h>
#include <pairing/standing.h>
#include <quantity/print.h>
#include <algorithm>

namespace ohmkin::pairing {
namespace {

constexpr double kWorthTheSolder = 0.05;  // K; less is no improvement
constexpr double kLargestEasyRating = 5;  // W
const char* const kComputed = "computed from the two curves and the network";

/// None where the needle never reaches the mark; of a needle past it already, how early at least.
std::optional<TemperatureDifference> latenessOf(const HotWarning& hot) {
  if (const auto* reaches = std::get_if<Reaches>(&hot)) return reaches->late;
  if (const auto* past = std::get_if<PastAlready>(&hot)) return -past->atLeastEarly;
  return std::nullopt;
}

/// How far out the needle is over a band and at the hot mark: an error table without what is known of it, which costs
/// most.
struct Nominal {
  TemperatureDifference low;
  TemperatureDifference high;
  std::optional<TemperatureDifference> late;
};

Expected<Nominal> nominal(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                          TemperatureSpan covered, const PairOptions& options) {
  const auto pair = Pair::make(gauge, sender, network, options.conditions);
  if (!pair) return tl::make_unexpected(pair.error());
  const std::vector<double> places = evenly(covered, options.rows);
  std::vector<double> errors;
  errors.reserve(places.size());
  for (const double t : places) errors.push_back(inKelvin(pair->reading(t).shown) - t);
  const bool backwards = pair->shown(places.back()) < pair->shown(places.front());
  return Nominal{kelvins(extremeError(*pair, places, errors, Reads::low).error),
                 kelvins(extremeError(*pair, places, errors, Reads::high).error),
                 latenessOf(hotAnswer(*pair, options, backwards).warning)};
}

/// Every part at the end of its tolerance that makes the needle read lowest, and highest: ohms seen grow with every
/// part.
Expected<ToleranceCase> toleranceCase(const gauge::Gauge& gauge, const curve::Curve& sender,
                                      const TrimProposal& proposal, PairOptions options, double tolerance) {
  const TrimNetwork& network = proposal.network;
  options.rows = std::min<std::size_t>(options.rows, 13);
  ToleranceCase out;
  out.tolerance = tolerance;
  bool reached = true;
  for (const double part : {1 - tolerance, 1 + tolerance}) {
    const auto corner = makeNetwork(network.topology(), network.seriesOhms() * part, network.parallelOhms() * part,
                                    network.feedOhms() * part);
    if (!corner) return tl::make_unexpected(corner.error());
    const auto there = nominal(gauge, sender, *corner, proposal.after.covered, options);
    if (!there) return tl::make_unexpected(there.error());
    const bool first = part < 1;
    out.low = first ? there->low : std::min(out.low, there->low);
    out.high = first ? there->high : std::max(out.high, there->high);
    reached = reached && there->late;
    if (there->late) out.late = out.late ? std::max(*out.late, *there->late) : *there->late;
  }
  if (!reached) out.late.reset();
  return out;
}

void addLimitFindings(TrimProposal& proposal, const TrimOptions& options) {
  const Standings stands = against(proposal.after, options.limits);
  proposal.withinLimits = stands.within() && !proposal.after.backwards;
  const auto add = [&](Standing standing, const char* code, const char* what, TemperatureDifference limit,
                       const char* which) {
    if (standing == Standing::within) return;
    const bool beyond = standing == Standing::beyond;
    proposal.findings.push_back(
        {code, beyond ? Severity::refusal : Severity::caution,
         fmt::format("Even with {} {}the needle {} more than {} {}.", proposal.network.name(),
                     beyond ? "" : "it may be that ", what, printAmount(limit, options.units), which),
         "error table with the trim fitted", kComputed});
  };
  add(stands.late, "trim-late", "reaches the hot mark", options.limits.late, "late");
  add(stands.low, "trim-low", "reads", options.limits.low, "low");
  add(stands.high, "trim-high", "reads", options.limits.high, "high");
}

void addFailures(TrimProposal& proposal, const gauge::Gauge& gauge, const curve::Curve& sender,
                 const TrimOptions& options) {
  proposal.failures = failuresOf(gauge, sender, proposal.network, proposal.after.covered, options);
  bool mayStay = true;
  for (const Failure& failure : proposal.failures) {
    if (!forbidsStaying(failure)) continue;
    mayStay = false;
    proposal.findings.push_back({"trim-fails-silently", Severity::refusal,
                                 "Not to be left in a vehicle. " + failure.sentence, "failure table of the trim",
                                 kComputed});
  }
  proposal.permanent = proposal.withinLimits && mayStay;
}

/// What to do about a resistor that a shorted sender post would burn.
std::string burning(const PartLoad& part) {
  const double load = std::max(inWatts(part.shortedToFeed), part.working ? inWatts(*part.working) : 0);
  const std::string takes =
      fmt::format("With the sender post or the lead shorted, the {} would take {:.0f} W", part.part, load);
  if (inWatts(part.rating) > kLargestEasyRating)
    return takes + ", more than any handy one stands: put a fuse in the feed.";
  return takes + fmt::format(": fit one of {:g} W.", inWatts(part.rating));
}

void addHandlingFindings(TrimProposal& proposal) {
  for (const PartLoad& part : proposal.loads)
    if (inWatts(part.rating) > 1)
      proposal.findings.push_back(
          {"trim-runs-hot", Severity::caution, burning(part), "15 V, derated for 105 °C", kComputed});
  if (proposal.network.topology() == Topology::feedToSender)
    proposal.findings.push_back(
        {"trim-needs-fuse", Severity::warning,
         "The feed resistor joins battery voltage to the lead: it must have its own fuse at the feed.",
         proposal.network.name(), kCommonPractice});
  if (proposal.network.parts() > 0)
    proposal.findings.push_back(
        {"trim-mounting", Severity::note,
         "Mount the resistors behind the dash, never on the engine; the gauge stays an aid, a trimmed one more so.",
         proposal.network.name(), kCommonPractice});
}

double weightedAt(const ErrorTable& table, double lowWeight) {
  double worst = -1e300;
  for (const ErrorRow& row : table.rows) {
    const double error = inKelvin(row.error);
    worst = std::max(worst, error > 0 ? error : -error * lowWeight);
  }
  return worst;
}

Expected<TrimProposal> judged(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                              TemperatureSpan band, const TrimOptions& options) {
  auto after = errorTable(gauge, sender, network, band, options.pair);
  if (!after) return tl::make_unexpected(after.error());
  TrimProposal out;
  out.network = network;
  out.after = std::move(*after);
  out.weightedWorst = kelvins(weightedAt(out.after, options.limits.lowWeight));
  addLimitFindings(out, options);
  // What fails decides whether it may stay; a network beyond the limits may not anyway, and most are.
  if (out.withinLimits) addFailures(out, gauge, sender, options);
  return out;
}

/// What only the network that is shown needs.
Expected<TrimProposal> completed(TrimProposal proposal, const gauge::Gauge& gauge, const curve::Curve& sender,
                                 const TrimOptions& options) {
  if (proposal.failures.empty()) addFailures(proposal, gauge, sender, options);
  if (proposal.network.parts() > 0)
    for (const double tolerance : {0.01, 0.05}) {
      const auto corner = toleranceCase(gauge, sender, proposal, options.pair, tolerance);
      if (!corner) return tl::make_unexpected(corner.error());
      proposal.tolerances.push_back(*corner);
    }
  proposal.loads = partLoads(gauge, proposal.network);
  addHandlingFindings(proposal);
  return proposal;
}

/// A further resistor has to earn its place: it is a further part that fails.
double withParts(const Trimmed& each) { return inKelvin(each.weightedWorst) + kWorthTheSolder * each.network.parts(); }

/// The best of each topology that is closer than this, nearest first; one resistor more counts as kWorthTheSolder.
std::vector<Trimmed> nearestFirst(const TrimSearch& search, double closerThan) {
  std::vector<Trimmed> out;
  for (const auto& each : search.ofTopology)
    if (each && each->network.parts() > 0 && inKelvin(each->weightedWorst) < closerThan) out.push_back(*each);
  std::stable_sort(out.begin(), out.end(),
                   [](const Trimmed& a, const Trimmed& b) { return withParts(a) < withParts(b); });
  return out;
}

/// The largest weighted worst error of anything within the limits.
TemperatureDifference mostWithin(const Limits& limits) { return std::max(limits.high, limits.lowWeight * limits.low); }

/// Beyond what any limit allows, before anything else about it is known: not worth a closer look.
bool hopeless(const Trimmed& each, const Limits& limits) { return each.weightedWorst > mostWithin(limits); }

/// The nearest that may stay; else the nearest within the limits; else the nearest.
Expected<TrimProposal> mostFitting(const std::vector<Trimmed>& nearest, const gauge::Gauge& gauge,
                                   const curve::Curve& sender, TemperatureSpan band, const TrimOptions& options) {
  std::optional<TrimProposal> chosen;
  for (const Trimmed& each : nearest) {
    if (chosen && hopeless(each, options.limits)) continue;
    auto proposal = judged(gauge, sender, each.network, band, options);
    if (!proposal || proposal->permanent) return proposal;
    if (!chosen || (proposal->withinLimits && !chosen->withinLimits)) chosen = std::move(*proposal);
  }
  return *chosen;
}

/// The least error over the band may buy a late hot mark: again, among the networks alone that are on time, as surely
/// as the curves are known.
Expected<TrimProposal> hotMarkFirst(const TrimProposal& first, const gauge::Gauge& gauge, const curve::Curve& sender,
                                    TemperatureSpan band, TrimOptions options) {
  const auto* reaches = std::get_if<Reaches>(&first.after.hot);
  const TemperatureDifference margin = reaches != nullptr ? reaches->uncertainty.mismatch : kelvins(0);
  options.latest = options.limits.late - std::min(margin, options.limits.late);
  options.atMost = mostWithin(options.limits);  // beyond the limits it would not take the first one's place
  const auto search = searchTrim(gauge, sender, band, options);
  if (!search) return tl::make_unexpected(search.error());
  const auto nearest = nearestFirst(*search, 1e300);
  if (nearest.empty()) return refuse("no-trim-on-time", "trim", "no network with a resistor in it", "one on time");
  return mostFitting(nearest, gauge, sender, band, options);
}

/// The optimum of the search is not always what is proposed; then the reason is said.
Finding whyNotTheBest(const TrimProposal& chosen, const TrimSearch& search, bool bestIsLate) {
  const double closer = inKelvin(chosen.weightedWorst) - inKelvin(search.best.weightedWorst);
  const bool hardlyCloser = closer < kWorthTheSolder * (search.best.network.parts() - chosen.network.parts());
  return {"better-trim-refused", Severity::note,
          fmt::format("{} would come {} closer over the band, but {}.", search.best.network.name(),
                      closer < 0.05 ? "hardly" : fmt::format("{:.1f} K", closer),
                      hardlyCloser ? "that is not worth a further part"
                      : bestIsLate ? "brings the hot mark late"
                                   : "may not stay in a vehicle"),
          "trim search over the whole series", kComputed};
}

}  // namespace

Expected<TrimProposal> judgeTrim(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                                 TemperatureSpan band, const TrimOptions& options) {
  if (const auto sound = checked(options.limits); !sound) return tl::make_unexpected(sound.error());
  auto out = judged(gauge, sender, network, band, options);
  if (!out) return out;
  const auto before = errorTable(gauge, sender, {}, band, options.pair);
  if (!before) return tl::make_unexpected(before.error());
  out->weightedWorstBefore = kelvins(weightedAt(*before, options.limits.lowWeight));
  return completed(std::move(*out), gauge, sender, options);
}

Expected<TrimProposal> proposeTrim(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureSpan band,
                                   const TrimOptions& options) {
  auto search = searchTrim(gauge, sender, band, options);
  if (!search) return tl::make_unexpected(search.error());
  const double before = inKelvin(search->ofTopology[0] ? search->ofTopology[0]->weightedWorst : kelvins(1e300));
  const auto better = nearestFirst(*search, before - kWorthTheSolder);
  if (better.empty())
    return refuse("no-trim-helps", "trim", fmt::format("{} networks, none better than no resistor", search->networks),
                  "a pair that resistors can bring closer");
  auto chosen = mostFitting(better, gauge, sender, band, options);
  if (!chosen) return chosen;
  const bool late = against(chosen->after, options.limits).late != Standing::within;
  if (late && !options.latest && !hopeless(search->best, options.limits)) {
    auto onTime = hotMarkFirst(*chosen, gauge, sender, band, options);
    if (onTime && onTime->withinLimits) chosen = std::move(onTime);
  }
  if (!(chosen->network == search->best.network)) chosen->findings.push_back(whyNotTheBest(*chosen, *search, late));
  chosen->weightedWorstBefore = kelvins(before);
  chosen->search = std::move(*search);
  return completed(std::move(*chosen), gauge, sender, options);
}

}  // namespace ohmkin::pairing
