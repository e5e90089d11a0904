#include <pairing/trim_search.h>

#include <fmt/format.h>
#include <pairing/allowed_ohms.h>
#include <pairing/stations.h>
#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmkin::pairing {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

double beside(double a, double b) { return a * b / (a + b); }

// What the two-part topologies have to tell: ohms seen, and the span of series ohms that keeps them within low … high.
struct ParallelThenSeries {
  static double seen(double r, double p, double s) { return beside(r, p) + s; }
  static TrimNetwork network(double p, double s) { return TrimNetwork::parallelThenSeries(ohms(p), ohms(s)); }
  static void narrow(double r, double p, double low, double high, double& least, double& most) {
    const double both = beside(r, p);
    least = std::max(least, low - both);
    most = std::min(most, high - both);
  }
};

struct SeriesThenParallel {
  static double seen(double r, double p, double s) { return beside(r + s, p); }
  static TrimNetwork network(double p, double s) { return TrimNetwork::seriesThenParallel(ohms(s), ohms(p)); }
  static void narrow(double r, double p, double low, double high, double& least, double& most) {
    if (low >= p) most = -1;  // with any branch beside it, p alone is already too little
    else least = std::max(least, low * p / (p - low) - r);
    if (high < p) most = std::min(most, high * p / (p - high) - r);
  }
};

class Search {
 public:
  Search(const gauge::Gauge& gauge, const Stations& stations, std::vector<double> values, const TrimOptions& options)
      : gauge_(&gauge),
        stations_(&stations),
        values_(std::move(values)),
        order_(spreadOrder(values_.size())),
        // Just above, so that what is at most this is below it.
        limit_(options.atMost ? std::nextafter(inKelvin(*options.atMost), kInfinite) : kInfinite),
        allowed_(gauge, stations, options.limits.lowWeight) {}

  void none() {
    const Worst worst = computed([](double r) { return r; });
    keep(TrimNetwork(), worst.weighted());
    out_.networks += 1;
  }

  void series() {
    const Best best = bisected(0, values_.size(), [](double r, double s) { return r + s; });
    keep(TrimNetwork::series(ohms(values_[best.index])), best.weighted);
    out_.networks += values_.size();
  }

  void parallel() {
    const Best best = bisected(0, values_.size(), [](double r, double p) { return beside(r, p); });
    keep(TrimNetwork::parallel(ohms(values_[best.index])), best.weighted);
    out_.networks += values_.size();
  }

  /// Two resistors seldom do worse than one: what cannot beat the best of one is left out, unless nothing can.
  template <class Shape>
  void twoParts() {
    const double first = std::min(limit_, ofOnePart());
    if (!twoPartsWithin<Shape>(first) && first < limit_) twoPartsWithin<Shape>(limit_);
    out_.networks += values_.size() * values_.size();
  }

  /// Every error moves one way as the feed resistor grows: the field turns towards one coil's axis, whatever the
  /// sender's ohms.
  void feed() {
    if (!trimmed(*gauge_, TrimNetwork::feedToSender(ohms(values_.front())))) return;
    std::size_t first = 0;
    std::size_t last = values_.size();
    while (first < last) {
      const std::size_t middle = first + (last - first) / 2;
      const auto network = TrimNetwork::feedToSender(ohms(values_[middle]));
      const auto altered = trimmed(*gauge_, network);
      if (!altered) break;
      const Worst worst = computed([](double r) { return r; }, *altered);
      keep(network, worst.weighted());
      // With less of it the needle reads lower.
      (worst.high >= worst.low ? last : first) = worst.high >= worst.low ? middle : middle + 1;
    }
    out_.networks += values_.size();
  }

  Expected<TrimSearch> result() {
    const Trimmed* best = nullptr;
    for (const auto& each : out_.ofTopology)
      if (each && (best == nullptr || rank(*each) < rank(*best))) best = &*each;
    if (best != nullptr) out_.best = *best;
    else
      return refuse("no-trim-on-time", "trim", fmt::format("{} networks, all later or further off", out_.networks),
                    "a network that brings the needle to the hot mark in time");
    out_.excluded = out_.networks - out_.evaluated;
    return out_;
  }

 private:
  struct Best {
    std::size_t index = 0;
    double weighted = kInfinite;
  };

  static std::pair<double, int> rank(const Trimmed& t) { return {inKelvin(t.weightedWorst), t.network.parts()}; }

  void keep(const TrimNetwork& network, double weighted) {
    auto& place = out_.ofTopology[static_cast<std::size_t>(network.topology())];
    if (!(weighted < limit_)) return;
    if (!place || weighted < inKelvin(place->weightedWorst)) place = Trimmed{network, kelvins(weighted)};
  }

  double ofOnePart() const {
    double best = kInfinite;
    for (const Topology each : {Topology::series, Topology::parallel})
      if (const auto& found = out_.ofTopology[static_cast<std::size_t>(each)])
        best = std::min(best, inKelvin(found->weightedWorst));
    return best;
  }

  /// Keeps the best network of this shape, if one is below the target; whether there was one.
  template <class Shape>
  bool twoPartsWithin(double target) {
    bool found = false;
    if (std::isfinite(target)) allowed_.narrowTo(target);
    else allowed_.widen();
    for (const std::size_t i : order_) {
      const double p = values_[i];
      const auto [first, last] = seriesAllowed<Shape>(p);
      if (first >= last) continue;
      const Best best = bisected(first, last, [p](double r, double s) { return Shape::seen(r, p, s); });
      if (!(best.weighted < target)) continue;
      found = true;
      target = best.weighted;
      allowed_.narrowTo(target);
      keep(Shape::network(p, values_[best.index]), target);
    }
    return found;
  }

  /// At the first so many stations, and at the hot mark.
  template <class Seen>
  Worst worstAt(std::size_t stations, Seen seen, const gauge::Gauge& gauge) const {
    double high = -kInfinite;
    double low = -kInfinite;
    for (std::size_t i = 0; i < stations; ++i) {
      const double error = gauge.shownAtOhms(seen(stations_->ohms[i])) - stations_->kelvin[i];
      high = std::max(high, error);
      low = std::max(low, -error);
    }
    const auto& hotBy = stations_->hotBy;
    if (hotBy && gauge.shownAtOhms(seen(hotBy->ohms)) < hotBy->mark) low = kInfinite;
    return {high, low * allowed_.lowWeight()};
  }
  template <class Seen>
  Worst computed(Seen seen, const gauge::Gauge& gauge) {
    ++out_.evaluated;
    return worstAt(stations_->size(), seen, gauge);
  }
  template <class Seen>
  Worst computed(Seen seen) {
    return computed(seen, *gauge_);
  }

  [[nodiscard]] bool tooMuch(const Worst& worst) const {
    return allowed_.gaugeFalls() ? worst.low >= worst.high : worst.high >= worst.low;
  }

  /// The best of values first … last−1 where every error moves one way along them: reading high and reading low cross
  /// once, and the best is on one side or the other of where they do. A few stations tell about where; all of them,
  /// where exactly.
  template <class Seen>
  Best bisected(std::size_t first, std::size_t last, Seen seen) {
    const auto with = [&](std::size_t i) { return [&seen, value = values_[i]](double r) { return seen(r, value); }; };
    std::size_t low = first;
    std::size_t high = last;
    while (low < high) {
      const std::size_t middle = low + (high - low) / 2;
      if (tooMuch(worstAt(allowed_.bounding(), with(middle), *gauge_))) high = middle;
      else low = middle + 1;
    }
    Best best;
    const auto tooMuchAt = [&](std::size_t i) {
      const Worst worst = computed(with(i));
      if (worst.weighted() < best.weighted) best = {i, worst.weighted()};
      return tooMuch(worst);
    };
    if (low < last && !tooMuchAt(low)) {
      while (++low < last && !tooMuchAt(low)) {
      }
    } else {
      while (low > first && tooMuchAt(low - 1)) --low;
    }
    return best;
  }

  /// Indices of the series values that can meet the target beside this parallel one.
  template <class Shape>
  std::pair<std::size_t, std::size_t> seriesAllowed(double p) const {
    double least = values_.front();
    double most = values_.back();
    if (stations_->hotBy) Shape::narrow(stations_->hotBy->ohms, p, allowed_.hotLow(), allowed_.hotHigh(), least, most);
    for (std::size_t i = 0; i < allowed_.bounding(); ++i) {
      Shape::narrow(stations_->ohms[i], p, allowed_.low(i), allowed_.high(i), least, most);
      if (least > most) return {0, 0};
    }
    const auto first = std::lower_bound(values_.begin(), values_.end(), least);
    const auto last = std::upper_bound(first, values_.end(), most);
    return {static_cast<std::size_t>(first - values_.begin()), static_cast<std::size_t>(last - values_.begin())};
  }

  const gauge::Gauge* gauge_;
  const Stations* stations_;
  std::vector<double> values_;
  std::vector<std::size_t> order_;
  double limit_;
  AllowedOhms allowed_;
  TrimSearch out_;
};

Expected<std::vector<double>> valuesOf(const TrimOptions& options) {
  std::vector<double> out;
  if (options.drawer.empty()) out = preferredOhms(options.series, options.lowest, options.highest);
  for (const Ohms& each : options.drawer) {
    if (!(inOhms(each) > 0) || !std::isfinite(inOhms(each)))
      return refuse("resistor-out-of-range", "drawer", fmt::format("{:g} Ω", inOhms(each)), "resistors above 0 Ω");
    out.push_back(inOhms(each));
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  if (out.empty())
    return refuse("no-resistor-values", "trim",
                  fmt::format("{:g} to {:g} Ω", inOhms(options.lowest), inOhms(options.highest)),
                  "a span above 0 Ω with at least one value of the series in it");
  return out;
}

}  // namespace

Expected<TrimSearch> searchTrim(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureSpan band,
                                const TrimOptions& options) {
  if (const auto sound = checked(options.limits); !sound) return tl::make_unexpected(sound.error());
  const auto covered = coveredPart(band, sender);
  if (!covered) return tl::make_unexpected(covered.error());
  if (options.pair.rows < 2)
    return refuse("rows-too-few", "rows", fmt::format("{}", options.pair.rows), "at least 2 temperatures");
  auto values = valuesOf(options);
  if (!values) return tl::make_unexpected(values.error());

  Stations stations = stationsOf(sender, *covered, options.pair.rows);
  if (options.latest) {
    const auto hot = hotBy(gauge, sender, *options.latest);
    if (!hot) return tl::make_unexpected(hot.error());
    stations.hotBy = *hot;
  }
  Search search(gauge, stations, std::move(*values), options);
  search.none();
  search.series();
  search.parallel();
  search.twoParts<ParallelThenSeries>();
  search.twoParts<SeriesThenParallel>();
  if (options.feedToSender) search.feed();
  return search.result();
}

}  // namespace ohmkin::pairing
