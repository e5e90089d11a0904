#pragma once
#include <parts/chip_row.h>
#include <parts/finding_list.h>
#include <workflow/import_readings.h>
#include <QString>

/// What is said of a file that is about to come in.
namespace ohmkin::measure {

/// "bath.csv: 40 readings in 2 curves. 3 cells could not be read."
QString fileSentence(const workflow::ImportPreview& preview);
/// How it was read, one chip a thing: encoding, separator, decimals.
std::vector<parts::ChipWords> readingChips(const workflow::ImportPreview& preview);
/// "Already in: brought in on 2026-11-25 by Ann, as import 3."; empty where it is not.
QString alreadyWords(const workflow::ImportPreview& preview);
std::vector<parts::FindingWords> runRemarks(const workflow::ImportPreview& preview, std::size_t run,
                                            const DisplayUnits& units);
/// A line for exchange::parsePlan as a person would answer: "column 2 is the temperature, °C".
QString answerWords(const std::string& answer);
QString previewAsText(const workflow::ImportPreview& preview, const workflow::BenchFamilies& families,
                      const DisplayUnits& units);
/// Date and time of an ISO 8601 time of UTC, here and to the minute.
QString whenWords(const std::string& utc);

}  // namespace ohmkin::measure
