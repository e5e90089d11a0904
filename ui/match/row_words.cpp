#include <match/row_words.h>
#include <match/wording.h>
#include <cmath>

namespace ohmkin::match {
namespace {

using workflow::Branch;
using workflow::Candidate;

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

}  // namespace

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
