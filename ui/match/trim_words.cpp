#include <match/reasons.h>
#include <match/trim_words.h>
#include <match/wording.h>
#include <parts/remarks.h>

namespace ohmkin::match {
namespace {

using workflow::Candidate;

QString modeWords(pairing::FailureMode mode) {
  switch (mode) {
    case pairing::FailureMode::opens:
      return tr("opens");
    case pairing::FailureMode::shorts:
      return tr("shorts");
    case pairing::FailureMode::driftsUp:
      return tr("drifts up");
    case pairing::FailureMode::driftsDown:
      return tr("drifts down");
    case pairing::FailureMode::leadOpens:
      return tr("opens");
    case pairing::FailureMode::leadGrounded:
      break;
  }
  return tr("grounded");
}

QString shownWords(const gauge::Reading& reading, const DisplayUnits& units) {
  switch (reading.where) {
    case gauge::Where::belowTheMarks:
      return tr("below the marks");
    case gauge::Where::pastTheMarks:
      return tr("past the marks");
    case gauge::Where::onTheMarks:
      break;
  }
  return plain(print(reading.shown, units));
}

}  // namespace

parts::Circuit circuitOf(const Candidate& candidate) {
  parts::Circuit circuit;
  if (!candidate.trim) return circuit;
  const pairing::TrimNetwork& network = candidate.trim->network;
  if (network.hasSeries()) circuit.series = plain(printNominal(network.seriesOhms()));
  if (network.hasParallel()) circuit.parallel = plain(printNominal(network.parallelOhms()));
  if (network.topology() == pairing::Topology::feedToSender) circuit.feed = plain(printNominal(network.feedOhms()));
  circuit.parallelAtSender = network.topology() == pairing::Topology::parallelThenSeries;
  circuit.sender = plain(candidate.part);
  circuit.words = plain(network.name());
  return circuit;
}

std::vector<parts::FailureWords> failuresOf(const pairing::TrimProposal& trim, const DisplayUnits& units) {
  std::vector<parts::FailureWords> words;
  words.reserve(trim.failures.size());
  for (const pairing::Failure& failure : trim.failures)
    words.push_back({plain(failure.part), modeWords(failure.mode), shownWords(failure.atHotMark, units),
                     failure.noticed ? tr("seen") : tr("silent"), plain(failure.sentence),
                     failure.readsLow && !failure.noticed});
  return words;
}

QString trimInWords(const pairing::TrimProposal& trim, const DisplayUnits& units) {
  QString words = trim.permanent      ? tr("May stay: ")
                  : trim.withinLimits ? tr("To get home only: ")
                                      : tr("Not within limits: ");
  words +=
      tr("%1. At worst %2. ").arg(plain(trim.network.name()), plain(printDifference(trim.after.worst.error, units)));
  return words + hotWords(trim.after.hot, units);
}

std::vector<parts::FindingWords> trimFindings(const pairing::TrimProposal& trim) {
  std::vector<parts::FindingWords> words;
  words.reserve(trim.findings.size());
  for (const Finding& finding : trim.findings)
    words.push_back({{},
                     plain(finding.sentence),
                     plain(finding.evidence),
                     plain(finding.source),
                     parts::weightOf(finding.severity)});
  return words;
}

QString ratingsInWords(const pairing::TrimProposal& trim) {
  QStringList each;
  for (const pairing::PartLoad& load : trim.loads)
    each << tr("%1: buy %2 W").arg(plain(load.part)).arg(inWatts(load.rating), 0, 'g', 3);
  if (each.isEmpty()) return {};
  return each.join(QStringLiteral("; ")) + tr(". Mounted behind the dash, never on the head.");
}

}  // namespace ohmkin::match
