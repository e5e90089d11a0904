#include <match/presenter.h>
#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>

namespace ohmkin::match {
namespace {

using workflow::Basis;
using workflow::Branch;
using workflow::Candidate;
using workflow::JointState;

QString tr(const char* text) { return QCoreApplication::translate("Match", text); }

parts::Fit fitOf(JointState state) {
  switch (state) {
    case JointState::fits:
      return parts::Fit::fits;
    case JointState::withPart:
      return parts::Fit::withPart;
    case JointState::cut:
      return parts::Fit::cut;
    case JointState::look:
      break;
  }
  return parts::Fit::look;
}

parts::Known knownOf(Basis basis) {
  switch (basis) {
    case Basis::seen:
      return parts::Known::seen;
    case Basis::known:
      return parts::Known::known;
    case Basis::inferred:
      return parts::Known::inferred;
    case Basis::conflict:
      return parts::Known::conflict;
    case Basis::notSeen:
      break;
  }
  return parts::Known::notSeen;
}

parts::LinkWords wordsOf(const workflow::Link& link) {
  return {plain(link.title), plain(link.headline), plain(link.detail), plain(link.basisText), knownOf(link.basis)};
}

parts::JointWords wordsOf(const workflow::Joint& joint) {
  const QString words = plain(joint.words);
  return {fitOf(joint.state), words.isEmpty() && joint.state == JointState::look ? tr("look") : words};
}

/// As it would be fitted: with its resistors where those are what is recommended.
const pairing::ErrorTable* fittedErrors(const Candidate& candidate) {
  if (recommendedTrim(candidate)) return &candidate.trim->after;
  return candidate.errors ? &*candidate.errors : nullptr;
}

QString shelfWords(const Candidate& candidate) {
  if (candidate.fittedNow) return candidate.fittedNowSaid ? tr("in the head now") : tr("likely in the head now");
  if (candidate.shelf.empty()) return tr("none on the shelf");
  const workflow::Shelf& first = candidate.shelf.front();
  QString words = tr("bin %1 · %2").arg(plain(first.bin)).arg(first.quantity);
  if (candidate.shelf.size() > 1) words += tr(", %1 more").arg(candidate.shelf.size() - 1);
  return words;
}

QString worstWords(const Candidate& candidate, const DisplayUnits& units) {
  const pairing::ErrorTable* errors = fittedErrors(candidate);
  if (errors == nullptr) return {};
  return tr("worst %1").arg(plain(printDifference(errors->worst.error, units)));
}

parts::PlotSeries seriesOf(const QString& name, const pairing::ErrorTable& table, const DisplayUnits& units) {
  parts::PlotSeries series;
  series.name = name;
  for (const pairing::ErrorRow& row : table.rows)
    series.points.push_back({inUnit(row.trueTemperature, units.temperature), inUnit(row.error, units.temperature),
                             inUnit(row.uncertainty.total(), units.temperature)});
  return series;
}

parts::Weight weightOf(Severity severity) {
  switch (severity) {
    case Severity::note:
      return parts::Weight::note;
    case Severity::caution:
      return parts::Weight::caution;
    case Severity::warning:
      return parts::Weight::warning;
    case Severity::refusal:
      break;
  }
  return parts::Weight::refusal;
}

/// Each finding once, however many joints it is listed under.
class Findings {
 public:
  void add(const QString& topic, const std::vector<Finding>& some) {
    bool first = true;
    for (const Finding& finding : some) {
      if (std::find(seen_.begin(), seen_.end(), finding) != seen_.end()) continue;
      seen_.push_back(finding);
      words_.push_back({first ? topic : QString(), plain(finding.sentence), plain(finding.evidence),
                        plain(finding.source), weightOf(finding.severity)});
      first = false;
    }
  }
  [[nodiscard]] std::vector<parts::FindingWords> take() { return std::move(words_); }

 private:
  std::vector<Finding> seen_;
  std::vector<parts::FindingWords> words_;
};

QString hotWords(const pairing::HotWarning& hot, const DisplayUnits& units) {
  if (const auto* reaches = std::get_if<pairing::Reaches>(&hot)) {
    const double late = inKelvin(reaches->late);
    const QString amount = plain(printAmount(reaches->late, units));
    if (std::abs(late) < 0.5) return tr("The hot mark comes on time.");
    return late > 0 ? tr("The hot mark comes %1 late.").arg(amount) : tr("The hot mark comes %1 early.").arg(amount);
  }
  if (const auto* never = std::get_if<pairing::NeverReaches>(&hot))
    return tr("The needle is still below the hot mark at %1, where the sender's curve ends.")
        .arg(plain(print(never->curveEnds, units)));
  return tr("The needle is past the hot mark already where the sender's curve begins.");
}

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

QString plain(const std::string& text) {
  // A number and its unit stay on one line.
  static const QRegularExpression beforeUnit(QStringLiteral("(?<=\\d) (?=[K°%Ω±]|F°|kΩ|N·m|lbf|mm|m\\b|AWG|[VW]\\b)"));
  return QString::fromStdString(text).replace(beforeUnit, QString(QChar::Nbsp));
}

QString refusalWords(const Refusal& refusal) {
  QString where = plain(refusal.where);
  if (where.startsWith(QStringLiteral("--"))) where = where.mid(2).replace(QLatin1Char('-'), QLatin1Char(' '));
  QStringList words;
  if (!refusal.found.empty()) words << tr("found %1").arg(plain(refusal.found));
  if (!refusal.expected.empty()) words << tr("expected %1").arg(plain(refusal.expected));
  QString sentence = (where.isEmpty() ? QString() : where + QStringLiteral(": ")) + words.join(QStringLiteral(", "));
  if (!sentence.startsWith(QLatin1Char('/')) && !sentence.isEmpty()) sentence[0] = sentence[0].toUpper();
  return sentence.endsWith(QLatin1Char('.')) ? sentence : sentence + QLatin1Char('.');
}

bool recommendedTrim(const Candidate& candidate) {
  return candidate.rank == pairing::Rank::trimmedWithinLimits && candidate.trim != nullptr;
}

bool misreads(const Candidate& candidate) {
  return candidate.electrical.state == JointState::cut && !recommendedTrim(candidate);
}

QString nameOf(const Candidate& candidate) {
  QString name = plain(candidate.part);
  if (!candidate.lot.empty()) name += tr(", lot %1").arg(plain(candidate.lot));
  if (!recommendedTrim(candidate)) return name;
  const pairing::TrimNetwork& network = candidate.trim->network;
  if (network.hasSeries()) name += QStringLiteral(" + ") + plain(printNominal(network.seriesOhms()));
  if (network.hasParallel()) name += QStringLiteral(" ∥ ") + plain(printNominal(network.parallelOhms()));
  if (network.topology() == pairing::Topology::feedToSender)
    name += QStringLiteral(" + ") + plain(printNominal(network.feedOhms()));
  return name;
}

const Candidate* fittedNow(const Branch& branch) {
  const auto found =
      std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.fittedNow; });
  return found == branch.ranked.end() ? nullptr : &*found;
}

parts::Chain chainOf(const Branch& branch, const Candidate* candidate) {
  parts::Chain chain;
  workflow::Link nothing;
  nothing.title = tr("Sender").toStdString();
  nothing.headline = tr("none").toStdString();
  nothing.detail = tr("nothing in this catalogue goes there").toStdString();
  chain.links = {wordsOf(branch.gaugeLink), wordsOf(branch.leadLink),
                 wordsOf(candidate != nullptr ? candidate->link : nothing), wordsOf(branch.portLink),
                 wordsOf(branch.engineLink)};
  if (candidate != nullptr)
    chain.joints = {wordsOf(candidate->electrical), wordsOf(candidate->plug), wordsOf(candidate->screw),
                    wordsOf(branch.era)};
  else
    chain.joints = {wordsOf(workflow::Joint{}), wordsOf(workflow::Joint{}), wordsOf(workflow::Joint{}),
                    wordsOf(branch.era)};
  return chain;
}

parts::CandidateRow rowOf(const Candidate& candidate, int index, const DisplayUnits& units) {
  parts::CandidateRow row;
  row.index = index;
  row.part = nameOf(candidate);
  row.sentence = plain(candidate.sentence);
  row.worst = worstWords(candidate, units);
  row.shelf = shelfWords(candidate);
  row.misreads = misreads(candidate);
  row.refused = candidate.rank == pairing::Rank::refused;
  if (!candidate.replacedBy.empty()) row.note = tr("now supplied as %1").arg(plain(candidate.replacedBy));
  else if (candidate.kind != "variable sender") row.note = plain(candidate.kind);
  switch (candidate.rank) {
    case pairing::Rank::refused:
      row.fit = parts::Fit::cut;
      break;
    case pairing::Rank::undecided:
      row.fit = parts::Fit::look;
      break;
    case pairing::Rank::readsHigh:
      row.fit = parts::Fit::cut;
      break;
    default:
      row.fit = candidate.partsNeeded.empty() ? parts::Fit::fits : parts::Fit::withPart;
      break;
  }
  return row;
}

std::vector<parts::CandidateRow> rowsOf(const Branch& branch, bool refusedToo, const DisplayUnits& units) {
  std::vector<parts::CandidateRow> rows;
  for (std::size_t i = 0; i < branch.ranked.size(); ++i) {
    const Candidate& candidate = branch.ranked[i];
    if (candidate.rank == pairing::Rank::refused && !candidate.fittedNow && !refusedToo) continue;
    rows.push_back(rowOf(candidate, static_cast<int>(i), units));
  }
  return rows;
}

std::vector<parts::ChipWords> chipsOf(const QString& text, const workflow::TextReading& reading,
                                      const std::vector<workflow::Chip>& chips) {
  std::vector<parts::ChipWords> words;
  for (const workflow::Chip& chip : chips) {
    parts::ChipKind kind = parts::ChipKind::understood;
    if (chip.basis == Basis::inferred) kind = parts::ChipKind::inferred;
    if (chip.basis == Basis::conflict) kind = parts::ChipKind::conflict;
    if (chip.basis == Basis::notSeen) kind = parts::ChipKind::unknown;
    words.push_back({plain(chip.text), kind});
  }
  const QByteArray bytes = text.toUtf8();
  for (const workflow::TextPiece& piece : reading.pieces) {
    if (!piece.field.empty()) continue;
    const QString piecemeal =
        QString::fromUtf8(bytes.mid(static_cast<qsizetype>(piece.from), static_cast<qsizetype>(piece.length)));
    words.push_back({tr("not understood: %1").arg(piecemeal), parts::ChipKind::unknown});
  }
  return words;
}

parts::DialPicture dialOf(const Branch& branch) {
  parts::DialPicture picture;
  if (!branch.gauge) return picture;
  const gauge::Dial& dial = branch.gauge->dial();
  picture.lowStop = dial.lowStop().degrees;
  picture.highStop = dial.highStop().degrees;
  using Kind = parts::DialMark::Kind;
  for (const gauge::Mark& mark : dial.marks()) {
    Kind kind = Kind::tick;
    switch (mark.kind) {
      case gauge::MarkKind::tick:
        break;
      case gauge::MarkKind::numbered:
        kind = Kind::numbered;
        break;
      case gauge::MarkKind::cold:
        kind = Kind::cold;
        break;
      case gauge::MarkKind::normalLow:
        kind = Kind::normalLow;
        break;
      case gauge::MarkKind::normalHigh:
        kind = Kind::normalHigh;
        break;
      case gauge::MarkKind::hot:
        kind = Kind::hot;
        break;
    }
    picture.marks.push_back({mark.angle.degrees, plain(mark.text), kind});
  }
  return picture;
}

parts::PlotPicture plotOf(const Branch& branch, const Candidate& candidate, const DisplayUnits& units) {
  parts::PlotPicture picture;
  picture.temperatureUnit = units.temperature == TemperatureUnit::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
  picture.errorUnit = units.temperature == TemperatureUnit::celsius ? QStringLiteral("K") : QStringLiteral("F°");
  if (!branch.gauge) return picture;
  const TemperatureSpan marked = branch.gauge->dial().marked();
  picture.from = inUnit(marked.low, units.temperature);
  picture.to = inUnit(marked.high, units.temperature);
  picture.bandFrom = inUnit(branch.band.low, units.temperature);
  picture.bandTo = inUnit(branch.band.high, units.temperature);
  picture.hotMark = inUnit(branch.gauge->hotMark(), units.temperature);
  picture.bandName = tr("where people look");

  const auto asItIs = [](const Candidate& c) -> const pairing::ErrorTable* {
    return c.wide ? &*c.wide : c.errors ? &*c.errors : nullptr;
  };
  if (recommendedTrim(candidate)) {
    picture.series.push_back(seriesOf(nameOf(candidate), candidate.trim->after, units));
    if (const auto* bare = asItIs(candidate)) {
      picture.series.push_back(seriesOf(tr("%1 without resistor").arg(plain(candidate.part)), *bare, units));
      picture.series.back().now = true;
      picture.series.back().misreads = true;
    }
  } else if (const auto* table = asItIs(candidate)) {
    picture.series.push_back(seriesOf(tr("%1, k = 2").arg(nameOf(candidate)), *table, units));
    picture.series.back().misreads = misreads(candidate);
  }
  const Candidate* now = fittedNow(branch);
  if (now != nullptr && now != &candidate && now->part != candidate.part) {
    if (const auto* table = asItIs(*now)) {
      picture.series.push_back(seriesOf(
          now->fittedNowSaid ? tr("%1, fitted now").arg(nameOf(*now)) : tr("%1, likely fitted").arg(nameOf(*now)),
          *table, units));
      picture.series.back().now = true;
      picture.series.back().misreads = misreads(*now);
    }
  }
  picture.summary = errorsInWords(candidate, units);
  return picture;
}

QString errorsInWords(const Candidate& candidate, const DisplayUnits& units) {
  const pairing::ErrorTable* errors = fittedErrors(candidate);
  if (errors == nullptr) return tr("%1 has no curve to hold against this gauge.").arg(nameOf(candidate));
  const pairing::Extreme& worst = errors->worst;
  QString words = tr("At worst %1 ± %2 at %3 (k = 2).")
                      .arg(plain(printDifference(worst.error, units)),
                           plain(printAmount(worst.uncertainty.total(), units)), plain(print(worst.at, units)));
  words += QLatin1Char(' ') + hotWords(errors->hot, units);
  if (errors->partial())
    words += QLatin1Char(' ') +
             tr("Its curve covers only %1 to %2.")
                 .arg(plain(print(errors->covered.low, units)), plain(print(errors->covered.high, units)));
  return words;
}

QString topicOfJoint(int joint) {
  switch (joint) {
    case 0:
      return tr("Gauge and sender");
    case 1:
      return tr("Terminal");
    case 2:
      return tr("Thread and port");
    default:
      return tr("Engine and era");
  }
}

std::vector<parts::FindingWords> findingsOf(const workflow::Answer& answer, const Branch& branch,
                                            const Candidate* candidate) {
  Findings findings;
  if (candidate != nullptr) {
    findings.add(topicOfJoint(0), candidate->electrical.findings);
    findings.add(topicOfJoint(1), candidate->plug.findings);
    findings.add(topicOfJoint(2), candidate->screw.findings);
  }
  findings.add(topicOfJoint(3), branch.era.findings);
  if (candidate != nullptr) findings.add(tr("This sender"), candidate->findings);
  findings.add(tr("This vehicle and engine"), branch.findings);
  findings.add(tr("The question"), answer.findings);
  return findings.take();
}

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
  for (const Finding& finding : trim.findings)
    words.push_back(
        {{}, plain(finding.sentence), plain(finding.evidence), plain(finding.source), weightOf(finding.severity)});
  return words;
}

QString ratingsInWords(const pairing::TrimProposal& trim) {
  QStringList each;
  for (const pairing::PartLoad& load : trim.loads)
    each << tr("%1: buy %2 W").arg(plain(load.part)).arg(inWatts(load.rating), 0, 'g', 3);
  if (each.isEmpty()) return {};
  return each.join(QStringLiteral("; ")) + tr(". Mounted behind the dash, never on the head.");
}

QStringList branchTitles(const workflow::Answer& answer) {
  QStringList titles;
  double all = 0;
  for (const Branch& branch : answer.branches) all += branch.weight;
  for (const Branch& branch : answer.branches) {
    const QString title = branch.title.empty() ? tr("as asked") : plain(branch.title);
    const double share = all > 0 ? branch.weight / all : 0;
    titles << tr("%1\n%2 %").arg(title).arg(std::lround(100 * share));
  }
  return titles;
}

QString answerAsText(const workflow::Answer& answer, std::size_t index, const DisplayUnits& units) {
  if (index >= answer.branches.size()) return {};
  const Branch& branch = answer.branches[index];
  QStringList lines;
  if (!branch.title.empty()) lines << plain(branch.title) << QString();
  for (const workflow::Link* link : {&branch.gaugeLink, &branch.leadLink, &branch.portLink, &branch.engineLink})
    lines << QStringLiteral("%1: %2, %3 (%4)")
                 .arg(plain(link->title), plain(link->headline), plain(link->detail), plain(link->basisText));
  lines << QString();
  int place = 0;
  for (const parts::CandidateRow& row : rowsOf(branch, false, units)) {
    lines << QStringLiteral("%1. %2 – %3").arg(++place).arg(row.part, row.sentence);
    lines << QStringLiteral("   %1").arg(QStringList{row.worst, row.shelf}.join(QStringLiteral(" · ")));
  }
  if (answer.look) lines << QString() << plain(answer.look->what) + QLatin1Char(' ') + plain(answer.look->because);
  lines << QString();
  for (const std::string& caution : answer.cautions) lines << plain(caution);
  return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

}  // namespace ohmkin::match
