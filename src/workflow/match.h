#pragma once
#include <catalog/catalogue.h>
#include <finding/refusal.h>
#include <pairing/limits.h>
#include <workflow/answer.h>
#include <workflow/question.h>

namespace ohmkin::workflow {

/// The main job: this vehicle, that engine → the sender, or the offset. Refuses what it cannot look up (near misses named);
/// an answer without a recommendation is still an answer and says why. Throws catalog::CatalogueError where the file fails.
Expected<Answer> match(const catalog::Catalogue& catalogue, const Question& question, const pairing::Limits& limits = {});

}  // namespace ohmkin::workflow
