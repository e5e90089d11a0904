#pragma once
#include <pairing/monte_carlo.h>
#include <workflow/answer.h>
#include <stop_token>
#include <string>
#include <vector>

/// A closer look at one sender of an answer, asked for apart because it takes longer than the match itself.
namespace ohmkin::workflow {

/// The dial the existing needle would need to read true with this sender as it is, to look at.
struct DialPreview {
  std::string svg;  ///< of gauge::drawDial; empty where the dial cannot be re-marked
  /// The scale alone, without ruler and pivot, in the drawing's own coordinates.
  struct Part {
    double left = 0;
    double top = 0;
    double width = 0;
    double height = 0;
  } scale;
  std::string whyNot;                ///< why it cannot; else empty
  std::string driverLine;            ///< "Warmed up with the 91 °C thermostat the needle stands at 84 °C."
  std::vector<std::string> remarks;  ///< marks that had to be left out, or stand on a continued curve
};
/// Refuses a candidate that has no curve, or a branch without a gauge.
Expected<DialPreview> dialPreview(const Answer& answer, const Branch& branch, const Candidate& candidate,
                                  const DisplayUnits& units);

/// The candidate's errors as it would be fitted, over as much of the dial as there is a table for; null where it has no
/// curve.
const pairing::ErrorTable* fittedTable(const Candidate& candidate);

/// Its uncertainty by propagation of distributions (JCGM 101), row by row of fittedTable(). Takes about a second;
/// stopped by the token it refuses with "cancelled". Refuses a candidate that has no curve, or a branch without a
/// gauge.
Expected<pairing::Sampled> sampled(const Branch& branch, const Candidate& candidate, const pairing::Draws& draws,
                                   std::stop_token stop = {});

}  // namespace ohmkin::workflow
