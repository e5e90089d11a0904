#include <bench/steady.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::bench {
namespace {

constexpr std::size_t kFewestRows = 3;
constexpr std::size_t kFewInMean = 5;
constexpr double kStepsInDwell = 10;  // windows are tried so many times a dwell

double lnOhms(const LogRow& row) { return std::log(inOhms(*row.ohms)); }

Expected<void> checked(std::span<const LogRow> log, const SteadyOptions& options) {
  if (!(options.perMinute > 0 && options.dwellSeconds > 0 && options.longestGapSeconds > 0 &&
        std::isfinite(options.perMinute + options.dwellSeconds + options.longestGapSeconds)))
    return refuse("steady-options", "options",
                  fmt::format("{:g} a minute, dwell {:g} s, gap {:g} s", options.perMinute, options.dwellSeconds,
                              options.longestGapSeconds),
                  "numbers above 0");
  for (std::size_t i = 0; i < log.size(); ++i) {
    const std::string where = fmt::format("row {}", i + 1);
    if (!std::isfinite(log[i].seconds) || (i > 0 && log[i].seconds < log[i - 1].seconds))
      return refuse("time-goes-back", where, fmt::format("{:g} s", log[i].seconds), "a time not before the row above");
    if (!(inKelvin(log[i].at) > 0 && inKelvin(log[i].at) < 2000))
      return refuse("reading-temperature", where, fmt::format("{:g} K", inKelvin(log[i].at)), "a temperature");
    if (log[i].ohms && !(inOhms(*log[i].ohms) > 0 && std::isfinite(inOhms(*log[i].ohms))))
      return refuse("reading-ohms", where, fmt::format("{:g} Ω", inOhms(*log[i].ohms)), "ohms above 0");
  }
  return {};
}

/// Rows first … last (inclusive) without overload and without a gap between.
struct Rows {
  std::size_t first;
  std::size_t last;
};

std::vector<Rows> unbroken(std::span<const LogRow> log, double longestGap) {
  std::vector<Rows> runs;
  bool open = false;
  for (std::size_t i = 0; i < log.size(); ++i) {
    if (!log[i].ohms) {
      open = false;
    } else if (open && log[i].seconds - log[i - 1].seconds <= longestGap) {
      runs.back().last = i;
    } else {
      runs.push_back({i, i});
      open = true;
    }
  }
  return runs;
}

/// Least-squares slope of ln ohms over the rows, per minute; none where all have one time.
std::optional<double> perMinute(std::span<const LogRow> log, Rows rows) {
  const double start = log[rows.first].seconds;
  const double level = lnOhms(log[rows.first]);
  double n = 0, t = 0, y = 0, tt = 0, ty = 0;
  for (std::size_t i = rows.first; i <= rows.last; ++i) {
    const double minutes = (log[i].seconds - start) / 60;
    const double ln = lnOhms(log[i]) - level;
    n += 1;
    t += minutes;
    y += ln;
    tt += minutes * minutes;
    ty += minutes * ln;
  }
  const double spread = tt - t * t / n;
  if (!(spread > 0)) return std::nullopt;
  return (ty - t * y / n) / spread;
}

/// Mean of ln ohms over at most `most` rows from `first` on.
double levelFrom(std::span<const LogRow> log, std::size_t first, std::size_t last, std::size_t most) {
  const std::size_t end = std::min(last, first + most - 1);
  double sum = 0;
  for (std::size_t i = first; i <= end; ++i) sum += lnOhms(log[i]);
  return sum / static_cast<double>(end - first + 1);
}

/// Neither the slope over the dwell nor the step from its first three rows to its last is more than the limit allows:
/// a slope alone would let in the end of a ramp.
bool still(std::span<const LogRow> log, Rows rows, const SteadyOptions& options) {
  const auto slope = perMinute(log, rows);
  if (!slope || std::abs(*slope) >= options.perMinute) return false;
  const double minutes = (log[rows.last].seconds - log[rows.first].seconds) / 60;
  const double step = levelFrom(log, rows.last - kFewestRows + 1, rows.last, kFewestRows) -
                      levelFrom(log, rows.first, rows.last, kFewestRows);
  return std::abs(step) <= options.perMinute * minutes;
}

/// Stretches in which some dwell is still; overlapping dwells make one stretch.
std::vector<Rows> stillStretches(std::span<const LogRow> log, Rows run, const SteadyOptions& options) {
  std::vector<Rows> stretches;
  std::size_t first = run.first;
  std::size_t last = first;
  while (true) {
    while (last < run.last &&
           (log[last].seconds - log[first].seconds < options.dwellSeconds || last - first + 1 < kFewestRows))
      ++last;
    if (log[last].seconds - log[first].seconds < options.dwellSeconds || last - first + 1 < kFewestRows)
      return stretches;
    if (still(log, {first, last}, options)) {
      if (!stretches.empty() && first <= stretches.back().last) stretches.back().last = last;
      else stretches.push_back({first, last});
    }
    const double next = log[first].seconds + options.dwellSeconds / kStepsInDwell;
    ++first;
    while (first < run.last && log[first].seconds < next) ++first;
  }
}

/// Cut where the ohms have moved by the limit since the piece began; a rest shorter than a dwell goes with the piece
/// before it.
std::vector<Rows> pieces(std::span<const LogRow> log, Rows stretch, const SteadyOptions& options) {
  std::vector<Rows> cut{{stretch.first, stretch.first}};
  for (std::size_t i = stretch.first + 1; i <= stretch.last; ++i) {
    const Rows& piece = cut.back();
    const double dwelt = log[piece.last].seconds - log[piece.first].seconds;
    const double rest = log[stretch.last].seconds - log[i].seconds;
    // Means of a few rows, so that scatter alone does not cut.
    const double moved = std::abs(levelFrom(log, i - std::min(i - piece.first, kFewInMean - 1), i, kFewInMean) -
                                  levelFrom(log, piece.first, i, kFewInMean));
    if (moved > options.perMinute && dwelt >= options.dwellSeconds && rest >= options.dwellSeconds)
      cut.push_back({i, i});
    else cut.back().last = i;
  }
  return cut;
}

SteadyPoint pointOf(std::span<const LogRow> log, Rows rows) {
  SteadyPoint point;
  point.firstRow = rows.first;
  point.lastRow = rows.last;
  point.rows = rows.last - rows.first + 1;
  const auto n = static_cast<double>(point.rows);
  double t = 0, ln = 0;
  for (std::size_t i = rows.first; i <= rows.last; ++i) {
    t += inKelvin(log[i].at) / n;
    ln += lnOhms(log[i]) / n;
  }
  double tt = 0, ll = 0;
  for (std::size_t i = rows.first; i <= rows.last; ++i) {
    tt += (inKelvin(log[i].at) - t) * (inKelvin(log[i].at) - t);
    ll += (lnOhms(log[i]) - ln) * (lnOhms(log[i]) - ln);
  }
  point.at = kelvin(t);
  point.ohms = ohms(std::exp(ln));
  point.scatter = kelvins(std::sqrt(tt / (n - 1)));
  point.scatterLnOhms = std::sqrt(ll / (n - 1));
  return point;
}

/// From where a point was reached: the point before it, or for the first one the start of the log, or else where the
/// next one lies.
void direct(std::vector<SteadyPoint>& points, std::span<const LogRow> log) {
  const auto between = [](Temperature from, Temperature to, double least) -> std::optional<Direction> {
    const double rise = inKelvin(to) - inKelvin(from);
    if (std::abs(rise) <= least) return std::nullopt;
    return rise > 0 ? Direction::heating : Direction::cooling;
  };
  constexpr double kLeast = 0.1;  // K: less is the bath's own unrest
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0) {
      points[i].direction = between(points[i - 1].at, points[i].at, kLeast);
      if (!points[i].direction) points[i].direction = points[i - 1].direction;
      continue;
    }
    points[i].direction = between(log.front().at, points[i].at, std::max(1.0, 3 * inKelvin(points[i].scatter)));
    if (!points[i].direction && points.size() > 1) points[i].direction = between(points[0].at, points[1].at, kLeast);
  }
}

}  // namespace

Reading SteadyPoint::reading(TemperatureDifference uBath, double uLnMeter) const {
  return {at, kelvins(std::hypot(inKelvin(uBath), inKelvin(scatter))), ohms, std::hypot(uLnMeter, scatterLnOhms),
          direction};
}

Expected<std::vector<SteadyPoint>> steadyPoints(std::span<const LogRow> log, const SteadyOptions& options) {
  if (auto fine = checked(log, options); !fine) return tl::make_unexpected(fine.error());
  std::vector<SteadyPoint> points;
  for (const Rows run : unbroken(log, options.longestGapSeconds))
    for (const Rows stretch : stillStretches(log, run, options))
      for (const Rows piece : pieces(log, stretch, options)) points.push_back(pointOf(log, piece));
  direct(points, log);
  return points;
}

}  // namespace ohmkin::bench
