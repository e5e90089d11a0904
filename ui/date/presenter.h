#pragma once
#include <date/meaning_list.h>
#include <date/time_line_view.h>
#include <date/time_table.h>
#include <parts/finding_list.h>
#include <workflow/date_engine.h>
#include <optional>

/// From what the date use case answers to what the page shows. Chooses words and shapes; computes no date of its own.
namespace ohmkin::castings {

QString headlineOf(const workflow::DateAnswer& answer);
QString engineWordsOf(const workflow::DateAnswer& answer);  ///< whose engine it is, and how likely the vehicle's first
QString alarmOf(const workflow::DateAnswer& answer);  ///< what disagrees, at most two sentences; empty: nothing does
QString decadesInWords(const workflow::DateAnswer& answer);
std::vector<MeaningRow> meaningsOf(const workflow::DateAnswer& answer);
std::vector<parts::FindingWords> findingsOf(const workflow::DateAnswer& answer);
TimeLinePicture timeLineOf(const workflow::DateAnswer& answer);
std::vector<TimeTableRow> tableOf(const workflow::DateAnswer& answer);
QString answerAsText(const workflow::DateAnswer& answer);

/// A casting of this catalogue with a code its layout reads, and a vehicle some years older; none: nothing fits.
std::optional<workflow::DateQuestion> exampleOf(const catalog::Catalogue& catalogue);
QString exampleInWords(const workflow::DateQuestion& question);

}  // namespace ohmkin::castings
