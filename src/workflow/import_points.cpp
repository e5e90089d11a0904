#include <fmt/format.h>
#include <workflow/import_points.h>
#include <algorithm>
#include <cmath>
#include <map>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kMostLogRows = std::size_t{1} << 19U;  ///< of all runs together, about: 16 MB
constexpr std::size_t kFewestLogRows = 512;
constexpr std::size_t kMostKept = 5000;
constexpr std::size_t kManyRuns = 20;
constexpr double kFineBin = 0.1;  // K
constexpr double kCoarseBin = 1;  // K
constexpr std::size_t kFewestSteady = 4;
constexpr int kDirections = 3;
/// Steps of temperature a run is cut into, each direction: a step of 1 K bends ln R by some 10⁻⁵, and a fit of twice as
/// many points takes twice as long and says no more.
constexpr double kSteps = 80;

std::optional<bench::Direction> directionOf(exchange::Run run) {
  if (run == exchange::Run::heating) return bench::Direction::heating;
  if (run == exchange::Run::cooling) return bench::Direction::cooling;
  return std::nullopt;
}

bool earlier(const bench::LogRow& a, const bench::LogRow& b) { return a.seconds < b.seconds; }

/// Several rows of a log as one: means, of the ohms in ln; overload where most of them are.
bench::LogRow mean(const bench::LogRow* first, std::size_t count) {
  double seconds = 0, kelvins = 0, lnOhms = 0;
  std::size_t read = 0;
  for (std::size_t i = 0; i < count; ++i) {
    seconds += first[i].seconds;
    kelvins += inKelvin(first[i].at);
    if (!first[i].ohms) continue;
    lnOhms += std::log(inOhms(*first[i].ohms));
    ++read;
  }
  const auto n = static_cast<double>(count);
  bench::LogRow row{seconds / n, kelvin(kelvins / n), std::nullopt};
  if (2 * read > count) row.ohms = ohms(std::exp(lnOhms / static_cast<double>(read)));
  return row;
}

}  // namespace

void RunRows::add(const exchange::ReadingRow& row, std::size_t runs) {
  ++rows_;
  const double at = inKelvin(row.at);
  lowest_ = std::min(lowest_, at);
  highest_ = std::max(highest_, at);
  if (!row.ohms) ++overloads_;
  if (log_) return addToLog(row, runs);
  if (!row.ohms) return;
  const Kept kept{at, inOhms(*row.ohms), row.run};
  if (width_ > 0) return addToBins(kept);
  kept_.push_back(kept);
  if (kept_.size() <= kMostKept) return;
  width_ = runs > kManyRuns ? kCoarseBin : kFineBin;
  for (const Kept& one : kept_) addToBins(one);
  kept_ = {};
}

void RunRows::addToBins(const Kept& kept) {
  const auto step = static_cast<std::int64_t>(kept.kelvin / width_);
  Bin& bin = bins_[step * kDirections + static_cast<std::int64_t>(kept.run)];
  bin.kelvin += kept.kelvin;
  bin.lnOhms += std::log(kept.ohms);
  ++bin.count;
}

void RunRows::addToLog(const exchange::ReadingRow& row, std::size_t runs) {
  const bench::LogRow one{row.seconds.value_or(0), row.at, row.ohms};
  if (rowsEach_ == 1) {
    logRows_.push_back(one);
  } else {
    pending_.push_back(one);
    if (pending_.size() < rowsEach_) return;
    logRows_.push_back(mean(pending_.data(), pending_.size()));
    pending_.clear();
  }
  const std::size_t most = std::max(kFewestLogRows, kMostLogRows / std::max<std::size_t>(1, runs));
  if (logRows_.size() >= most && logRows_.size() % 2 == 0) halve();
}

void RunRows::halve() {
  if (!std::is_sorted(logRows_.begin(), logRows_.end(), earlier))
    std::stable_sort(logRows_.begin(), logRows_.end(), earlier);
  const std::size_t half = logRows_.size() / 2;
  for (std::size_t i = 0; i < half; ++i) logRows_[i] = mean(&logRows_[2 * i], 2);
  logRows_.resize(half);
  rowsEach_ *= 2;
  pending_.clear();
  pending_.reserve(rowsEach_);
}

RunPoints RunRows::pointsOf(const Bins& fine, double width, double span) {
  const double wide = std::max(width, span / kSteps);
  std::map<std::pair<std::int64_t, std::int64_t>, Bin> coarse;
  for (const auto& [key, bin] : fine) {
    const double at = bin.kelvin / static_cast<double>(bin.count);
    Bin& into = coarse[{key % kDirections, static_cast<std::int64_t>(at / wide)}];
    into.kelvin += bin.kelvin;
    into.lnOhms += bin.lnOhms;
    into.count += bin.count;
  }
  RunPoints out;
  out.reduction = Reduction::binned;
  for (const auto& [key, bin] : coarse) {
    const auto n = static_cast<double>(bin.count);
    out.points.push_back({kelvin(bin.kelvin / n), ohms(std::exp(bin.lnOhms / n)), 0, 0,
                          directionOf(static_cast<exchange::Run>(key.first))});
  }
  out.words = fmt::format("each point is the mean of the readings within {:.2g} K", wide);
  return out;
}

RunPoints RunRows::binned(const std::vector<Kept>& rows) const {
  RunRows all(false);
  all.width_ = kFineBin;
  for (const Kept& row : rows) all.addToBins(row);
  return pointsOf(all.bins_, kFineBin, highest_ - lowest_);
}

RunPoints RunRows::asRead() const {
  if (width_ > 0) return pointsOf(bins_, width_, highest_ - lowest_);
  if (kept_.size() > kMostPoints) return binned(kept_);
  RunPoints out;
  for (const Kept& row : kept_) out.points.push_back({kelvin(row.kelvin), ohms(row.ohms), 0, 0, directionOf(row.run)});
  return out;
}

Expected<RunPoints> RunRows::points(const bench::SteadyOptions& options) const {
  if (!log_) return asRead();
  std::vector<bench::LogRow> rows = logRows_;
  if (!pending_.empty()) rows.push_back(mean(pending_.data(), pending_.size()));
  if (!std::is_sorted(rows.begin(), rows.end(), earlier)) std::stable_sort(rows.begin(), rows.end(), earlier);
  auto steady = bench::steadyPoints(rows, options);
  if (!steady) return tl::make_unexpected(steady.error());

  const std::string means =
      rowsEach_ > 1 ? fmt::format("; {} rows of the log were taken together first", rowsEach_) : "";
  RunPoints out;
  if (steady->size() >= kFewestSteady && steady->size() <= kMostPoints) {
    out.reduction = Reduction::steady;
    for (const bench::SteadyPoint& point : *steady)
      out.points.push_back({point.at, point.ohms, inKelvin(point.scatter), point.scatterLnOhms, point.direction});
    out.words = fmt::format("each point is the mean over a time in which the ohms moved less than {:g} % a minute{}",
                            100 * options.perMinute, means);
  } else {
    std::vector<Kept> all;
    for (const bench::LogRow& row : rows)
      if (row.ohms) all.push_back({inKelvin(row.at), inOhms(*row.ohms), exchange::Run::unknown});
    if (all.size() > kMostPoints) {
      out = binned(all);
      out.words += means;
    } else {
      for (const Kept& row : all) out.points.push_back({kelvin(row.kelvin), ohms(row.ohms), 0, 0, std::nullopt});
    }
    out.neverStill = rows.size() > 1 && (rows.back().seconds - rows.front().seconds) <
                                            options.dwellSeconds * static_cast<double>(rows.size() - 1);
  }
  out.steady = *std::move(steady);
  return out;
}

}  // namespace ohmkin::workflow
