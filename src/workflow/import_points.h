#pragma once
#include <bench/steady.h>
#include <curve/fit.h>
#include <exchange/reading_rows.h>
#include <workflow/import_readings.h>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

/// From the rows of a run, however many, to the few points that a curve is fitted to, in bounded memory.
namespace ohmkin::workflow {

/// A point before meter and bath are known.
struct RunPoint {
  Temperature at;
  Ohms ohms;
  double scatterKelvin = 0;  ///< of a steady point: standard deviation of one row
  double scatterLnOhms = 0;
  std::optional<bench::Direction> direction;
};

struct RunPoints {
  std::vector<RunPoint> points;
  std::vector<bench::SteadyPoint> steady;
  Reduction reduction = Reduction::none;
  std::string words;        ///< how it was reduced; empty: not at all
  bool neverStill = false;  ///< a log dense enough to tell, and it was never still: lag is in its points
};

/// Takes the rows of one run. A log is kept row by row up to a limit; above it neighbours are averaged in pairs, and
/// again, so that a dwell is seen as well as before. What is no log is kept up to kMostKept readings; above it
/// readings of 0.1 K (many runs: 1 K) are averaged as they come.
class RunRows {
 public:
  explicit RunRows(bool log) : log_(log) {}
  /// `runs` is how many share the memory.
  void add(const exchange::ReadingRow& row, std::size_t runs);

  [[nodiscard]] std::uint64_t rows() const { return rows_; }
  [[nodiscard]] std::uint64_t overloads() const { return overloads_; }
  [[nodiscard]] TemperatureSpan span() const { return {kelvin(lowest_), kelvin(highest_)}; }
  [[nodiscard]] bool log() const { return log_; }

  [[nodiscard]] Expected<RunPoints> points(const bench::SteadyOptions& options) const;

 private:
  struct Bin {
    double kelvin = 0;
    double lnOhms = 0;
    std::uint64_t count = 0;
  };
  using Bins = std::unordered_map<std::int64_t, Bin>;
  struct Kept {
    double kelvin = 0;
    double ohms = 0;
    exchange::Run run = exchange::Run::unknown;
  };
  void addToLog(const exchange::ReadingRow& row, std::size_t runs);
  void addToBins(const Kept& kept);
  void halve();
  [[nodiscard]] RunPoints asRead() const;
  [[nodiscard]] RunPoints binned(const std::vector<Kept>& rows) const;
  static RunPoints pointsOf(const Bins& fine, double width, double span);

  bool log_;
  std::uint64_t rows_ = 0;
  std::uint64_t overloads_ = 0;
  double lowest_ = 1e9;
  double highest_ = 0;
  std::vector<bench::LogRow> logRows_;
  std::uint64_t rowsEach_ = 1;          ///< of the file, in a row of the log as kept
  std::vector<bench::LogRow> pending_;  ///< fewer than rowsEach_: not yet a row
  std::vector<Kept> kept_;
  Bins bins_;
  double width_ = 0;  ///< K, of the bins; 0: none yet
};

}  // namespace ohmkin::workflow
