#pragma once
#include <sheet/paper.h>

/// What every trade test would show in this circuit, as a table to hang beside the bench.
namespace ohmkin::sheet {

struct PredictedResult {
  std::string result;               ///< "it goes to the cold end"
  std::vector<std::string> points;  ///< faults it points to
};

struct PredictedTest {
  std::string title;
  std::string cost;  ///< "2 min, meter"
  std::string good;  ///< what a good circuit shows
  std::vector<PredictedResult> results;
  std::string hazard;
};

struct PredictedSetup {
  std::string name;  ///< in capitals
  std::vector<PredictedTest> tests;
};

struct PredictionsSheet {
  Heading heading;
  std::vector<PredictedSetup> setups;
  std::vector<std::string> notes;
  std::vector<std::string> cautions;
};

/// As many pages as it takes; nothing is left out.
Pages drawPredictions(const PredictionsSheet& sheet, Paper paper);

}  // namespace ohmkin::sheet
