#pragma once
#include <catalog/engines.h>
#include <catalog/vehicles.h>
#include <finding/finding.h>
#include <workflow/answer.h>
#include <workflow/question.h>
#include <optional>
#include <string>
#include <vector>

/// Second half of the match: which engine, which casting, so which port.
namespace ohmkin::workflow {

/// When the engine was made, as far as anything tells.
struct EngineDate {
  std::optional<Date> likeliest;  ///< day, where a code or a build date tells it
  double probability = 0;         ///< of that day
  /// First and last year it can have been made; the same where the day is known.
  std::optional<std::pair<int, int>> produced;
  std::string words;  ///< "head cast 22 Aug 1981"
  std::vector<Finding> findings;
};

/// One way the engine's side can be.
struct PortChoice {
  std::optional<catalog::EngineFamily> engine;
  std::optional<catalog::Casting> casting;
  std::optional<catalog::Port> port;         ///< none: thread and place as the person saw them, or not known
  std::optional<catalog::ThreadKey> thread;  ///< the port's, or as seen
  Basis engineBasis = Basis::notSeen;
  Basis portBasis = Basis::notSeen;
  EngineDate made;
  std::string assumes;  ///< what tells this choice from the others: "casting 30418, 1/2-14 NPT"
  double weight = 1;
};

struct EngineSide {
  std::vector<PortChoice> choices;  ///< never empty; alike ones merged
  std::vector<Chip> chips;
  std::vector<Finding> findings;
  bool castingUnknown = false;  ///< the casting number would tell the choices apart
};

/// Refuses a casting number, engine, thread or location the catalogue does not have, with near misses, and a date code
/// that no day can be read from.
Expected<EngineSide> resolveEngine(const catalog::Catalogue& catalogue, const Question& question,
                                   const std::optional<catalog::VehicleLine>& line);

}  // namespace ohmkin::workflow
