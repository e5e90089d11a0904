#pragma once
#include <measure/reading_rows.h>
#include <measure/verdict_card.h>
#include <parts/remarks.h>
#include <workflow/bench_work.h>

/// What the bench's answer says, chosen and ordered for the page.
namespace ohmkin::measure {

VerdictWords verdictOf(const workflow::BenchAnswer& answer);
/// Why this curve and how well it is known; or why there is none yet.
QString fitWords(const std::optional<curve::Fit>& fit, const std::optional<Refusal>& noFit, const DisplayUnits& units);
std::vector<parts::FindingWords> remarksOf(const workflow::BenchAnswer& answer);
/// Of lines that cannot be taken, by the rows they stand in.
std::vector<RowTrouble> troublesOf(const workflow::BenchAnswer& answer, const std::vector<int>& rows);
/// The question about the barometer, where it must be answered; otherwise empty.
QString barometerQuestion(const workflow::BenchAnswer& answer);
QString answerAsText(const workflow::BenchFamilies& families, const workflow::BenchAnswer& answer,
                     const DisplayUnits& units);

}  // namespace ohmkin::measure
