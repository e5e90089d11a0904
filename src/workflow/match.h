#pragma once
#include <catalog/catalogue.h>
#include <finding/refusal.h>
#include <pairing/limits.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <workflow/question.h>

namespace ohmkin::workflow {

/// The main job: this vehicle, that engine → the sender, or the offset. Refuses what it cannot look up (near misses
/// named); an answer without a recommendation is still an answer and says why. Throws catalog::CatalogueError where the
/// file fails.
struct MatchOptions {
  pairing::Limits limits;
  DisplayUnits units;       ///< of the sentences
  bool forDrawing = false;  ///< the error tables over the whole dial too, for a plot
  /// So many senders of a branch are judged one by one and listed; of more, the best are found by groups that are
  /// judged alike, and the others are counted.
  std::size_t mostListed = 100;
};
Expected<Answer> match(const catalog::Catalogue& catalogue, const Question& question, const MatchOptions& options = {});

class PairMemory;  // judge_electrical.h
/// The same for many questions to one unchanged catalogue with the same options: pairs judged once are not judged
/// again.
Expected<Answer> match(const catalog::Catalogue& catalogue, const Question& question, const MatchOptions& options,
                       PairMemory& memory);

}  // namespace ohmkin::workflow
