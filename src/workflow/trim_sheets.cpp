#include <fmt/format.h>
#include <quantity/capitalised.h>
#include <sheet/trim_sheet.h>
#include <workflow/sheet_words.h>
#include <workflow/sheets.h>

#include <algorithm>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kPrintedRows = 11;

std::string shownWords(const gauge::Reading& reading, const DisplayUnits& units) {
  if (reading.where == gauge::Where::belowTheMarks) return "below the marks";
  if (reading.where == gauge::Where::pastTheMarks) return "past the marks";
  return print(reading.shown, units);
}

sheet::Circuit circuitOf(const pairing::TrimNetwork& network, const std::string& sender) {
  sheet::Circuit circuit;
  if (network.hasSeries()) circuit.series = printNominal(network.seriesOhms());
  if (network.hasParallel()) circuit.parallel = printNominal(network.parallelOhms());
  if (network.topology() == pairing::Topology::feedToSender) circuit.feed = printNominal(network.feedOhms());
  circuit.parallelAtSender = network.topology() == pairing::Topology::parallelThenSeries;
  circuit.sender = sender;
  return circuit;
}

/// The sentence says what fails and, after the colon, what the needle shows; the sheet has a column for each.
sheet::TrimFailure failureOf(const pairing::Failure& failure, const DisplayUnits& units) {
  const std::size_t colon = failure.sentence.find(": ");
  const bool parted = colon != std::string::npos;
  return {parted ? failure.sentence.substr(0, colon) : capitalised(failure.part),
          capitalised(parted ? failure.sentence.substr(colon + 2) : failure.sentence),
          shownWords(failure.atHotMark, units), failure.noticed, failure.readsLow && !failure.noticed};
}

std::vector<sheet::TrimPart> partsOf(const pairing::TrimProposal& proposal) {
  std::vector<sheet::TrimPart> parts;
  for (const pairing::PartLoad& load : proposal.loads) {
    const std::string value = printNominal(load.resistance);
    std::string name = load.part;
    if (const std::size_t at = name.rfind(" " + value); at != std::string::npos) name.erase(at);
    parts.push_back(
        {capitalised(name), value, load.working ? fmt::format("{:.2f} W", inWatts(*load.working)) : "not known",
         fmt::format("{:.2f} W", inWatts(load.shortedToFeed)), fmt::format("{:g} W", inWatts(load.rating))});
  }
  return parts;
}

std::vector<sheet::TrimCorner> cornersOf(const pairing::TrimProposal& proposal, const DisplayUnits& units) {
  std::vector<sheet::TrimCorner> corners;
  corners.reserve(proposal.tolerances.size());
  for (const pairing::ToleranceCase& one : proposal.tolerances)
    corners.push_back({fmt::format("{:.0f} % parts", 100 * one.tolerance), printDifference(one.low, units, 1),
                       printDifference(one.high, units, 1),
                       one.late ? hotWordsOf(*one.late, units) : "may never reach it"});
  return corners;
}

/// Both tables are over the same temperatures, row by row.
std::vector<sheet::TrimRow> rowsOf(const pairing::ErrorTable& before, const pairing::ErrorTable& after,
                                   const DisplayUnits& units) {
  std::vector<sheet::TrimRow> rows;
  const std::size_t steps = std::min(kPrintedRows, after.rows.size());
  for (std::size_t i = 0; i < steps; ++i) {
    const std::size_t at = steps < 2 ? 0 : i * (after.rows.size() - 1) / (steps - 1);
    const pairing::ErrorRow& row = after.rows[at];
    const bool same = at < before.rows.size() && before.rows[at].trueTemperature == row.trueTemperature;
    rows.push_back({print(row.trueTemperature, units), same ? shownWords(before.rows[at].indicated, units) : "",
                    shownWords(row.indicated, units), printDifference(row.error, units, 1),
                    printAmount(row.uncertainty.total(), units, 1)});
  }
  return rows;
}

std::vector<sheet::TrimPoint> pointsOf(const pairing::ErrorTable& table, const DisplayUnits& units) {
  std::vector<sheet::TrimPoint> points;
  points.reserve(table.rows.size());
  for (const pairing::ErrorRow& row : table.rows)
    points.push_back({inUnit(row.trueTemperature, units.temperature), inUnit(row.error, units.temperature),
                      inUnit(row.uncertainty.total(), units.temperature)});
  return points;
}

}  // namespace

Expected<sheet::Pages> trimSheet(const TrimAnswer& answer, const SheetOptions& options) {
  if (!answer.proposal)
    return refuse("no-trim", "trim", "no resistor that makes this pair read better", "a pair that resistors can help");
  const pairing::TrimProposal& proposal = *answer.proposal;
  const pairing::ErrorTable& before = answer.asItIs.errors;
  const DisplayUnits& units = options.units;
  sheet::TrimSheet made;
  made.heading = headingOf(answer.asItIs, options);
  made.standing = proposal.permanent      ? sheet::TrimStanding::mayStay
                  : proposal.withinLimits ? sheet::TrimStanding::toGetHomeOnly
                                          : sheet::TrimStanding::notGoodEnough;
  made.network = proposal.network.name();
  made.summary = {
      fmt::format("The needle is at worst {} off at {}; without the resistors {} at {}.",
                  printDifference(proposal.after.worst.error, units, 1), print(proposal.after.worst.at, units),
                  printDifference(before.worst.error, units, 1), print(before.worst.at, units)),
      hotLineOf(proposal.after.hot, units)};
  made.circuit = circuitOf(proposal.network, answer.asItIs.senderName);
  made.parts = partsOf(proposal);
  made.corners = cornersOf(proposal, units);
  made.rows = rowsOf(before, proposal.after, units);
  made.before = pointsOf(before, units);
  made.after = pointsOf(proposal.after, units);
  made.hotMark = inUnit(proposal.after.hotMark, units.temperature);
  made.unit = units.temperature == TemperatureUnit::celsius ? "°C" : "°F";
  made.errorUnit = units.temperature == TemperatureUnit::celsius ? "K" : "F°";
  made.conditions = fmt::format("Power at {:.0f} V; what to buy is derated for {} behind the dash.",
                                pairing::kTrimVolts, print(celsius(pairing::kTrimCelsius), units));
  for (const Finding& finding : proposal.findings) made.findings.push_back(finding.sentence);
  for (const pairing::Failure& failure : proposal.failures) made.failures.push_back(failureOf(failure, units));
  made.cautions = {
      "Disconnect the battery before you work behind the dash, and never open a hot cooling system: it is under "
      "pressure.",
      "The gauge is an aid, a trimmed one more so. Prove it on the bench or against a thermometer.",
      "Local codes and licensed practice come first."};
  return sheet::drawTrimSheet(made, options.paper);
}

}  // namespace ohmkin::workflow
