#pragma once
#include <bench/identify.h>

/// Is it good? A part against its family's tolerance, with the doubt of the measurement guarded for.
///
/// Decision rule after ISO 14253-1 and JCGM 106:2012, clause 8: pass where the deviation lies inside the tolerance by
/// the guard band w = k·u, fail where it lies outside by w, undecided between. Probabilities are of a normal
/// distribution about what was read (JCGM 106, clause 7), no other knowledge of the part assumed.
namespace ohmkin::bench {

enum class Conformance { pass, undecided, fail, notComparable };

struct AcceptanceRule {
  double guard = 2;  ///< k; 0 or above. 1.645 is 5 % risk, 2 is 2.3 %, for a part on one limit
  double assumedTolerance = kAssumedTolerance;
  /// Share of parts the family's makers deliver within tolerance, for the risks of the whole procedure. A judgement.
  double goodParts = 0.95;
};

/// Risks of deciding by this rule, over parts that scatter normally about the family's curve (JCGM 106, clause 9).
struct DecisionRisk {
  double consumer = 0;  ///< a part is outside the tolerance and passes
  double producer = 0;  ///< a part is inside the tolerance and does not pass
};
/// In any one unit: parts N(0, spread²), measurement u, tolerance ±tolerance, passed within ±acceptance. Refuses
/// numbers not above 0 (acceptance: below 0; 0 passes nothing).
Expected<DecisionRisk> decisionRisk(double spread, double u, double tolerance, double acceptance);

struct JudgedReading {
  std::size_t reading = 0;  ///< in the readings as given
  Conformance conformance = Conformance::notComparable;
  double deviation = 0;       ///< ohms read / ohms of the curve − 1
  double u = 0;               ///< standard, of the deviation: meter, bath through the slope, curve knowledge
  double conforming = 0;      ///< probability that the part lies within tolerance here
  bool extrapolated = false;  ///< curve asked outside where it was established
};

struct Acceptance {
  Conformance conformance = Conformance::notComparable;  ///< fails where one reading fails, passes where all pass
  double tolerance = 0;                                  ///< of ohms
  bool toleranceAssumed = false;
  std::vector<JudgedReading> readings;
  std::optional<std::size_t> worst;  ///< in `readings`: the least probably good of those that decide
  double wrong = 0;  ///< probability that the decision is wrong, of the worst reading; undecided: that it is out
  std::optional<DecisionRisk> risk;  ///< of the rule at the worst reading's uncertainty
  std::vector<Finding> findings;     ///< the verdict first
};

/// Refuses as identify does, and a rule out of range. Readings the curve does not reach are notComparable and do not
/// count; where none is reached the whole is notComparable.
Expected<Acceptance> judge(const FamilyCurve& family, std::span<const Reading> readings,
                           const AcceptanceRule& rule = {}, const DisplayUnits& units = {});

/// A part against what it read before.
struct Drift {
  double ratio = 0;             ///< ohms now / ohms then − 1: mean over the readings, weighted by their uncertainties
  double u = 0;                 ///< standard; one meter reads them all, so its error does not average out
  bool significant = false;     ///< beyond 2 standard uncertainties
  bool uniform = true;          ///< one factor explains all readings (χ², 95 %)
  TemperatureDifference shows;  ///< at the hottest reading: what a gauge then shows less what is true
  std::size_t compared = 0;
  std::vector<Finding> findings;
};
/// Refuses where the earlier curve reaches none of the readings, and as identify does.
Expected<Drift> drift(const curve::Curve& earlier, std::span<const Reading> now, const DisplayUnits& units = {});

}  // namespace ohmkin::bench
