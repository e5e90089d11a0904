#include <sheet/swap_plan.h>
#include <workflow/sheets.h>

namespace ohmkin::workflow {
namespace {

sheet::SwapCell cellOf(const PlanCell& cell, bool best, const DisplayUnits& units) {
  sheet::SwapCell made;
  made.answered = cell.answered;
  made.best = best;
  made.part = cell.answered ? cell.part : cell.refused ? "Not looked at" : "No sender to recommend";
  for (const std::string& part : cell.partsToBuy)
    if (part != cell.part) made.with.push_back(part);
  if (cell.worst) made.worst = printDifference(*cell.worst, units);
  made.verdict = cell.sentence;
  made.era = cell.era;
  made.look = cell.look;
  return made;
}

}  // namespace

sheet::Pages planSheet(const Plan& plan, const SheetOptions& options) {
  sheet::SwapPlan made;
  made.date = plainDate(options.day);
  made.dashes = plan.dashNames;
  made.engines = plan.engineNames;
  for (const PlanCell& cell : plan.cells)
    made.cells.push_back(cellOf(cell, plan.bestEngine[cell.dash] == cell.engine, options.units));
  made.partsToBuy = plan.partsToBuy;
  made.cautions = plan.cautions;
  return sheet::drawSwapPlan(made, options.paper);
}

}  // namespace ohmkin::workflow
