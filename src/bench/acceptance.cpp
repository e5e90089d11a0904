#include <bench/acceptance.h>
#include <bench/distributions.h>
#include <bench/weighing.h>
#include <fmt/core.h>
#include <quantity/percent.h>

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

namespace ohmkin::bench {
namespace {

/// Probability that something lies within ±limit, read as `value` with `u`.
double probabilityWithin(double value, double u, double limit) {
  if (u <= 0) return std::abs(value) <= limit ? 1 : 0;
  return normalBelow((limit - value) / u) - normalBelow((-limit - value) / u);
}

Expected<void> checked(const AcceptanceRule& rule) {
  if (rule.guard >= 0 && rule.guard <= 10 && rule.assumedTolerance > 0 && rule.assumedTolerance <= 0.99 &&
      rule.goodParts > 0 && rule.goodParts < 1)
    return {};
  return refuse(
      "rule-out-of-range", "rule",
      fmt::format("guard {:g}, tolerance {:g}, good parts {:g}", rule.guard, rule.assumedTolerance, rule.goodParts),
      "a guard of 0 to 10, a tolerance of ohms above 0, a share of good parts between 0 and 1");
}

/// Standard uncertainty of ln(ohms read / ohms of the curve).
double doubt(const curve::Curve& curve, const Reading& reading, double knowledge) {
  return std::hypot(reading.uLnOhms, curve.lnOhmsSlope(inKelvin(reading.at)) * inKelvin(reading.u), knowledge);
}

JudgedReading judged(std::size_t index, const curve::Curve& curve, const Reading& reading, double tolerance,
                     double guard) {
  JudgedReading out;
  out.reading = index;
  const auto knowledge = curve.knowledge(reading.at);
  if (!knowledge) return out;
  const double ratio = std::exp(std::log(inOhms(reading.ohms)) - curve.lnOhms(inKelvin(reading.at)));
  out.deviation = ratio - 1;
  out.u = ratio * doubt(curve, reading, *knowledge);
  out.conforming = probabilityWithin(out.deviation, out.u, tolerance);
  out.extrapolated = curve.extrapolates(reading.at);
  const double off = std::abs(out.deviation);
  out.conformance = off <= tolerance - guard * out.u   ? Conformance::pass
                    : off >= tolerance + guard * out.u ? Conformance::fail
                                                       : Conformance::undecided;
  return out;
}

Conformance overall(const std::vector<JudgedReading>& readings) {
  const auto any = [&](Conformance c) {
    return std::ranges::any_of(readings, [c](const auto& r) { return r.conformance == c; });
  };
  if (any(Conformance::fail)) return Conformance::fail;
  if (any(Conformance::undecided)) return Conformance::undecided;
  return any(Conformance::pass) ? Conformance::pass : Conformance::notComparable;
}

Finding verdict(const Acceptance& answer, const FamilyCurve& family, std::span<const Reading> readings,
                const AcceptanceRule& rule, const DisplayUnits& units) {
  Finding finding{
      "part-not-comparable", Severity::caution,
      fmt::format("The curve of {} reaches none of these temperatures: nothing is said of the part.", family.name), "",
      "your readings"};
  if (!answer.worst) return finding;
  const JudgedReading& worst = answer.readings[*answer.worst];
  const Temperature at = readings[worst.reading].at;
  finding.evidence =
      fmt::format("{} of ohms at {}, U = {:.1f} % (k = {:g}), tolerance ±{:.3g} %", signedPercent(worst.deviation, 1),
                  print(at, units), 100 * rule.guard * worst.u, rule.guard, 100 * answer.tolerance);
  switch (answer.conformance) {
    case Conformance::pass:
      finding.code = "part-passes";
      finding.severity = Severity::note;
      finding.sentence =
          fmt::format("Pass: within the tolerance of {} at every temperature read; risk that it is not: {}.",
                      family.name, percent(answer.wrong));
      break;
    case Conformance::fail:
      finding.code = "part-fails";
      finding.severity = Severity::warning;
      finding.sentence = fmt::format("Fail: outside the tolerance of {} at {}; risk that it is good after all: {}.",
                                     family.name, print(at, units), percent(answer.wrong));
      break;
    default:
      finding.code = "part-undecided";
      finding.sentence = fmt::format(
          "Undecided: too near the limit of {} at {} for this measurement; it is out with a probability of {}.",
          family.name, print(at, units), percent(answer.wrong));
  }
  return finding;
}

void addRemarks(Acceptance& answer, const FamilyCurve& family, const AcceptanceRule& rule) {
  if (answer.toleranceAssumed)
    answer.findings.push_back(
        {"tolerance-assumed", Severity::caution,
         fmt::format("{} states no tolerance: ±{:.3g} % of ohms is assumed.", family.name, 100 * answer.tolerance), "",
         "a judgement"});
  if (!answer.worst) return;
  const double u = answer.readings[*answer.worst].u;
  if (rule.guard * u >= answer.tolerance)
    answer.findings.push_back(
        {"measurement-too-coarse", Severity::caution,
         "The measurement's doubt is as wide as the tolerance: no part could pass. A better meter "
         "or a better known temperature decides.",
         fmt::format("U = {:.1f} % of ohms", 100 * rule.guard * u), "your readings"});
  if (std::ranges::any_of(answer.readings, &JudgedReading::extrapolated))
    answer.findings.push_back(
        {"curve-extrapolated", Severity::caution,
         fmt::format("Part of this is judged where the curve of {} is extrapolated.", family.name), "",
         "the curve's established span"});
  if (answer.risk)
    answer.findings.push_back({"decision-risk", Severity::note,
                               fmt::format("By this rule, of all parts {} are bad and pass, {} are good and do not.",
                                           percent(answer.risk->consumer), percent(answer.risk->producer)),
                               fmt::format("if {:.3g} % of parts are good, a judgement", 100 * rule.goodParts),
                               "computed"});
  const auto silent = std::ranges::count(answer.readings, Conformance::notComparable, &JudgedReading::conformance);
  if (silent > 0)
    answer.findings.push_back({"curve-not-reaching", Severity::note,
                               fmt::format("{} of {} readings lie outside the curve of {} and do not count.", silent,
                                           answer.readings.size(), family.name),
                               "", "the curve's valid span"});
}

}  // namespace

Expected<Acceptance> judge(const FamilyCurve& family, std::span<const Reading> readings, const AcceptanceRule& rule,
                           const DisplayUnits& units) {
  if (readings.empty()) return refuse("no-readings", "readings", "none", "at least one reading");
  if (auto fine = checked(std::span(&family, 1)).and_then([&] { return checked(readings); }).and_then([&] {
        return checked(rule);
      });
      !fine)
    return tl::make_unexpected(fine.error());
  Acceptance answer;
  answer.toleranceAssumed = !family.tolerance;
  answer.tolerance = family.tolerance.value_or(rule.assumedTolerance);
  for (std::size_t i = 0; i < readings.size(); ++i)
    answer.readings.push_back(judged(i, family.curve, readings[i], answer.tolerance, rule.guard));
  answer.conformance = overall(answer.readings);
  for (std::size_t i = 0; i < answer.readings.size(); ++i) {
    const JudgedReading& one = answer.readings[i];
    if (one.conformance == Conformance::notComparable || one.conformance != answer.conformance) continue;
    if (!answer.worst || one.conforming < answer.readings[*answer.worst].conforming) answer.worst = i;
  }
  if (answer.worst) {
    const JudgedReading& worst = answer.readings[*answer.worst];
    answer.wrong = answer.conformance == Conformance::fail ? worst.conforming : 1 - worst.conforming;
    if (worst.u > 0 && answer.tolerance > 0) {
      const double z = boost::math::quantile(boost::math::normal(), (1 + rule.goodParts) / 2);
      const double acceptance = std::max(0.0, answer.tolerance - rule.guard * worst.u);
      if (const auto risk = decisionRisk(answer.tolerance / z, worst.u, answer.tolerance, acceptance))
        answer.risk = *risk;
    }
  }
  answer.findings.push_back(verdict(answer, family, readings, rule, units));
  addRemarks(answer, family, rule);
  return answer;
}

}  // namespace ohmkin::bench
