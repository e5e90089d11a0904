#include <catalog/bench_key.h>
#include <catalog/connection.h>
#include <catalog/reading_batch.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::catalog {
namespace {

constexpr std::size_t kInOrder = 16'384;
constexpr std::size_t kMixed = 1'000'000;
constexpr std::size_t kAhead = 8;  // rows

}  // namespace

ReadingBatch::ReadingBatch(SQLite::Database& database, RunNumber firstRun)
    : insert_(database,
              "INSERT INTO bench_reading (id, temperature, ohms, seconds, direction, u, u_ln_ohms) "
              "VALUES (?, ?, ?, ?, ?, ?, ?)"),
      firstRun_(firstRun),
      lastRun_(firstRun) {}

void ReadingBatch::add(RunNumber run, std::int64_t ordinal, const RawReading& reading) {
  const std::int64_t key = readingKey(run, ordinal);
  if (batch_.empty()) batch_.reserve(kMixed);  // only what is used of it becomes memory
  inOrder_ = inOrder_ && (batch_.empty() || batch_.back().key < key);
  lastRun_ = std::max(lastRun_, run);
  batch_.push_back({key, reading.celsius, reading.ohms, reading.seconds, reading.u, reading.uLnOhms,
                    reading.direction ? static_cast<int>(*reading.direction) : -1});
  if (batch_.size() >= (inOrder_ ? kInOrder : kMixed)) flush();
}

void ReadingBatch::put(const Held& held) {
  constexpr int kOhms = 3;
  insert_.reset();
  insert_.bind(1, held.key);
  insert_.bind(2, held.celsius);
  int place = kOhms;
  const auto bindOrNothing = [&](double value) {
    if (std::isnan(value)) insert_.bind(place++);
    else insert_.bind(place++, value);
  };
  bindOrNothing(held.ohms);
  bindOrNothing(held.seconds);
  if (held.direction < 0) insert_.bind(place++);
  else insert_.bindNoCopy(place++, held.direction == 0 ? "heating" : "cooling");
  bindOrNothing(held.u);
  bindOrNothing(held.uLnOhms);
  insert_.exec();
}

/// Where the readings stand by key. Those of one run come in order, so that counting them a run is enough.
std::vector<std::uint32_t> ReadingBatch::byKey() const {
  std::vector<std::uint32_t> next(static_cast<std::size_t>(lastRun_.value - firstRun_.value) + 2);
  const auto place = [&](const Held& held) {
    return static_cast<std::size_t>(runOf(held.key).value - firstRun_.value);
  };
  for (const Held& held : batch_) ++next[place(held) + 1];
  for (std::size_t run = 1; run < next.size(); ++run) next[run] += next[run - 1];
  std::vector<std::uint32_t> order(batch_.size());
  for (std::uint32_t i = 0; i < batch_.size(); ++i) order[next[place(batch_[i])]++] = i;
  return order;
}

void ReadingBatch::flush() {
  if (inOrder_) {
    for (const Held& held : batch_) put(held);
  } else {
    const auto order = byKey();
    for (std::size_t i = 0; i < order.size(); ++i) {
      // Scattered over more memory than the processor keeps at hand: waiting for each would take a third of the time.
      const auto* ahead = reinterpret_cast<const char*>(&batch_[order[std::min(i + kAhead, order.size() - 1)]]);
      __builtin_prefetch(ahead);
      __builtin_prefetch(ahead + sizeof(Held) - 1);
      put(batch_[order[i]]);
    }
  }
  insert_.reset();
  batch_.clear();
  inOrder_ = true;
}

}  // namespace ohmkin::catalog
