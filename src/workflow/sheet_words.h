#pragma once
#include <pairing/error_table.h>
#include <sheet/paper.h>
#include <workflow/pair.h>
#include <workflow/sheets.h>

/// What several sheets say.
namespace ohmkin::workflow {

sheet::Heading headingOf(const PairAnswer& pair, const SheetOptions& options);
/// "It comes to the hot mark at 116 °C, 1.8 K late.", of the needle
std::string hotLineOf(const pairing::HotWarning& hot, const DisplayUnits& units);
/// The needle comes to the hot mark later than that of the matched pair.
bool comesLate(const pairing::HotWarning& hot);
/// "1.8 K late", "on time"
std::string hotWordsOf(const TemperatureDifference& late, const DisplayUnits& units);

}  // namespace ohmkin::workflow
