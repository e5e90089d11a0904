#pragma once
#include <sheet/paper.h>

/// When an engine was made, on paper: to be filed with it.
namespace ohmkin::sheet {

/// One way to read a code.
struct DateMeaning {
  std::string code;     ///< "left head, H 22 1"; empty where it is that of the row above
  std::string reading;  ///< "22 Aug 1981"
  std::string how;      ///< "8 read as 3"
  std::string chance;   ///< "97 %"
};

/// A bar of the time line, in years with their fraction: 1981.64.
struct DateBar {
  std::string name;
  double from = 0;
  double until = 0;
  std::string words;  ///< "22 Aug 1981"
};

/// How likely the engine was assembled in this span of years.
struct DateChance {
  double from = 0;
  double until = 0;
  double probability = 0;
};

struct EngineDate {
  std::string date;     ///< of printing
  std::string summary;  ///< "1980s (99 %), most probably 22 Aug 1981"
  std::string engine;   ///< whose engine it is; may be empty
  std::vector<std::string> alarms;
  std::vector<DateMeaning> meanings;
  std::vector<DateChance> chances;  ///< of equal length; those next to nothing may be left out
  std::vector<DateBar> bars;
  std::vector<std::string> reasons;
  std::string judgement;  ///< on what usual lags it rests
};

Pages drawEngineDate(const EngineDate& what, Paper paper);

}  // namespace ohmkin::sheet
