#include <fmt/format.h>
#include <pairing/limits.h>
#include <sheet/offset_card.h>
#include <sheet/remarked_dial.h>
#include <workflow/readings.h>
#include <workflow/sheet_words.h>
#include <workflow/sheets.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::workflow {
namespace {

sheet::CardLine lineOf(const pairing::CardRow& row, bool warm, const DisplayUnits& units) {
  return {print(row.trueTemperature, units), row.shown, printDifference(row.error, units),
          printAmount(row.uncertainty, units), warm};
}

sheet::CardPoint pointOf(const pairing::CardRow& row, const DisplayUnits& units) {
  return {inUnit(row.trueTemperature, units.temperature), inUnit(row.indicated.shown, units.temperature),
          inUnit(row.uncertainty, units.temperature), row.indicated.where == gauge::Where::onTheMarks};
}

/// The rows with the one for the thermostat among them, once.
std::vector<sheet::CardLine> linesOf(const pairing::OffsetCard& card, const DisplayUnits& units) {
  constexpr double kSame = 0.5;  // K: printed in whole degrees, one line would say the other again
  std::vector<sheet::CardLine> lines;
  bool told = !card.warmedUp;
  for (const pairing::CardRow& row : card.rows) {
    const double ahead = told ? 1 : inKelvin(row.trueTemperature - card.warmedUp->trueTemperature);
    if (!told && ahead >= -kSame) {
      lines.push_back(lineOf(*card.warmedUp, true, units));
      told = true;
      if (ahead <= kSame) continue;
    }
    lines.push_back(lineOf(row, false, units));
  }
  if (!told) lines.push_back(lineOf(*card.warmedUp, true, units));
  return lines;
}

std::string unitName(const DisplayUnits& units) { return units.temperature == TemperatureUnit::celsius ? "°C" : "°F"; }

}  // namespace

sheet::Pages offsetCardSheet(const DialAnswer& answer, const SheetOptions& options) {
  const DisplayUnits& units = options.units;
  sheet::OffsetCard card;
  card.heading = headingOf(answer.pair, options);
  card.driverLine = answer.card.driverLine;
  card.hotLine = hotLineOf(answer.pair.errors.hot, units);
  card.hotLate = comesLate(answer.pair.errors.hot);
  card.lines = linesOf(answer.card, units);
  for (const pairing::CardRow& row : answer.card.rows) card.points.push_back(pointOf(row, units));
  if (answer.card.warmedUp) card.warm = pointOf(*answer.card.warmedUp, units);
  card.hotMark = inUnit(answer.pair.gauge->hotMark(), units.temperature);
  card.unit = unitName(units);
  card.cautions = answer.card.cautions;
  return sheet::drawOffsetCard(card, options.paper);
}

Expected<sheet::Pages> remarkedDialSheet(const DialAnswer& answer, double radius, const SheetOptions& options) {
  if (!answer.remarked)
    return refuse("dial-not-drawn", "dial", answer.whyNot, "a pair whose needle can show the hot temperature");
  const pairing::RemarkedDial& remarked = *answer.remarked;
  sheet::RemarkedDial made;
  made.heading = headingOf(answer.pair, options);
  made.radius = radius;
  made.driverLine = answer.card.driverLine;
  for (const gauge::Mark& mark : remarked.dial.marks()) {
    const double degrees = mark.angle.degrees;
    made.marks.push_back({mark.text, mark.at ? print(*mark.at, options.units) : "",
                          fmt::format("{}{:.1f}°",
                                      degrees < -0.05  ? "−"
                                      : degrees > 0.05 ? "+"
                                                       : "",
                                      std::abs(degrees))});
  }
  if (!remarked.leftOut.empty()) {
    std::string left;
    for (const Temperature& t : remarked.leftOut) left += (left.empty() ? "" : ", ") + print(t, options.units);
    made.notes.push_back("Not marked, because the needle lies on a stop: " + left + ".");
  }
  if (remarked.extrapolated)
    made.notes.push_back(
        "The outermost marks lie past the end of the sender's measured curve, which was continued for them.");
  made.cautions = answer.card.cautions;
  return sheet::drawRemarkedDial(made, remarked.dial, options.paper);
}

Expected<DialAnswer> dialOfCandidate(const Answer& answer, const Branch& branch, const Candidate& candidate,
                                     const DisplayUnits& units) {
  auto pair = trimOfCandidate(branch, candidate);
  if (!pair) return tl::make_unexpected(pair.error());
  // The band as match chooses it begins that much below the engine's thermostat.
  const Temperature thermostat =
      answer.question.band ? kUsualThermostat : branch.band.low + kelvins(pairing::kBelowThermostat);
  PairAnswer& asItIs = pair->asItIs;
  auto card = pairing::offsetCard(*branch.gauge, *candidate.curve, {}, thermostat, asItIs.errors.options, units);
  if (!card) return tl::make_unexpected(card.error());
  auto remarked = pairing::remarkedDial(*branch.gauge, *candidate.curve, {}, units);
  DialAnswer made{std::move(asItIs), std::move(*card), std::nullopt, {}};
  if (remarked) made.remarked = std::move(*remarked);
  else made.whyNot = remarked.error().sentence();
  return made;
}

Expected<TrimAnswer> trimOfCandidate(const Branch& branch, const Candidate& candidate) {
  if (!branch.gauge)
    return refuse("gauge-not-known", "gauge", "no gauge with a needle", "a dash with a temperature gauge");
  if (!candidate.curve || !candidate.errors || !candidate.verdict)
    return refuse("sender-without-curve", "sender", candidate.part, "a variable sender whose curve is known");
  const std::string name = candidate.lot.empty() ? candidate.part : candidate.part + ", lot " + candidate.lot;
  PairAnswer pair{branch.gaugeName,  branch.familyName,  name, candidate.family, branch.gauge, *candidate.curve, true,
                  *candidate.errors, *candidate.verdict, {}};
  TrimAnswer answer{std::move(pair), std::nullopt};
  if (candidate.trim) answer.proposal = *candidate.trim;
  return answer;
}

}  // namespace ohmkin::workflow
