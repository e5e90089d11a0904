#pragma once
#include <finding/finding.h>
#include <pairing/trim_search.h>
#include <optional>
#include <string>
#include <vector>

/// A trim network as it would be handed to a person: what it does, what it costs when a part fails, and whether it may
/// stay.
namespace ohmkin::pairing {

enum class FailureMode { opens, shorts, driftsUp, driftsDown, leadOpens, leadGrounded };

/// One thing that breaks, and what the needle then shows over the band.
struct Failure {
  std::string part;  ///< "parallel resistor 510 Ω", "lead"
  FailureMode mode = FailureMode::opens;
  gauge::Reading atHotMark;  ///< with the coolant at the hot mark
  gauge::Reading atBandLow;
  bool noticed = false;       ///< with the engine warm the needle is off the marks or lies at the cold one; else silent
  TemperatureDifference low;  ///< most negative error over the band
  TemperatureDifference high;  ///< most positive error over the band
  bool readsLow = false;       ///< by more than the limits, low in the band or late at the hot mark
  Severity severity = Severity::note;
  /// "The parallel resistor 510 Ω opens: the needle still moves and reads up to 14 K low; nobody notices."
  std::string sentence;
};

/// Power in one resistor at 15 V, worst over the sender from 0 to ∞.
struct PartLoad {
  std::string part;
  Ohms resistance;
  std::optional<Watts> working;  ///< behind the gauge's coils; none where the coils' ohms are not known
  Watts shortedToFeed;           ///< with the sender post shorted to the feed
  Watts rating;                  ///< what to buy: the larger of both, derated for 105 °C, next common size
};

struct ToleranceCase {
  double tolerance = 0.01;    ///< of every resistor, as a part
  TemperatureDifference low;  ///< most negative error with the parts at their worst corners
  TemperatureDifference high;
  std::optional<TemperatureDifference> late;  ///< latest; none: never reaches the mark in some corner
};

struct TrimProposal {
  TrimNetwork network;
  TemperatureDifference weightedWorst;        ///< see Trimmed
  TemperatureDifference weightedWorstBefore;  ///< without any resistor
  ErrorTable after;
  std::vector<ToleranceCase> tolerances;  ///< for parts of 1 % and of 5 %
  std::vector<PartLoad> loads;
  std::vector<Failure> failures;
  bool withinLimits = false;  ///< hot mark, low and high, with uncertainty of curves and resistors (k = 2)
  bool permanent = false;  ///< within limits, and nothing that opens or shorts (a part, the lead) reads low unnoticed
  std::vector<Finding> findings;  ///< why not permanent; what to mind
  TrimSearch search;              ///< how it was found, and the best of the other topologies
};

inline constexpr double kTrimVolts = 15;
inline constexpr double kTrimCelsius = 105;  ///< behind a dash in the sun

/// The best network of a search that may stay. Where the least error over the band would bring the hot mark late, the
/// search is repeated among those on time. Where none may stay: the best within the limits, else the best, refused as
/// permanent with the reason. `search` of the answer always tells the true optimum. Refuses, code "no-trim-helps",
/// where every network is worse than none.
Expected<TrimProposal> proposeTrim(const gauge::Gauge& gauge, const curve::Curve& sender, TemperatureSpan band,
                                   const TrimOptions& options = {});

/// The same judgement for a network that was chosen by hand.
Expected<TrimProposal> judgeTrim(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& network,
                                 TemperatureSpan band, const TrimOptions& options = {});

}  // namespace ohmkin::pairing
