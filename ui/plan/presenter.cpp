#include <desk/catalogue_thread.h>
#include <plan/presenter.h>
#include <array>

namespace ohmkin::plan {
namespace {

using desk::plain;
using workflow::PlanCell;

constexpr qsizetype kMostLeft = 6;

QString tr(const char* text) { return PlanGrid::tr(text); }

parts::Fit fitOf(const PlanCell& cell) {
  if (cell.refused) return parts::Fit::look;
  if (!cell.answered) return parts::Fit::cut;
  return cell.rank == pairing::Rank::sameFamily ? parts::Fit::fits : parts::Fit::withPart;
}

QString joined(const std::vector<std::string>& parts, const QString& between) {
  QStringList all;
  for (const std::string& part : parts) all << plain(part);
  return all.join(between);
}

/// On a card: what and where; watts, series and wiring stand in the list of parts to buy.
QString shortWords(const workflow::PartToBuy& part) {
  if (part.kind == "resistor") return tr("resistor %1 %2").arg(plain(part.part), plain(part.name));
  return plain(workflow::wordsOf(part));
}

QString addedTo(const PlanCell& cell) {
  QStringList all;
  for (std::size_t i = 1; i < cell.shopping.size(); ++i) all << shortWords(cell.shopping[i]);
  return all.join(QStringLiteral(", "));
}

GridCell cellOf(const workflow::Plan& plan, const PlanCell& cell, const DisplayUnits& units) {
  GridCell made;
  made.fit = fitOf(cell);
  made.answered = cell.answered;
  made.best = plan.bestEngine[cell.dash] == cell.engine;
  made.part = cell.answered ? plain(cell.part) : cell.refused ? tr("Not looked at") : tr("No sender to recommend");
  if (const QString added = addedTo(cell); !added.isEmpty()) made.added = tr("with %1").arg(added);
  if (cell.worst) made.worst = tr("worst %1").arg(plain(printDifference(*cell.worst, units)));
  made.era = plain(cell.era);
  made.look = plain(cell.look);
  made.sentence = cell.refused ? desk::refusalSentence(*cell.refused) : plain(cell.sentence);
  made.buy = joined(cell.partsToBuy, QStringLiteral(" + "));
  if (cell.branches > 1)
    made.branches = tr("%1 answers are possible with what is known; this is the likeliest.").arg(cell.branches);
  return made;
}

}  // namespace

GridPicture gridOf(const workflow::Plan& plan, const QStringList& dashes, const QStringList& engines,
                   const DisplayUnits& units) {
  GridPicture picture{dashes, engines, {}};
  for (const PlanCell& cell : plan.cells) picture.cells.push_back(cellOf(plan, cell, units));
  return picture;
}

QString planAsText(const workflow::Plan& plan, const QStringList& dashes, const QStringList& engines,
                   const DisplayUnits& units) {
  const GridPicture picture = gridOf(plan, dashes, engines, units);
  QStringList lines;
  for (int d = 0; d < dashes.size(); ++d) {
    lines << dashes[d];
    for (int e = 0; e < engines.size(); ++e) {
      const GridCell& cell = picture.at(d, e);
      QStringList facts{cell.answered ? cell.buy : cell.part};
      for (const QString& fact : {cell.worst, cell.era})
        if (!fact.isEmpty()) facts << fact;
      lines << QStringLiteral("  %1%2: %3")
                   .arg(engines[e], cell.best ? tr(" (best for this dash)") : QString(),
                        facts.join(QStringLiteral(", ")));
      lines << QStringLiteral("    ") + cell.sentence;
      if (!cell.look.isEmpty()) lines << QStringLiteral("    ") + tr("Look: %1").arg(cell.look);
    }
    lines << QString();
  }
  if (!plan.partsToBuy.empty())
    lines << tr("Parts to buy, with the best engine for each dash: %1")
                 .arg(joined(plan.partsToBuy, QStringLiteral(", ")));
  for (const std::string& caution : plan.cautions) lines << plain(caution);
  return lines.join(QLatin1Char('\n'));
}

QStringList texts(const std::vector<Line>& lines) {
  QStringList all;
  for (const Line& line : lines) all << line.text;
  return all;
}

std::vector<workflow::Question> questionsOf(const workflow::Vocabulary& vocabulary, const std::vector<Line>& lines,
                                            QStringList& notes) {
  std::vector<workflow::Question> all;
  for (const Line& line : lines) {
    if (line.opened) {
      all.push_back(*line.opened);
      notes << QString();
      continue;
    }
    const workflow::TextReading reading = workflow::readQuestion(vocabulary, line.text.toStdString());
    all.push_back(reading.question);
    notes << notUnderstood(line.text, reading);
  }
  return all;
}

std::pair<std::vector<Line>, std::vector<Line>> exampleOf(const workflow::Vocabulary& vocabulary) {
  QString dash;
  std::vector<Line> engines;
  for (const workflow::Word& word : vocabulary.words()) {
    // "model years 1967–78": the year after the first.
    const int from = plain(word.note).section(QStringLiteral("model years "), 1).left(4).toInt();
    if (dash.isEmpty() && word.field == "line" && word.text != word.id && from > 0)
      dash = QStringLiteral("%1 %2").arg(from + 1).arg(plain(word.text));
    if (word.field == "casting" && engines.size() < 2)
      engines.push_back(Line{tr("casting %1").arg(plain(word.text)), std::nullopt});
  }
  if (dash.isEmpty() || engines.empty()) return {};
  return {{Line{dash, std::nullopt}}, engines};
}

QString lineOf(const workflow::Vocabulary& vocabulary, const workflow::Question& question) {
  QStringList words;
  // A name of the catalogue is said by its name, not by its id; the first word of an id is its name.
  const auto named = [&](const std::string& id, std::string_view field) {
    for (const workflow::Word& word : vocabulary.words())
      if (word.field == field && word.id == id) return plain(word.text);
    return plain(id);
  };
  if (question.year) words << QString::number(question.year->value);
  if (!question.line.empty()) words << named(question.line, "line");
  if (!question.cluster.empty()) words << plain(question.cluster);
  if (!question.gauge.empty()) words << QStringLiteral("gauge %1").arg(plain(question.gauge));
  if (question.built) words << QStringLiteral("built %1").arg(plain(isoDate(*question.built)));
  if (!question.engine.empty()) words << named(question.engine, "engine");
  if (!question.casting.empty()) words << QStringLiteral("casting %1").arg(plain(question.casting));
  if (!question.castingDate.empty()) words << QStringLiteral("dated %1").arg(plain(question.castingDate));
  if (question.engineBuilt) words << QStringLiteral("engine %1").arg(plain(isoDate(*question.engineBuilt)));
  if (!question.portThread.empty()) words << QStringLiteral("port %1").arg(plain(question.portThread));
  if (!question.terminal.empty()) words << named(question.terminal, "terminal");
  return words.join(QStringLiteral(" "));
}

QString notUnderstood(const QString& text, const workflow::TextReading& reading) {
  const std::string bytes = text.toStdString();
  QStringList complaints;
  QStringList left;
  for (const workflow::TextPiece& piece : reading.pieces) {
    if (!piece.field.empty()) continue;
    // Words that mean nothing here are gathered; where there is something to choose from, that is said.
    if (piece.couldBe.empty()) left << plain(bytes.substr(piece.from, piece.length));
    else complaints << plain(workflow::complaint(piece, bytes));
  }
  if (left.size() > kMostLeft) left = left.mid(0, kMostLeft) << tr("%1 more").arg(left.size() - kMostLeft);
  if (!left.isEmpty()) complaints << tr("Not understood and left out: %1").arg(left.join(QStringLiteral(", ")));
  return complaints.join(QStringLiteral("; "));
}

}  // namespace ohmkin::plan
