#pragma once
#include <bench/reading.h>
#include <curve/assumed_tolerance.h>
#include <curve/curve.h>
#include <quantity/print.h>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// Whose curve is it? Which resistance family a sender belongs to, from any number of readings, one suffices.
///
/// The model, in ln ohms. A part of family f with curve R_f reads at its i-th bath
///
///     ln r_i = ln R_f(T_i) + √ρ·s·τ + √½·k(T_i)·c + e_i
///     e_i ~ N(0, u_i² + (R_f'/R_f · uT_i)² + n_i·((1 − ρ)·s² + ½·k(T_i)²)),     τ, c ~ N(0, 1)
///
/// s = ln(1 + tolerance)/√3, the part's tolerance taken as rectangular limits (JCGM 100:2008, 4.3.7); ρ of its variance
/// is one common scale of the part (a sender's deviation is mostly one factor all along: common practice, no source),
/// the rest is its own at each bath. k is the knowledge of the curve: half of its variance all along, half at each
/// bath. u_i and uT_i are the reading's own uncertainties. n_i counts the readings about it, itself as 1 and another by
/// 1 − its distance/20 K: a part bends slowly, so what is its own at one bath is nearly its own at the next, and forty
/// readings along a curve do not average it away. (A judgement; readings 20 K apart and more are independent.)
///
/// "None of these" is a sender of no family named: a level and a slope nobody knows,
///
///     ln r_i = m + a + (b₀ + b)·(T_i − T₀) + e_i
///
/// with the numbers of Unnamed, its bend counted n_i times as well. Where a family's curve does not reach a bath, it
/// predicts there what an unnamed sender would, given the readings it does answer: it neither gains nor loses by it.
namespace ohmkin::bench {

/// A judgement, from memory: resistive senders lie between some 10 Ω and 5 kΩ at 60 °C and most of them fall by 2 to 4
/// % a kelvin.
struct Unnamed {
  double probability = 0.05;         ///< before any reading; 0 to below 1
  double lnOhms = 5.3;               ///< m: 200 Ω at T₀
  double level = 1.5;                ///< standard deviation of a
  double slope = -0.025;             ///< b₀, 1/K
  double slopeSpread = 0.02;         ///< standard deviation of b, 1/K
  double bend = 0.1;                 ///< standard deviation of ln r about that straight line, at each bath
  Temperature middle = celsius(60);  ///< T₀
};

using curve::kAssumedTolerance;

struct IdentifyModel {
  double commonShare = 0.8;  ///< ρ; 0 to 1
  double assumedTolerance = kAssumedTolerance;
  Unnamed unnamed;
};

/// One family as it is weighed. Several curves of one family are several entries.
struct FamilyCurve {
  std::string name;
  curve::Curve curve;
  std::optional<double> tolerance;  ///< of ohms, as a part: 0.08; none where the trade states none
  double weight = 1;                ///< how often it is met, beside the others; above 0
};

struct Suspect {
  std::size_t family = 0;  ///< in the families as given
  double probability = 0;
  double lnEvidence = 0;  ///< ln of the probability density of the readings (of their ln ohms) under this family
  double partScale = 0;  ///< ln ratio of this part to its family, as the readings have it: posterior mean of √ρ·s·τ
  std::size_t answered = 0;  ///< readings its curve reaches
};

struct Identification {
  std::vector<Suspect> suspects;  ///< every family, the most probable first; ties by index
  double none = 0;                ///< probability of "none of these"; with the suspects' it sums to 1
  double noneLnEvidence = 0;
  std::vector<Finding> findings;  ///< the verdict first
};

/// The doubt of a reading counts as 0.01 % of its ohms at least. Refuses no families, no readings, tolerances or
/// weights out of range, numbers that are not finite, ohms of 0 or below.
Expected<Identification> identify(std::span<const FamilyCurve> families, std::span<const Reading> readings,
                                  const IdentifyModel& model = {});

/// A part number is not a curve: what the readings say of the family a part claims to be of. A warning where that
/// family has less than 5 %, naming the answer that has most; a note that it is open up to 50 %; else a note that it
/// agrees. `families` as identify had them. Refuses a family that is not among them.
Expected<Finding> againstClaim(const Identification& answer, std::span<const FamilyCurve> families,
                               std::size_t claimed);

/// How much a further reading at a temperature would tell.
struct Separation {
  Temperature at;
  double bits = 0;  ///< expected information about which family it is: the expected fall of the posterior's entropy
  double certainty = 0;  ///< expected probability of the then most probable answer
};

struct NextReading {
  Separation best;
  std::vector<Separation> tried;          ///< by temperature, for a plot
  std::vector<std::size_t> frontRunners;  ///< families weighed, most probable first
  double certaintyNow = 0;                ///< probability of the most probable answer today
  std::optional<Finding> finding;
};

struct NextOptions {
  TemperatureSpan within{celsius(0), celsius(100)};  ///< what the bath can do
  TemperatureDifference step = kelvins(5);           ///< at least 0.5 K
  TemperatureDifference uKelvin = kelvins(0.5);      ///< standard, of the reading to come
  double uLnOhms = 0.005;
  std::size_t mostFrontRunners = 8;  ///< 2 to 32
};

/// The temperature at which one more reading would separate the front-runners best: mutual information of family and
/// reading, by integrating each front-runner's predictive density (given the readings so far) against the mixture, to
/// about 0.01 bit.
/// Readings so far may be none: then the weights alone are the start. Refuses as identify does, and options out of
/// range.
Expected<NextReading> nextReading(std::span<const FamilyCurve> families, std::span<const Reading> soFar,
                                  const NextOptions& options = {}, const IdentifyModel& model = {},
                                  const DisplayUnits& units = {});

/// A cold sender at the counter: ohms at a temperature nobody measured.
struct QuickCheck {
  std::vector<std::size_t> remain;  ///< within tolerance and two standard uncertainties; nearest first
  std::vector<std::size_t> excluded;
  std::vector<std::size_t> silent;  ///< their curve does not reach that temperature: neither in nor out
  std::vector<Finding> findings;
};
/// `room.u` of a reading nobody measured: 2 K is a counter's, 5 K one that says "room temperature".
Expected<QuickCheck> quickCheck(std::span<const FamilyCurve> families, const Reading& room,
                                double assumedTolerance = kAssumedTolerance, const DisplayUnits& units = {});

}  // namespace ohmkin::bench
