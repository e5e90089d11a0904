#pragma once
#include <catalog/engines.h>
#include <workflow/question.h>
#include <workflow/resolve_port.h>
#include <optional>

/// When the engine was made, from what the question says: the date cast in the head, the casting's production span, a
/// build date.
namespace ohmkin::workflow {

/// Days on which a casting of an engine built that day, or for that model year, can have been poured.
DateSpan castingWindow(Date engineBuilt);
DateSpan castingWindow(ModelYear year);

/// Refuses a casting date code that reads as no day under any layout it may have been written in.
Expected<void> checkCastingDate(const catalog::Catalogue& catalogue, const Question& question);

EngineDate engineDate(const catalog::Catalogue& catalogue, const Question& question,
                      const std::optional<catalog::Casting>& casting);

}  // namespace ohmkin::workflow
