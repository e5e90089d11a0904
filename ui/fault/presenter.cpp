#include <desk/catalogue_thread.h>
#include <fault/presenter.h>
#include <parts/remarks.h>
#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace ohmkin::fault {
namespace {

using circuit::Symptom;
using desk::plain;
using desk::shown;

constexpr std::size_t kSuspects = 6;
constexpr double kNoTwoFaults = 0.1;

QString tr(const char* text) { return QCoreApplication::translate("Fault", text); }

const circuit::TradeTest& testAt(const Standing& standing, std::size_t test) {
  return standing.finder.predictions().tests().tests[test];
}

const circuit::FaultBook& book(const Standing& standing) { return standing.finder.predictions().faults(); }

QString capital(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString minutesWords(double minutes) {
  if (minutes < 1) return tr("half a minute");
  const auto whole = static_cast<int>(std::lround(minutes));
  return whole == 1 ? tr("1 minute") : tr("%1 minutes").arg(whole);
}

QString setupName(const Standing& standing, const std::string& code) {
  for (const circuit::Setup& setup : standing.finder.predictions().tests().setups)
    if (setup.code == code) return plain(setup.name);
  return {};
}

bool isPaid(const Standing& standing, const std::string& setup) {
  const auto& paid = standing.session.paid;
  if (setup.empty() || std::find(paid.begin(), paid.end(), setup) != paid.end()) return true;
  const circuit::TestBook& tests = standing.finder.predictions().tests();
  return std::any_of(standing.session.seen.begin(), standing.session.seen.end(), [&](const auto& seen) {
    const auto test = tests.testWith(seen.test);
    return test && tests.tests[*test].setup == setup;
  });
}

/// Where a person stands who makes it.
QString whereOf(const circuit::TradeTest& test) {
  if (test.setup == "hood") return tr("At the engine");
  if (test.setup == "dash-out") return tr("Behind the dash");
  if (test.setup == "sender-out") return tr("On the bench");
  return test.measure == circuit::Measure::volts ? tr("At the fuse box") : tr("In the driver's seat");
}

const circuit::TestValue* valueOf(const Standing& standing, std::size_t test) {
  for (const circuit::TestValue& value : standing.answer.tests)
    if (value.test == test) return &value;
  return nullptr;
}

const workflow::FaultSession::Seen* seenAt(const Standing& standing, const std::string& test) {
  for (const auto& seen : standing.session.seen)
    if (seen.test == test) return &seen;
  return nullptr;
}

const circuit::Repair& repairWith(const Standing& standing, const std::string& code) {
  const auto& repairs = book(standing).repairs;
  const auto found = std::find_if(repairs.begin(), repairs.end(), [&](const auto& r) { return r.code == code; });
  return found == repairs.end() ? repairs[standing.answer.conclusion.repair] : *found;
}

QString likelihood(double probability) { return plain(std::string(workflow::likelihoodWords(probability))); }

QString worth(const circuit::TestValue& value, double best) {
  const double share = best > 0 ? value.perMinute / best : 0;
  if (share > 0.8) return tr("tells most for its time");
  if (share > 0.4) return tr("tells much for its time");
  if (share > 0.1) return tr("tells something");
  return tr("tells little for its time");
}

}  // namespace

const std::vector<Symptom>& askedSymptoms() {
  static const std::vector<Symptom> all{Symptom::low, Symptom::pegged, Symptom::high, Symptom::erratic, Symptom::lamps};
  return all;
}

StepWords symptomStep(const std::optional<Symptom>& said) {
  StepWords step;
  step.above = tr("To begin with");
  step.title = tr("Key on, engine warm: what does the needle do?");
  for (const Symptom symptom : askedSymptoms())
    step.outcomes.push_back({plain(std::string(circuit::symptomName(symptom))), said == symptom});
  step.unsure = tr("Something else, or not sure");
  return step;
}

StepWords testStep(const Standing& standing, std::size_t test) {
  const circuit::TradeTest& t = testAt(standing, test);
  const auto* seen = seenAt(standing, t.code);
  const auto& next = standing.answer.conclusion.next;
  StepWords step;
  step.above = seen != nullptr              ? tr("Change an answer")
               : next && next->test == test ? tr("Next test")
                                            : tr("The test you chose");
  step.title = shown(t.title);
  step.facts.push_back({tr("Where"), whereOf(t)});
  step.facts.push_back({tr("With"), t.tools.empty() ? tr("no tools") : capital(shown(t.tools))});
  step.facts.push_back({tr("Takes"), minutesWords(t.minutes)});
  if (!isPaid(standing, t.setup))
    step.facts.push_back(
        {tr("First"), tr("%1: %2 more")
                          .arg(setupName(standing, t.setup),
                               minutesWords(standing.finder.predictions().tests().setupMinutes(t.setup)))});
  if (!t.hazard.empty()) step.cautions << shown(t.hazard);
  const circuit::TestValue* value = valueOf(standing, test);
  if (value != nullptr && !value->why.empty()) step.note = shown(value->why);
  else if (value != nullptr && value->then && next && next->test == test)
    step.note = tr("While it is open: %1").arg(shown(testAt(standing, *value->then).title));
  for (std::size_t o = 0; o < t.outcomes.size(); ++o)
    step.outcomes.push_back({shown(t.words[o]), seen != nullptr && seen->outcome == t.outcomes[o]});
  step.unsure = tr("Not sure, or cannot be done");
  return step;
}

std::vector<std::string> proposedRepairs(const Standing& standing) {
  const circuit::FaultBook& faults = book(standing);
  if (standing.answer.conclusion.both.size() == 2) {
    std::vector<std::string> two;
    two.reserve(standing.answer.conclusion.both.size());
    for (const std::size_t f : standing.answer.conclusion.both) two.push_back(faults.faults[f].repair);
    return two;
  }
  return {faults.repairs[standing.answer.conclusion.repair].code};
}

StepWords repairStep(const Standing& standing) {
  const circuit::Conclusion& conclusion = standing.answer.conclusion;
  StepWords step;
  step.above = conclusion.settled ? tr("What to do") : tr("What to do, though it is not sure");
  step.title = shown(conclusion.sentence);
  step.facts.push_back({tr("Puts it right"), capital(likelihood(conclusion.probability))});
  step.facts.push_back(
      {tr("Work, with the part's price"), minutesWords(book(standing).repairs[conclusion.repair].minutes)});
  QStringList notes;
  if (!standing.answer.torque.empty()) notes << shown(standing.answer.torque);
  if (!conclusion.indistinguishable.empty()) {
    QStringList names;
    for (const std::size_t f : conclusion.indistinguishable) names << plain(book(standing).faults[f].name);
    notes << tr("No test here tells it from this: %1.").arg(names.join(QStringLiteral("; ")));
  }
  step.note = notes.join(QLatin1Char('\n'));
  for (const std::string& code : proposedRepairs(standing))
    if (const std::string& caution = repairWith(standing, code).caution;
        !caution.empty() && !step.cautions.contains(shown(caution)))
      step.cautions << shown(caution);
  step.question = tr("When it is done: did the repair help?");
  step.outcomes = {{tr("Yes, it reads right"), false}, {tr("No, it still misreads"), false}};
  return step;
}

std::vector<std::size_t> causesOf(const Standing& standing) {
  std::vector<std::size_t> causes;
  for (const circuit::Suspect& suspect : standing.answer.posterior.faults)
    if (book(standing).faults[suspect.fault].repair == standing.session.helped && causes.size() < 9)
      causes.push_back(suspect.fault);
  return causes;
}

StepWords causeStep(const Standing& standing) {
  StepWords step;
  step.above = tr("It reads right again");
  step.title = tr("What was it in the end?");
  step.note = tr("It is kept with the search, so that the next one can learn from it.");
  for (const std::size_t f : causesOf(standing)) step.outcomes.push_back({plain(book(standing).faults[f].name), false});
  step.unsure = tr("Not sure");
  return step;
}

StepWords doneStep(const Standing& standing) {
  StepWords step;
  step.above = tr("Done");
  step.title = tr("It reads right again.");
  const auto cause = standing.session.cause.empty() ? std::nullopt : book(standing).faultWith(standing.session.cause);
  if (cause) step.facts.push_back({tr("It was"), capital(plain(book(standing).faults[*cause].name))});
  step.facts.push_back({tr("What helped"), shown(repairWith(standing, standing.session.helped).sentence)});
  step.note = tr("Watch the gauge on the next drive: the needle is an aid, a thermometer is the proof.");
  return step;
}

std::vector<LikelihoodRow> likelihoodsOf(const Standing& standing) {
  std::vector<LikelihoodRow> rows;
  for (const circuit::Suspect& suspect : standing.answer.posterior.faults) {
    if (rows.size() == kSuspects) break;
    rows.push_back({capital(plain(book(standing).faults[suspect.fault].name)), likelihood(suspect.probability),
                    suspect.probability});
  }
  if (standing.answer.posterior.twoFaults > kNoTwoFaults)
    rows.push_back({tr("Two things at once"), likelihood(standing.answer.posterior.twoFaults),
                    standing.answer.posterior.twoFaults});
  return rows;
}

std::vector<AnswerRow> answersOf(const Standing& standing) {
  std::vector<AnswerRow> rows;
  if (standing.session.symptom)
    rows.push_back({AnswerRow::Kind::symptom,
                    {},
                    tr("What the needle does"),
                    *standing.session.symptom == Symptom::any
                        ? tr("something else, or not sure")
                        : plain(std::string(circuit::symptomName(*standing.session.symptom))),
                    false});
  const circuit::TestBook& tests = standing.finder.predictions().tests();
  const auto tried = [&](std::size_t i) {
    const std::string& code = standing.session.tried[i];
    rows.push_back(
        {AnswerRow::Kind::repair, plain(code), shown(repairWith(standing, code).sentence), tr("did not help"), false});
  };
  std::size_t repairs = 0;
  for (const auto& seen : standing.session.seen) {
    while (repairs < seen.afterTried && repairs < standing.session.tried.size()) tried(repairs++);
    const auto test = tests.testWith(seen.test);
    if (!test) continue;
    const circuit::TradeTest& t = tests.tests[*test];
    const auto outcome = std::find(t.outcomes.begin(), t.outcomes.end(), seen.outcome);
    const auto& findings = standing.answer.posterior.findings;
    const bool misfit = std::any_of(findings.begin(), findings.end(),
                                    [&](const Finding& finding) { return finding.evidence == t.code; });
    rows.push_back({AnswerRow::Kind::test, plain(t.code), shown(t.title),
                    outcome == t.outcomes.end()
                        ? tr("not sure")
                        : shown(t.words[static_cast<std::size_t>(outcome - t.outcomes.begin())]),
                    misfit});
  }
  while (repairs < standing.session.tried.size()) tried(repairs++);
  return rows;
}

std::vector<TestRow> testsOf(const Standing& standing) {
  double best = 0;
  for (const circuit::TestValue& value : standing.answer.tests) best = std::max(best, value.perMinute);
  std::vector<TestRow> rows;
  rows.reserve(standing.answer.tests.size());
  for (const circuit::TestValue& value : standing.answer.tests)
    rows.push_back({value.test, shown(testAt(standing, value.test).title),
                    capital(tr("%1 · %2").arg(worth(value, best), minutesWords(value.minutes))), shown(value.why)});
  return rows;
}

std::vector<parts::FindingWords> assumptionsOf(const Standing& standing) {
  std::vector<Finding> assumed;
  for (const Finding& finding : standing.answer.findings)
    if (finding.code != "answer-does-not-fit") assumed.push_back(finding);
  parts::Remarks remarks;
  remarks.add(tr("Taken for granted"), assumed);
  return remarks.take();
}

QString contradictionOf(const Standing& standing) {
  QStringList all;
  for (const Finding& finding : standing.answer.posterior.findings) all << shown(finding.sentence);
  return all.join(QLatin1Char(' '));
}

QString searchAsText(const Standing& standing) {
  QStringList lines{tr("Gauge: %1").arg(plain(standing.finder.gaugeName())),
                    tr("Sender: %1").arg(plain(standing.finder.senderName())), QString()};
  for (const AnswerRow& row : answersOf(standing))
    lines << QStringLiteral("%1  %2").arg(row.question, row.answer) +
                 (row.misfit ? tr(" (does not fit the rest)") : QString());
  lines << QString() << tr("What may be the matter");
  for (const LikelihoodRow& row : likelihoodsOf(standing)) lines << QStringLiteral("  %1: %2").arg(row.name, row.words);
  lines << QString();
  const auto say = [&lines](const StepWords& step) {
    lines << QStringLiteral("%1: %2").arg(step.above, step.title);
    for (const StepFact& fact : step.facts) lines << QStringLiteral("  %1: %2").arg(fact.name, fact.words);
    if (!step.note.isEmpty()) lines << QStringLiteral("  ") + step.note;
    for (const QString& caution : step.cautions) lines << tr("  Caution: %1").arg(caution);
  };
  if (!standing.session.helped.empty()) say(doneStep(standing));
  else if (standing.answer.conclusion.next) say(testStep(standing, standing.answer.conclusion.next->test));
  else say(repairStep(standing));
  return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

}  // namespace ohmkin::fault
