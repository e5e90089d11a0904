#pragma once
#include <catalog/bench_writer.h>
#include <catalog/connection.h>

/// Inside this room only: rows of curves that were measured here, inside a transaction that somebody else has begun.
namespace ohmkin::catalog {

/// The sender a part number means: written exactly so, or the only one that differs in letter case, blanks and signs
/// alone. Refuses part-not-said, part-unknown.
Expected<SenderKey> senderOfPart(const Catalogue& catalogue, const std::string& part, const std::string& where);

/// What the curves of a run are called: the same wherever the same file is read, and like no other.
struct CurveOrigin {
  std::string id;        ///< of the curve and of its source
  std::string citation;  ///< who measured it when with what, and the file
};
CurveOrigin originOfFile(const BenchFile& file, const BenchProvenance& by, const std::string& at,
                         const RunDescription& said, std::int64_t place);
CurveOrigin originByHand(Connection& connection, const BenchProvenance& by, const std::string& at,
                         const RunDescription& said);

/// Source, curve, samples, and the run's word of it. Nothing of it stays where it refuses (curve-refused).
Expected<CurveKey> writeCurve(Catalogue& catalogue, RunNumber run, const SenderKey& sender, const std::string& lot,
                              const CurveOrigin& origin, const BenchCurve& curve);
/// Takes curve, samples and source out. A pack's curve stays.
void takeOutCurve(Connection& connection, RunNumber run, const CurveKey& curve);

std::string nowInUtc(Connection& connection);  ///< ISO 8601

}  // namespace ohmkin::catalog
