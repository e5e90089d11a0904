#pragma once
#include <catalog/bench_writer.h>
#include <workflow/import_beginning.h>
#include <workflow/import_collector.h>
#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

/// Reading a file on a thread of its own, some rows ahead of whoever writes them: the two take about as long.
namespace ohmkin::workflow {

/// The rows, or why there are none; on the caller's own thread.
Expected<exchange::ReadingTally> rowsOf(const ReadingsFile& file, const exchange::ReadingPlan& plan,
                                        ImportCollector& collector);

class ReadAhead {
 public:
  struct Row {
    std::size_t run = 0;
    catalog::RawReading reading;
  };
  struct Batch {
    std::vector<std::string> begun;  ///< curves that are new in it, before their rows; numbered on from earlier batches
    std::vector<Row> rows;
    std::optional<ImportProgress> progress;
  };

  /// `file` and `plan` outlive it.
  ReadAhead(const ReadingsFile& file, const exchange::ReadingPlan& plan, std::uint64_t bytes);
  ~ReadAhead();  ///< stops reading where it has not ended
  ReadAhead(const ReadAhead&) = delete;
  ReadAhead& operator=(const ReadAhead&) = delete;

  /// None: the end. Throws what the reading threw.
  std::optional<Batch> next();
  /// After the end only.
  [[nodiscard]] const Expected<exchange::ReadingTally>& tally() const { return *tally_; }
  [[nodiscard]] ImportCollector& collector() { return collector_; }

 private:
  bool handOver();
  void read(const ReadingsFile& file, const exchange::ReadingPlan& plan);

  OnProgress tell_;
  ImportCollector collector_;
  Batch filling_;  ///< the reading thread's own
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<Batch> ready_;
  bool ended_ = false;
  bool stop_ = false;
  std::exception_ptr thrown_;
  std::optional<Expected<exchange::ReadingTally>> tally_;
  std::thread thread_;  ///< last: begins when all else is there
};

}  // namespace ohmkin::workflow
