#pragma once
#include <exchange/reading_rows.h>
#include <string>
#include <vector>

namespace ohmkin::exchange::test {

/// A sink that keeps all it is given; stops after `most` rows.
class KeptReadings : public ReadingSink {
 public:
  struct Row {
    std::string curve;
    double celsius = 0;
    std::optional<double> ohms;
    std::optional<double> seconds;
    Run run = Run::unknown;
    std::uint64_t line = 0;
  };
  explicit KeptReadings(std::size_t most = SIZE_MAX) : most_(most) {}

  bool row(const ReadingRow& row) override {
    rows.push_back({std::string(row.curve), inCelsius(row.at),
                    row.ohms ? std::optional(inOhms(*row.ohms)) : std::nullopt, row.seconds, row.run, row.line});
    return rows.size() < most_;
  }
  bool rejected(const RejectedCell& cell) override {
    rejects.push_back(cell);
    return true;
  }

  std::vector<Row> rows;
  std::vector<RejectedCell> rejects;

 private:
  std::size_t most_;
};

}  // namespace ohmkin::exchange::test
