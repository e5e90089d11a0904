#include <pairing/monte_carlo.h>

#include <fmt/format.h>
#include <pairing/budget.h>
#include <pairing/draw_block.h>
#include <pairing/pair.h>
#include <quantity/print.h>
#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <thread>

namespace ohmkin::pairing {
namespace {

constexpr std::size_t kFewestDraws = 1000;
constexpr double kMostValues = 1e8;

/// What one row's draws start from.
struct RowStart {
  double kelvin;
  double known;        ///< of the sender's curve, ln Ω, k = 1
  double familyKnown;  ///< of the family's curve where the needle stands; 0 where the movement reads the dial
};

/// Feed resistors at the ends of their tolerance; between them and the nominal one readings are interpolated by a
/// parabola.
struct FeedEnds {
  std::optional<Pair> less;
  std::optional<Pair> more;
};

class Model {
 public:
  Model(const Pair& pair, const PairOptions& options, FeedEnds feed)
      : pair_(&pair),
        options_(&options),
        feed_(std::move(feed)),
        tolerance_(options.inputs.senderTolerance.value_or(curve::kAssumedTolerance)) {
    const auto& movement = pair.gauge().movement();
    const TemperatureSpan marked = pair.gauge().dial().marked();
    gaugeWidth_ = options.inputs.gaugeTolerance * inKelvin(marked.high - marked.low);
    bimetal_ = movement && std::holds_alternative<gauge::Bimetal>(*movement);
    const auto* coil = movement ? std::get_if<gauge::CrossedCoil>(&*movement) : nullptr;
    byTheLongWay_ = movement && (!pair.standard() || (coil != nullptr && coil->magnet));
    const TemperatureSpan valid = pair.sender().valid();
    low_ = inKelvin(valid.low);
    high_ = inKelvin(valid.high);
  }

  void errors(const RowStart& row, const DrawBlock& draws, double* out) const {
    for (std::size_t i = 0; i < draws.size(); ++i) out[i] = error(row, draws, i);
  }

  [[nodiscard]] RowStart start(double kelvin) const {
    const double family =
        pair_->original().readByFamily() ? knowledgeNear(pair_->original().family(), pair_->shown(kelvin)) : 0;
    return {kelvin, knowledgeNear(pair_->sender(), kelvin), family};
  }

 private:
  [[nodiscard]] double lnOhmsAt(double kelvin) const {
    // A place warmer than the coolant at the tip may lie past the curve's end: straight on from there.
    const double on = std::clamp(kelvin, low_, high_);
    const double ln = pair_->sender().lnOhms(on);
    return on == kelvin ? ln : ln + pair_->sender().lnOhmsSlope(on) * (kelvin - on);
  }

  [[nodiscard]] double seen(double sender, const DrawBlock& draws, std::size_t i) const {
    const double s = inOhms(pair_->trim().seriesOhms()) * (1 + options_->inputs.resistorTolerance * draws.series[i]);
    const double p =
        inOhms(pair_->trim().parallelOhms()) * (1 + options_->inputs.resistorTolerance * draws.parallel[i]);
    switch (pair_->trim().topology()) {
      case Topology::series:
        return sender + s;
      case Topology::parallel:
        return sender * p / (sender + p);
      case Topology::parallelThenSeries:
        return sender * p / (sender + p) + s;
      case Topology::seriesThenParallel:
        return (sender + s) * p / (sender + s + p);
      case Topology::none:
      case Topology::feedToSender:
        break;
    }
    return sender;
  }

  [[nodiscard]] double shown(const Pair& pair, double seen, const DrawBlock& draws, std::size_t i) const {
    const double warmer = inKelvin(options_->inputs.cluster) * draws.cluster[i];
    if (byTheLongWay_) {
      gauge::Conditions conditions = pair.conditions();
      conditions.cluster += kelvins(warmer);
      conditions.supply += options_->inputs.supply * draws.supply[i];
      return inKelvin(pair.gauge().indicated(ohms(seen), conditions).shown);
    }
    const double copper = bimetal_ ? 1 : 1 + gauge::kCopperPerKelvin * warmer;
    return pair.gauge().shownAtOhms(seen / copper);
  }

  [[nodiscard]] double error(const RowStart& row, const DrawBlock& draws, std::size_t i) const {
    const double ln = lnOhmsAt(row.kelvin + inKelvin(options_->inputs.location) * draws.location[i]) +
                      draws.senderCurve[i] * row.known;
    const double sender = std::exp(ln) * (1 + tolerance_ * draws.senderTolerance[i]);
    const double familyDraw = options_->sameFamily ? draws.senderCurve[i] : draws.familyCurve[i];
    double ohms = seen(sender, draws, i);
    if (row.familyKnown > 0) ohms *= std::exp(-familyDraw * row.familyKnown);
    double at = shown(*pair_, ohms, draws, i);
    if (feed_.less && feed_.more) {
      const double u = draws.series[i];
      const double less = shown(*feed_.less, ohms, draws, i) - at;
      const double more = shown(*feed_.more, ohms, draws, i) - at;
      at += u * ((more - less) + u * (more + less)) / 2;
    }
    return at + gaugeWidth_ * draws.gaugeTolerance[i] - row.kelvin;
  }

  const Pair* pair_;
  const PairOptions* options_;
  FeedEnds feed_;
  double tolerance_;
  double gaugeWidth_ = 0;
  double low_ = 0;
  double high_ = 0;
  bool bimetal_ = false;
  bool byTheLongWay_ = false;
};

FeedEnds feedEnds(const Pair& pair, const PairOptions& options) {
  if (pair.trim().topology() != Topology::feedToSender) return {};
  const auto at = [&](double part) {
    auto end = Pair::make(pair.original(), pair.sender(), TrimNetwork::feedToSender(pair.trim().feedOhms() * part),
                          pair.conditions());
    return end ? std::optional(std::move(*end)) : std::nullopt;
  };
  return {at(1 - options.inputs.resistorTolerance), at(1 + options.inputs.resistorTolerance)};
}

/// Runs work(0 … count−1) on so many threads; stops early where asked to.
void shareOut(std::size_t count, unsigned threads, const std::stop_token& stop,
              const std::function<void(std::size_t)>& work) {
  std::atomic<std::size_t> next{0};
  const auto serve = [&] {
    for (std::size_t i = next++; i < count && !stop.stop_requested(); i = next++) work(i);
  };
  std::vector<std::jthread> helpers;
  for (unsigned t = 1; t < threads; ++t) helpers.emplace_back(serve);
  serve();
}

/// Mean, spread and 95 % interval of one row. Sums run in the order of the draws, so that threads leave no trace in the
/// last digit.
SampledRow summed(std::vector<double>& errors, double kelvin, double nominal, double firstOrder, double disagreement) {
  const auto count = static_cast<double>(errors.size());
  double mean = 0;
  for (const double e : errors) mean += e;
  mean /= count;
  double squares = 0;
  for (const double e : errors) squares += (e - mean) * (e - mean);
  const double standard = std::sqrt(squares / (count - 1));

  const auto covered = static_cast<std::size_t>(std::lround(0.95 * count));
  const auto low = errors.begin() + static_cast<std::ptrdiff_t>((errors.size() - covered) / 2);
  std::nth_element(errors.begin(), low, errors.end());
  const double low95 = *low;
  const auto high = low + static_cast<std::ptrdiff_t>(covered) - 1;
  std::nth_element(low + 1, high, errors.end());
  const double high95 = *high;

  const double apart = std::max(std::abs(mean - nominal), std::abs(standard - firstOrder));
  return {ohmkin::kelvin(kelvin),
          kelvins(mean),
          kelvins(standard),
          kelvins(low95),
          kelvins(high95),
          kelvins(firstOrder),
          apart <= disagreement * firstOrder};
}

std::string inWords(const std::vector<SampledRow>& rows, const DisplayUnits& units) {
  std::string out;
  double widest = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].linear) continue;
    const std::size_t first = i;
    while (i + 1 < rows.size() && !rows[i + 1].linear) ++i;
    out += (out.empty() ? "" : " and ") + print(rows[first].trueTemperature, units) +
           (i > first ? " to " + print(rows[i].trueTemperature, units) : "");
    for (std::size_t j = first; j <= i; ++j)
      widest = std::max(widest, std::abs(rows[j].standard / rows[j].firstOrder - 1));
  }
  if (out.empty()) return "First order (JCGM 100) and Monte Carlo (JCGM 101) agree over the whole band.";
  return fmt::format(
      "First order (JCGM 100) does not hold at {}: the spread there is up to {:.0f} % off, or the mean is shifted; "
      "the Monte Carlo (JCGM 101) figures are to be used.",
      out, 100 * widest);
}

Expected<void> soundDraws(const Draws& draws, std::size_t rows) {
  if (draws.count < kFewestDraws || static_cast<double>(draws.count) * static_cast<double>(rows) > kMostValues)
    return refuse("draws-out-of-range", "draws", fmt::format("{} draws of {} rows", draws.count, rows),
                  fmt::format("{} draws or more, and at most {:.0e} values", kFewestDraws, kMostValues));
  if (!(draws.disagreement > 0))
    return refuse("draws-out-of-range", "disagreement", fmt::format("{:g}", draws.disagreement), "a part above 0");
  return {};
}

}  // namespace

bool Sampled::linear() const {
  return std::all_of(rows.begin(), rows.end(), [](const SampledRow& row) { return row.linear; });
}

Expected<Sampled> monteCarlo(const gauge::Gauge& gauge, const curve::Curve& sender, const ErrorTable& table,
                             const Draws& draws, const std::stop_token& stop) {
  if (const auto sound = soundDraws(draws, table.rows.size()); !sound) return tl::make_unexpected(sound.error());
  const auto pair = Pair::make(gauge, sender, table.trim, table.options.conditions);
  if (!pair) return tl::make_unexpected(pair.error());
  const Model model(*pair, table.options, feedEnds(*pair, table.options));
  std::vector<RowStart> starts;
  starts.reserve(table.rows.size());
  for (const ErrorRow& row : table.rows) starts.push_back(model.start(inKelvin(row.trueTemperature)));

  std::vector<std::vector<double>> errors(starts.size(), std::vector<double>(draws.count));
  const std::size_t blocks = (draws.count + kDrawsPerBlock - 1) / kDrawsPerBlock;
  const unsigned threads = draws.threads > 0 ? draws.threads : std::max(1U, std::thread::hardware_concurrency());
  shareOut(blocks, threads, stop, [&](std::size_t block) {
    const std::size_t first = block * kDrawsPerBlock;
    const DrawBlock inputs = drawBlock(draws.seed, block, std::min(kDrawsPerBlock, draws.count - first));
    for (std::size_t r = 0; r < starts.size(); ++r) model.errors(starts[r], inputs, errors[r].data() + first);
  });

  Sampled out;
  out.draws = draws;
  out.rows.resize(starts.size());
  shareOut(starts.size(), threads, stop, [&](std::size_t r) {
    const double firstOrder = inKelvin(table.rows[r].uncertainty.total()) / 2;
    out.rows[r] = summed(errors[r], starts[r].kelvin, inKelvin(table.rows[r].error), firstOrder, draws.disagreement);
  });
  if (stop.stop_requested()) return refuse("cancelled", "", "a stop asked for while drawing", "to be left to finish");
  out.comparison = inWords(out.rows, draws.units);
  return out;
}

}  // namespace ohmkin::pairing
