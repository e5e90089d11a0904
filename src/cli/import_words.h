#pragma once
#include <cli/json_values.h>
#include <quantity/print.h>
#include <workflow/import_readings.h>
#include <string>

/// A file of readings at the terminal: how it is read, and what its curves come to.
namespace ohmkin::cli {

std::string previewText(const workflow::ImportPreview& preview, const workflow::BenchFamilies& families,
                        const DisplayUnits& units);
std::string importedText(const workflow::Imported& imported, const workflow::BenchFamilies& families,
                         const DisplayUnits& units);
/// Every rejected cell on a line: FILE:LINE:COLUMN: found …, expected …
std::string rejectedText(const std::vector<exchange::RejectedCell>& rejected, const exchange::ReadingTally& tally,
                         const std::string& file);

Json json(const workflow::ImportPreview& preview, const workflow::BenchFamilies& families);
Json json(const workflow::Imported& imported, const workflow::BenchFamilies& families);
Json json(const catalog::ImportRecord& record);

}  // namespace ohmkin::cli
