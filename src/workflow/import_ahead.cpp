#include <fmt/format.h>
#include <workflow/import_ahead.h>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kBatchRows = 8192;
constexpr std::size_t kMostReady = 4;  ///< batches: 2 MB

catalog::RawReading rawOf(const exchange::ReadingRow& row) {
  catalog::RawReading raw;
  raw.celsius = inCelsius(row.at);
  if (row.ohms) raw.ohms = inOhms(*row.ohms);
  if (row.seconds) raw.seconds = *row.seconds;
  if (row.run == exchange::Run::heating) raw.direction = catalog::RunDirection::heating;
  if (row.run == exchange::Run::cooling) raw.direction = catalog::RunDirection::cooling;
  return raw;
}

}  // namespace

Expected<exchange::ReadingTally> rowsOf(const ReadingsFile& file, const exchange::ReadingPlan& plan,
                                        ImportCollector& collector) {
  const auto in = opened(file);
  const auto tally = exchange::readRows(*in, plan, file.name, collector);
  if (!tally) return tally;
  if (collector.tooMany())
    return refuse("file-of-too-many-curves", file.name, fmt::format("more than {} curves", kMostRuns),
                  "a column that names the curve; correct how the file is read");
  return tally;
}

ReadAhead::ReadAhead(const ReadingsFile& file, const exchange::ReadingPlan& plan, std::uint64_t bytes)
    : tell_([this](const ImportProgress& progress) {
        filling_.progress = progress;
        return handOver();
      }),
      collector_(!plan.with(exchange::Role::time).empty(), bytes, tell_,
                 {[this](std::size_t, const std::string& title) {
                    filling_.begun.push_back(title);
                    return true;
                  },
                  [this](std::size_t run, const exchange::ReadingRow& row) {
                    filling_.rows.push_back({run, rawOf(row)});
                    return filling_.rows.size() < kBatchRows || handOver();
                  }}),
      thread_([this, &file, &plan] { read(file, plan); }) {}

ReadAhead::~ReadAhead() {
  {
    const std::lock_guard lock(mutex_);
    stop_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

/// False: nobody wants more.
bool ReadAhead::handOver() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return stop_ || ready_.size() < kMostReady; });
  if (stop_) return false;
  ready_.push_back(std::move(filling_));
  lock.unlock();
  changed_.notify_all();
  filling_ = Batch{};
  filling_.rows.reserve(kBatchRows);
  return true;
}

void ReadAhead::read(const ReadingsFile& file, const exchange::ReadingPlan& plan) {
  std::exception_ptr thrown;
  std::optional<Expected<exchange::ReadingTally>> tally;
  try {
    tally = rowsOf(file, plan, collector_);
    handOver();
  } catch (...) {  // handed to the thread that asks
    thrown = std::current_exception();
  }
  {
    const std::lock_guard lock(mutex_);
    thrown_ = thrown;
    tally_ = std::move(tally);
    ended_ = true;
  }
  changed_.notify_all();
}

std::optional<ReadAhead::Batch> ReadAhead::next() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return ended_ || !ready_.empty(); });
  if (ready_.empty()) {
    if (thrown_) std::rethrow_exception(thrown_);
    return std::nullopt;
  }
  Batch batch = std::move(ready_.front());
  ready_.pop_front();
  lock.unlock();
  changed_.notify_all();
  return batch;
}

}  // namespace ohmkin::workflow
