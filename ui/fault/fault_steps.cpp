#include <desk/snapshot.h>
#include <fault/fault_page.h>
#include <fault/found.h>
#include <parts/entry.h>
#include <algorithm>

/// How the search goes from one step to the next.
namespace ohmkin::fault {

std::optional<Standing> FaultPage::standing() const {
  if (!found_) return std::nullopt;
  return Standing{*found_->finder, found_->session, found_->answer};
}

FaultPage::Stage FaultPage::stage() const {
  if (!session_.symptom || changesSymptom_) return Stage::symptom;
  if (!session_.helped.empty()) return session_.cause.empty() && !causeAsked_ ? Stage::cause : Stage::done;
  if (chosenTest_ || (found_ && found_->answer.conclusion.next)) return Stage::test;
  return Stage::repair;
}

std::optional<std::size_t> FaultPage::testInHand() const {
  if (!found_ || stage() != Stage::test) return std::nullopt;
  if (chosenTest_) return found_->finder->predictions().tests().testWith(*chosenTest_);
  return found_->answer.conclusion.next->test;
}

void FaultPage::display() {
  const auto now = standing();
  if (!now) return;
  const auto test = testInHand();
  switch (stage()) {
    case Stage::symptom:
      card_->display(symptomStep(session_.symptom));
      break;
    case Stage::test:
      card_->display(testStep(*now, *test));
      break;
    case Stage::repair:
      card_->display(repairStep(*now));
      break;
    case Stage::cause:
      card_->display(causeStep(*now));
      break;
    case Stage::done:
      card_->display(doneStep(*now));
      break;
  }
  bars_->display(likelihoodsOf(*now));
  const auto rows = answersOf(*now);
  answers_->display(rows);
  answers_->setVisible(!rows.empty());
  noAnswers_->setVisible(rows.empty());
  chain_->display(openedOf(*now, test));
  tests_->display(testsOf(*now));
  assumptions_->display(assumptionsOf(*now));
  showSetups();
  QString alarm = contradictionOf(*now);
  if (found_->leftOut > 0)
    alarm = tr("What this circuit does not have was left out (%n).", nullptr, static_cast<int>(found_->leftOut)) +
            QLatin1Char(' ') + alarm;
  alarm_->setText(alarm.trimmed());
  alarmSheet_->setVisible(!alarm.trimmed().isEmpty());
}

void FaultPage::showSetups() {
  const auto& setups = found_->finder->predictions().tests().setups;
  if (setupTicks_.empty()) {
    for (const circuit::Setup& setup : setups) {
      auto* tick = new parts::Tick(desk::plain(setup.name), setups_);
      tick->setToolTip(tr("Made already: it costs no minutes any more"));
      setups_->layout()->addWidget(tick);
      connect(tick, &QCheckBox::clicked, this, [this, code = setup.code](bool made) {
        change(tr("set-up"), [&](workflow::FaultSession& session) {
          std::erase(session.paid, code);
          if (made) session.paid.push_back(code);
        });
      });
      setupTicks_.emplace_back(setup.code, tick);
    }
  }
  const auto& tests = found_->finder->predictions().tests();
  for (const auto& [code, tick] : setupTicks_) {
    const bool byTest = std::any_of(session_.seen.begin(), session_.seen.end(), [&, c = code](const auto& seen) {
      const auto test = tests.testWith(seen.test);
      return test && tests.tests[*test].setup == c;
    });
    const bool paid = std::find(session_.paid.begin(), session_.paid.end(), code) != session_.paid.end();
    tick->setChecked(byTest || paid);
    tick->setEnabled(!byTest);  // a test that was answered has made it
  }
}

parts::Tick* FaultPage::setupTick(const std::string& code) const {
  for (const auto& [each, tick] : setupTicks_)
    if (each == code) return tick;
  return nullptr;
}

void FaultPage::change(const QString& what, const std::function<void(workflow::FaultSession&)>& how) {
  if (asking_) return;  // the card still shows the step before
  const workflow::FaultSession before = session_;
  workflow::FaultSession after = session_;
  how(after);
  put(after);
  history().push(new desk::Snapshot<workflow::FaultSession>(
      what, before, after, [this](const workflow::FaultSession& session) { put(session); }));
}

void FaultPage::put(const workflow::FaultSession& session) {
  session_ = session;
  chosenTest_.reset();
  changesSymptom_ = false;
  causeAsked_ = false;
  form_->fill(session_.question, settings_.units());
  if (session_.question.gauge.empty()) {
    thread_.drop(0);
    forget();
  } else if (!file_.isEmpty()) {
    ask();
  }
}

void FaultPage::beginAnew() {
  asking_ = false;
  change(tr("new search"), [](workflow::FaultSession& session) { session = {}; });
  form_->takeKeyboard();
}

void FaultPage::goOn(const workflow::FaultSession& session) {
  asking_ = false;
  change(tr("a search that was kept"), [&](workflow::FaultSession& now) { now = session; });
}

void FaultPage::answerTest(std::size_t test, const std::string& outcome) {
  const std::string code = found_->finder->predictions().tests().tests[test].code;
  change(tr("answer"), [&](workflow::FaultSession& session) {
    const workflow::FaultSession::Seen now{code, outcome, session.tried.size()};
    const auto before =
        std::find_if(session.seen.begin(), session.seen.end(), [&](const auto& seen) { return seen.test == code; });
    // In its place, unless a repair lies between: then it was looked at again.
    if (before != session.seen.end() && before->afterTried == now.afterTried) {
      *before = now;
      return;
    }
    if (before != session.seen.end()) session.seen.erase(before);
    session.seen.push_back(now);
  });
}

void FaultPage::outcomeChosen(int outcome) {
  const auto now = standing();
  if (!now || asking_) return;
  const auto at = static_cast<std::size_t>(outcome);
  switch (stage()) {
    case Stage::symptom:
      change(tr("answer"), [at](workflow::FaultSession& session) { session.symptom = askedSymptoms()[at]; });
      break;
    case Stage::test:
      answerTest(*testInHand(), now->finder.predictions().tests().tests[*testInHand()].outcomes[at]);
      break;
    case Stage::repair:
      change(at == 0 ? tr("repair that helped") : tr("repair that did not help"),
             [repairs = proposedRepairs(*now), at,
              &faults = now->finder.predictions().faults()](workflow::FaultSession& session) {
               if (at == 1) {
                 for (const std::string& repair : repairs)
                   if (std::find(session.tried.begin(), session.tried.end(), repair) == session.tried.end())
                     session.tried.push_back(repair);
                 return;
               }
               session.helped = repairs.front();
               // A repair may be tried twice, made well the second time.
               std::erase(session.tried, session.helped);
               std::vector<std::string> cured;
               for (const circuit::Fault& fault : faults.faults)
                 if (fault.repair == session.helped) cured.push_back(fault.code);
               if (cured.size() == 1) session.cause = cured.front();
             });
      break;
    case Stage::cause:
      change(tr("cause"), [cause = now->finder.predictions().faults().faults[causesOf(*now)[at]].code](
                              workflow::FaultSession& session) { session.cause = cause; });
      break;
    case Stage::done:
      break;
  }
}

void FaultPage::unsure() {
  if (!found_ || asking_) return;
  if (stage() == Stage::symptom) {
    change(tr("answer"), [](workflow::FaultSession& session) { session.symptom = circuit::Symptom::any; });
  } else if (stage() == Stage::test) {
    answerTest(*testInHand(), {});
  } else if (stage() == Stage::cause) {
    causeAsked_ = true;
    display();
  }
}

void FaultPage::chooseTest(std::size_t test) {
  if (!found_ || asking_ || !session_.helped.empty()) return;
  chosenTest_ = found_->finder->predictions().tests().tests[test].code;
  if (!session_.symptom) session_.symptom = circuit::Symptom::any;
  changesSymptom_ = false;
  display();
  card_->takeKeyboard();
}

void FaultPage::backToProposed() {
  chosenTest_.reset();
  changesSymptom_ = false;
  display();
}

void FaultPage::changeRow(int row) {
  if (!found_ || asking_) return;
  const AnswerRow& which = answers_->rows()[static_cast<std::size_t>(row)];
  if (which.kind == AnswerRow::Kind::symptom) {
    changesSymptom_ = true;
    chosenTest_.reset();
  } else {
    changesSymptom_ = false;
    chosenTest_ = which.code.toStdString();
    // The answer is looked at again, so that the needle did not read right for good.
    if (!session_.helped.empty())
      change(tr("repair that helped"), [](workflow::FaultSession& session) {
        session.helped.clear();
        session.cause.clear();
      });
    chosenTest_ = which.code.toStdString();
  }
  display();
  card_->takeKeyboard();
}

void FaultPage::takeBackRow(int row) {
  const AnswerRow which = answers_->rows()[static_cast<std::size_t>(row)];
  change(tr("answer taken back"), [&which](workflow::FaultSession& session) {
    const std::string code = which.code.toStdString();
    session.helped.clear();
    session.cause.clear();
    if (which.kind == AnswerRow::Kind::symptom) session.symptom.reset();
    if (which.kind == AnswerRow::Kind::test)
      std::erase_if(session.seen, [&](const auto& seen) { return seen.test == code; });
    if (which.kind != AnswerRow::Kind::repair) return;
    const auto repair = std::find(session.tried.begin(), session.tried.end(), code);
    const auto at = static_cast<std::size_t>(repair - session.tried.begin());
    if (repair != session.tried.end()) session.tried.erase(repair);
    for (auto& seen : session.seen)
      if (seen.afterTried > at) --seen.afterTried;
  });
}

}  // namespace ohmkin::fault
