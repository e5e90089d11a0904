#pragma once
#include <workflow/import_points.h>
#include <workflow/import_readings.h>
#include <chrono>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

/// Takes the rows of a file as they are read and sorts them by curve.
namespace ohmkin::workflow {

class ImportCollector : public exchange::ReadingSink {
 public:
  /// `begun` is asked once for each curve as it appears, `row` gets every row of it; both may be empty, and either ends
  /// the reading by returning false.
  struct Listener {
    std::function<bool(std::size_t run, const std::string& title)> begun;
    std::function<bool(std::size_t run, const exchange::ReadingRow& row)> row;
  };
  ImportCollector(bool log, std::uint64_t bytes, const OnProgress& progress, Listener listener)
      : log_(log), bytes_(bytes), progress_(progress), listener_(std::move(listener)) {}

  bool row(const exchange::ReadingRow& row) override;
  bool rejected(const exchange::RejectedCell& cell) override;
  bool progress(std::uint64_t bytes) override;

  [[nodiscard]] const std::vector<std::string>& titles() const { return titles_; }
  [[nodiscard]] const RunRows& rows(std::size_t run) const { return runs_[run]; }
  [[nodiscard]] std::vector<exchange::RejectedCell> takeRejected() { return std::move(rejected_); }
  [[nodiscard]] bool tooMany() const { return tooMany_; }  ///< more than kMostRuns curves: stopped

 private:
  struct TextHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
  };
  /// None: there are too many, or the listener wants no more.
  std::optional<std::size_t> runOf(std::string_view title);

  bool log_;
  std::uint64_t bytes_;
  const OnProgress& progress_;
  Listener listener_;
  std::unordered_map<std::string, std::size_t, TextHash, std::equal_to<>> byTitle_;
  std::vector<std::string> titles_;
  std::vector<RunRows> runs_;
  std::size_t last_ = 0;
  std::uint64_t taken_ = 0;
  bool tooMany_ = false;
  std::chrono::steady_clock::time_point told_{};  ///< long ago: the first is told at once
  std::vector<exchange::RejectedCell> rejected_;
};

}  // namespace ohmkin::workflow
