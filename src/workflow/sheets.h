#pragma once
#include <quantity/date.h>
#include <sheet/paper.h>
#include <workflow/date_engine.h>
#include <workflow/plan.h>
#include <workflow/trim.h>

/// Answers on paper. Terminal and window print the same sheets from here.
namespace ohmkin::workflow {

struct SheetOptions {
  sheet::Paper paper = sheet::Paper::a4;
  DisplayUnits units;
  Date day;  ///< printed on the sheet
};

sheet::Pages offsetCardSheet(const DialAnswer& answer, const SheetOptions& options);
/// `radius` in millimetres, pivot to the ends of the marks. Refuses a dial that cannot be re-marked or does not fit the
/// paper.
Expected<sheet::Pages> remarkedDialSheet(const DialAnswer& answer, double radius, const SheetOptions& options);
/// Refuses an answer without a proposal.
Expected<sheet::Pages> trimSheet(const TrimAnswer& answer, const SheetOptions& options);
sheet::Pages dateSheet(const DateAnswer& answer, const SheetOptions& options);
sheet::Pages planSheet(const Plan& plan, const SheetOptions& options);

/// The same for a sender of a match: its offset card and re-marked dial, and the trim it needs.
/// Refuses a candidate that has no curve, or a branch without a gauge.
Expected<DialAnswer> dialOfCandidate(const Answer& answer, const Branch& branch, const Candidate& candidate,
                                     const DisplayUnits& units);
/// Its trim is none where match proposed none.
Expected<TrimAnswer> trimOfCandidate(const Branch& branch, const Candidate& candidate);

}  // namespace ohmkin::workflow
