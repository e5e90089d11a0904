#include <workflow/import_collector.h>

namespace ohmkin::workflow {
namespace {
constexpr auto kBetweenTellings = std::chrono::milliseconds(50);
}

std::optional<std::size_t> ImportCollector::runOf(std::string_view title) {
  if (last_ < titles_.size() && titles_[last_] == title) return last_;
  if (const auto known = byTitle_.find(title); known != byTitle_.end()) return last_ = known->second;
  if (titles_.size() == kMostRuns) {
    tooMany_ = true;
    return std::nullopt;
  }
  last_ = titles_.size();
  byTitle_.emplace(title, last_);
  titles_.emplace_back(title);
  runs_.emplace_back(log_);
  if (listener_.begun && !listener_.begun(last_, titles_.back())) return std::nullopt;
  return last_;
}

bool ImportCollector::row(const exchange::ReadingRow& row) {
  const auto run = runOf(row.curve);
  if (!run) return false;
  ++taken_;
  runs_[*run].add(row, runs_.size());
  return !listener_.row || listener_.row(*run, row);
}

bool ImportCollector::rejected(const exchange::RejectedCell& cell) {
  if (rejected_.size() < kMostRejected) rejected_.push_back(cell);
  return true;
}

bool ImportCollector::progress(std::uint64_t bytes) {
  if (!progress_) return true;
  const auto now = std::chrono::steady_clock::now();
  if (now - told_ < kBetweenTellings) return true;
  told_ = now;
  return progress_({bytes, bytes_, taken_});
}

}  // namespace ohmkin::workflow
