#pragma once
#include <sheet/circuit.h>
#include <sheet/paper.h>

#include <optional>

/// A trim network for whoever builds it in and whoever opens the dash years later: how it is wired, what to buy, what
/// the needle then shows, and what it shows when a part fails.
namespace ohmkin::sheet {

struct TrimPart {
  std::string part;     ///< "parallel resistor"
  std::string value;    ///< "510 Ω"
  std::string working;  ///< "0.31 W", "not known"
  std::string shorted;  ///< with the sender post shorted to feed
  std::string rating;   ///< "3 W"
};

struct TrimCorner {
  std::string parts;  ///< "1 %"
  std::string low;
  std::string high;
  std::string hot;  ///< "2.1 K late"
};

struct TrimRow {
  std::string truth;
  std::string before;  ///< indicated without resistors
  std::string after;
  std::string error;
  std::string uncertainty;
};

struct TrimPoint {
  double truth = 0;
  double error = 0;
  double uncertainty = 0;
};

struct TrimFailure {
  std::string what;   ///< "The lead is open"
  std::string shown;  ///< "the needle lies at the cold end with the engine warm"
  std::string atHot;  ///< what it shows with the coolant at the hot mark
  bool noticed = false;
  bool misleads = false;  ///< reads low, and nobody sees it: printed with a mark of its own
};

/// What the sheet says in its largest letters.
enum class TrimStanding { mayStay, toGetHomeOnly, notGoodEnough };

struct TrimSheet {
  Heading heading;
  TrimStanding standing = TrimStanding::mayStay;
  std::string network;  ///< "(sender ∥ 200 Ω) + 1 Ω"
  std::vector<std::string> summary;
  Circuit circuit;
  std::vector<TrimPart> parts;
  std::vector<TrimCorner> corners;
  std::vector<TrimRow> rows;
  std::vector<TrimPoint> before;
  std::vector<TrimPoint> after;
  std::optional<double> hotMark;
  std::string unit;        ///< of temperatures
  std::string errorUnit;   ///< of differences
  std::string conditions;  ///< "at 15 V, derated for 105 °C behind the dash"
  std::vector<std::string> findings;
  std::vector<TrimFailure> failures;
  std::vector<std::string> cautions;
};

/// As many pages as it takes; nothing is left out.
Pages drawTrimSheet(const TrimSheet& sheet, Paper paper);

}  // namespace ohmkin::sheet
