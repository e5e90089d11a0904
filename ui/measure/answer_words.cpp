#include <desk/catalogue_thread.h>
#include <measure/answer_words.h>
#include <measure/curve_picture.h>
#include <algorithm>

namespace ohmkin::measure {
namespace {

using bench::Conformance;
using desk::shown;
using workflow::BenchAnswer;

constexpr std::size_t kMostTold = 3;
const std::string kQuestion = "barometer-reduced-question";
const std::string kRisk = "decision-risk";

QString tr(const char* text) { return VerdictCard::tr(text); }

QString wordOf(Conformance conformance) {
  switch (conformance) {
    case Conformance::pass:
      return tr("Pass");
    case Conformance::fail:
      return tr("Fail");
    case Conformance::undecided:
      return tr("Undecided");
    case Conformance::notComparable:
      break;
  }
  return tr("Cannot be compared");
}

parts::Fit fitOf(Conformance conformance) {
  switch (conformance) {
    case Conformance::pass:
      return parts::Fit::fits;
    case Conformance::fail:
      return parts::Fit::cut;
    default:
      return parts::Fit::look;
  }
}

/// Without the word that stands over it already.
QString sentenceUnder(const QString& word, const std::string& sentence) {
  QString text = shown(sentence);
  if (!text.startsWith(word + QLatin1Char(':'))) return text;
  text = text.mid(word.size() + 1).trimmed();
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

/// What was measured and by what rule: how wrong such decisions are.
QString riskOf(const std::vector<Finding>& findings) {
  QStringList lines;
  if (!findings.empty() && !findings.front().evidence.empty()) lines << shown(findings.front().evidence);
  for (const Finding& finding : findings)
    if (finding.code == kRisk) lines << shown(finding.sentence);
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

VerdictWords verdictOf(const BenchAnswer& answer) {
  if (!answer.good)
    return {parts::Fit::look,
            {},
            tr("Write the number on the part, or what family it claims to be: then it is judged here."),
            {}};
  VerdictWords words;
  words.fit = fitOf(answer.good->conformance);
  words.word = wordOf(answer.good->conformance);
  if (!answer.good->findings.empty())
    words.sentence = sentenceUnder(words.word, answer.good->findings.front().sentence);
  words.risk = riskOf(answer.good->findings);
  return words;
}

QString fitWords(const std::optional<curve::Fit>& fit, const std::optional<Refusal>& noFit, const DisplayUnits& units) {
  if (!fit) return noFit ? tr("No curve yet. %1").arg(desk::refusalSentence(*noFit)) : QString();
  const TemperatureSpan known = fit->curve.established();
  QString words = tr("%1, established from %2 to %3; scatter %4 % of ohms. %5")
                      .arg(shown(std::string(curve::formName(fit->form))), shown(print(known.low, units)),
                           shown(print(known.high, units)))
                      .arg(100 * fit->scatter, 0, 'f', 1)
                      .arg(shown(fit->reason));
  return words.trimmed();
}

std::vector<parts::FindingWords> remarksOf(const BenchAnswer& answer) {
  parts::Remarks remarks;
  if (answer.againstClaim) remarks.add(tr("What it claims to be"), {*answer.againstClaim});
  if (answer.good) {
    std::vector<Finding> more;
    for (std::size_t i = 1; i < answer.good->findings.size(); ++i)
      if (answer.good->findings[i].code != kRisk) more.push_back(answer.good->findings[i]);
    remarks.add(tr("Is it good"), more);
  }
  for (const workflow::DriftOfPart& drift : answer.drift)
    remarks.add(tr("Against what it read earlier%1%2")
                    .arg(drift.lot.empty() ? QString() : tr(", lot %1").arg(shown(drift.lot)),
                         drift.provenance.empty() ? QString() : QStringLiteral(": ") + shown(drift.provenance)),
                drift.drift.findings);
  remarks.add(tr("These readings"), answer.findings);
  if (answer.fit) {
    std::vector<Finding> outliers;
    for (const curve::Outlier& outlier : answer.fit->outliers)
      outliers.push_back({"outlier", Severity::caution, outlier.reason, {}, {}});
    remarks.add(tr("Readings that do not belong"), outliers);
  }
  std::vector<Finding> ofLines;
  for (const workflow::TakenLine& line : answer.lines)
    ofLines.insert(ofLines.end(), line.findings.begin(), line.findings.end());
  std::stable_sort(ofLines.begin(), ofLines.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  remarks.add(tr("How they were taken"), ofLines);
  if (answer.whose) remarks.add(tr("Whose curve it is"), answer.whose->findings);
  return remarks.take();
}

std::vector<RowTrouble> troublesOf(const BenchAnswer& answer, const std::vector<int>& rows) {
  std::vector<RowTrouble> troubles;
  for (std::size_t i = 0; i < answer.lines.size() && i < rows.size(); ++i)
    if (answer.lines[i].refused)
      troubles.push_back({rows[i], -1,
                          answer.lines[i].refused->code == kQuestion
                              ? tr("The barometer's pressure could mean two things; answer above.")
                              : desk::refusalSentence(*answer.lines[i].refused)});
  return troubles;
}

QString barometerQuestion(const BenchAnswer& answer) {
  for (const workflow::TakenLine& line : answer.lines)
    if (line.refused && line.refused->code == kQuestion) return desk::refusalSentence(*line.refused);
  return {};
}

QString answerAsText(const workflow::BenchFamilies& families, const BenchAnswer& answer, const DisplayUnits& units) {
  QStringList lines;
  for (const bench::Reading& reading : answer.readings)
    lines << QStringLiteral("%1\t%2").arg(shown(print(reading.at, units, 1)), shown(print(reading.ohms)));
  if (const QString fit = fitWords(answer.fit, answer.noFit, units); !fit.isEmpty()) lines << QString() << fit;
  if (answer.whose) {
    lines << QString() << tr("Whose curve it is:");
    for (const SuspectRow& row : suspectsOf(families, *answer.whose, answer.claimed))
      lines << QStringLiteral("  %1: %2").arg(row.name, chanceWords(row.chance));
  }
  const VerdictWords verdict = verdictOf(answer);
  if (!verdict.word.isEmpty())
    lines << QString() << QStringLiteral("%1. %2 %3").arg(verdict.word, verdict.sentence, verdict.risk);
  if (answer.next && answer.next->finding) lines << shown(answer.next->finding->sentence);
  std::size_t told = 0;
  for (const parts::FindingWords& remark : remarksOf(answer))
    if (remark.weight != parts::Weight::note && told++ < kMostTold) lines << remark.sentence;
  for (const Finding& caution : answer.cautions) lines << shown(caution.sentence);
  return lines.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::measure
