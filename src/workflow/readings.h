#pragma once
#include <catalog/catalogue.h>
#include <finding/finding.h>
#include <quantity/print.h>
#include <workflow/question.h>
#include <optional>

namespace ohmkin::workflow {

/// What the ohms read from the sender in hand say: which families they agree with. None where nothing was read.
std::optional<Finding> judgeReadings(const catalog::Catalogue& catalogue, const Question& question,
                                     const DisplayUnits& units);

/// The refusal for a part number the catalogue does not have, with near misses.
Refusal unknownPart(const catalog::Catalogue& catalogue, const std::string& part);

/// Assumed where the engine is not known. From memory, no source: 180 °F was the usual one.
inline const Temperature kUsualThermostat = celsius(82);

}  // namespace ohmkin::workflow
