#pragma once
#include <sheet/paper.h>

/// Dashes against engines, side by side, and the parts to buy.
namespace ohmkin::sheet {

struct SwapCell {
  bool answered = false;
  bool best = false;              ///< of its dash: the engine that needs least
  std::string part;               ///< the sender; "no sender to recommend"
  std::vector<std::string> with;  ///< bushings, pigtails, resistors
  std::string worst;              ///< "+2.3 K"; empty where not known
  std::string verdict;
  std::string era;
  std::string look;
};

struct SwapPlan {
  std::string date;
  std::vector<std::string> dashes;
  std::vector<std::string> engines;
  std::vector<SwapCell> cells;  ///< dash by dash; dashes × engines of them
  std::vector<std::string> partsToBuy;
  std::vector<std::string> cautions;
};

/// Pages on their side, as many as it takes; engines that do not fit beside one another follow on further pages.
Pages drawSwapPlan(const SwapPlan& plan, Paper paper);

}  // namespace ohmkin::sheet
