#include <QTest>
#include <cmath>

#include "procedure.h"

using namespace ohmkin;
using namespace ohmkin::circuit;

namespace {

Answer answer(const Predictions& predictions, std::string_view test, std::string_view outcome) {
  const std::size_t t = *predictions.tests().testWith(test);
  const auto& outcomes = predictions.tests().tests[t].outcomes;
  const auto found = std::find(outcomes.begin(), outcomes.end(), outcome);
  return {t, static_cast<std::size_t>(found - outcomes.begin())};
}

std::vector<TestValue> ranked(const Predictions& predictions, Symptom symptom, std::span<const Answer> answers,
                              std::span<const std::string> paid = {}) {
  return *rank(predictions, symptom, answers, paid);
}

double probability(const Predictions& predictions, const Posterior& posterior, std::string_view fault) {
  for (const Suspect& s : posterior.faults)
    if (predictions.faults().faults[s.fault].code == fault) return s.probability;
  return -1;
}

/// The symptom a case makes first of all.
Symptom plainest(const Case& what) {
  const auto most = std::max_element(what.prior.begin() + 1, what.prior.end());
  return static_cast<Symptom>(most - what.prior.begin());
}

}  // namespace

class TestDiagnosis : public QObject {
  Q_OBJECT
  const Predictions crossed_ = test::predictionsOf(test::crossedFacts());
  const Predictions shunted_ = test::predictionsOf(test::shuntedFacts());
  const Predictions bimetal_ = test::predictionsOf(test::bimetalFacts());

 private slots:
  void priors_and_predictions_are_probabilities() {
    for (const Predictions* p : {&crossed_, &shunted_, &bimetal_}) {
      for (std::size_t s = 0; s < kSymptoms; ++s) {
        double sum = 0;
        for (const Case& c : p->cases()) sum += c.prior[s];
        QVERIFY(std::abs(sum - 1) < 1e-9);
      }
      for (std::size_t t = 0; t < p->tests().tests.size(); ++t)
        for (std::size_t c = 0; c < p->cases().size(); ++c) {
          double sum = 0;
          for (const double q : p->outcomes(t, c)) {
            QVERIFY(q >= 0 && q <= 1);
            sum += q;
          }
          QVERIFY(std::abs(sum - 1) < 1e-9);
        }
    }
  }

  // Source: the procedure's own claim; every ending at another fault must be proved: no test of the book tells them
  // apart.
  void every_single_fault_with_true_answers_is_found_or_one_no_test_tells_from_it() {
    for (const Predictions* p : {&crossed_, &shunted_, &bimetal_}) {
      test::Procedure procedure(*p, false);
      int found = 0;
      int alikeOnes = 0;
      for (std::size_t c = 0; c < p->cases().size() && p->cases()[c].faults.size() == 1; ++c) {
        const std::size_t fault = p->cases()[c].faults[0];
        const std::size_t repair = p->faults().repairIndex(p->faults().faults[fault]);
        for (const Symptom symptom : {Symptom::any, plainest(p->cases()[c])}) {
          const test::Run run = procedure.run(symptom, test::likeliestAnswers(*p, c));
          ++(run.repair == repair ? found : alikeOnes);
          if (run.repair != repair) QVERIFY2(toldFromNone(*p, c, run.repair), p->faults().faults[fault].code.c_str());
        }
      }
      qInfo("%d found, %d ended at one that no test tells from it", found, alikeOnes);
      QVERIFY(alikeOnes * 10 < found);
    }
  }

  void reading_hot_the_coolant_comes_before_any_meter() {
    for (const Symptom symptom : {Symptom::pegged, Symptom::high}) {
      QCOMPARE(ranked(crossed_, symptom, {}).front().test, *crossed_.tests().testWith("coolant"));
      QVERIFY(!conclude(crossed_, symptom, {})->settled);
    }
    QVERIFY(ranked(crossed_, Symptom::low, {}).front().test != *crossed_.tests().testWith("coolant"));
  }

  void not_sure_weighs_nothing_and_a_changed_answer_replaces_the_first() {
    const auto before = weigh(crossed_, Symptom::low, {});
    const std::size_t unplug = *crossed_.tests().testWith("unplug");
    const std::array unsure{Answer{unplug, {}}};
    QCOMPARE(weigh(crossed_, Symptom::low, unsure)->cases, before->cases);
    const std::array changed{answer(crossed_, "unplug", "to-hot"), answer(crossed_, "unplug", "stays")};
    const std::array once{answer(crossed_, "unplug", "stays")};
    QCOMPARE(weigh(crossed_, Symptom::low, changed)->cases, weigh(crossed_, Symptom::low, once)->cases);
    // Not asked again either way.
    for (const TestValue& v : ranked(crossed_, Symptom::low, unsure)) QVERIFY(v.test != unplug);
  }

  void answers_that_contradict_one_another_are_pointed_out() {
    const std::array seen{answer(crossed_, "fuse", "none"), answer(crossed_, "key-feed", "battery volts"),
                          answer(crossed_, "known-resistors", "right"), answer(crossed_, "ground-lead", "to-hot"),
                          answer(crossed_, "unplug", "to-cold")};
    std::array good = seen;
    good[1] = answer(crossed_, "key-feed", "good");
    const auto posterior = weigh(crossed_, Symptom::low, good);
    QVERIFY(std::any_of(posterior->findings.begin(), posterior->findings.end(),
                        [](const Finding& f) { return f.code == "answer-does-not-fit" && f.evidence == "fuse"; }));
    QVERIFY(weigh(crossed_, Symptom::low, {})->findings.empty());
    QVERIFY(!weigh(crossed_, Symptom::low, seen).has_value());  // an outcome that is not there
  }

  void a_set_up_is_paid_once() {
    const std::array seen{answer(crossed_, "unplug", "to-cold")};
    for (const TestValue& v : ranked(crossed_, Symptom::low, seen)) {
      const TradeTest& test = crossed_.tests().tests[v.test];
      QCOMPARE(v.minutes, test.minutes + (test.setup == "hood" ? 0 : crossed_.tests().setupMinutes(test.setup)));
    }
    const std::array<std::string, 1> paid{"dash-out"};
    for (const TestValue& v : ranked(crossed_, Symptom::low, {}, paid))
      if (crossed_.tests().tests[v.test].setup == "dash-out")
        QCOMPARE(v.minutes, crossed_.tests().tests[v.test].minutes);
  }

  // A gauge turned over buries its needle whether it is good or not (common practice, no source).
  void a_test_that_good_and_bad_answer_alike_has_no_weight_and_says_why() {
    const std::array seen{answer(shunted_, "fuse", "good"), answer(shunted_, "known-resistors", "right"),
                          answer(shunted_, "unplug", "to-cold")};
    const std::size_t turned = *shunted_.tests().testWith("gauge-turned");
    for (const TestValue& v : ranked(shunted_, Symptom::low, seen))
      if (v.test == turned) {
        QVERIFY2(v.bits < 0.005, qPrintable(QString::number(v.bits)));
        QVERIFY2(v.why.find("a good circuit and what is suspected both show \"it buries itself\"") != std::string::npos,
                 v.why.c_str());
      }
    QCOMPARE(shunted_.tests().tests[turned].outcomes[likeliest(shunted_.healthy(turned))], std::string("hot"));
  }

  void cautions_stand_where_they_belong() {
    for (const Predictions* p : {&crossed_, &bimetal_}) {
      const auto& ground = p->tests().tests[*p->tests().testWith("ground-lead")];
      QVERIFY(ground.hazard.find("Never hold a short on a regulated gauge") != std::string::npos);
      QVERIFY(ground.hazard.find("Never put feed on the lead") != std::string::npos);
      const auto& coolant = p->tests().tests[*p->tests().testWith("coolant")];
      QVERIFY(coolant.hazard.find("cold") != std::string::npos);
    }
    QVERIFY(!bimetal_.tests().testWith("direct-wiring").has_value());
    for (const Repair& r : bimetal_.faults().repairs)
      if (r.code == "regulator") QVERIFY(r.caution.find("without its regulator") != std::string::npos);
    const auto now = conclude(crossed_, Symptom::pegged, {});
    QVERIFY(std::any_of(now->cautions.begin(), now->cautions.end(),
                        [](const std::string& c) { return c.find("cold") != std::string::npos; }));
  }

  void tests_know_which_parts_they_examine() {
    const auto examines = [&](std::string_view test, Part part) {
      const auto& parts = crossed_.tests().tests[*crossed_.tests().testWith(test)].examines;
      return std::find(parts.begin(), parts.end(), part) != parts.end();
    };
    QVERIFY(examines("sender-ohms-hex", Part::sender));
    QVERIFY(!examines("sender-ohms-hex", Part::thread));
    QVERIFY(examines("sender-ohms-post", Part::thread));
    QVERIFY(examines("fuse", Part::fuse));
    QVERIFY(!examines("fuse", Part::lead));
    QVERIFY(examines("ground-lead", Part::lead));
    QVERIFY(!examines("ground-lead", Part::connector));
  }

  void a_shop_s_own_jobs_move_the_priors() {
    const FaultBook book = *usualFaults();
    const FaultBook more = *learned(book, {{"lead", Symptom::low, 20}});
    const auto lead = [](const FaultBook& b) {
      return std::find_if(b.groups.begin(), b.groups.end(), [](const GroupPrior& g) { return g.group == "lead"; });
    };
    const auto low = static_cast<std::size_t>(Symptom::low);
    // Twenty jobs weigh as much as the judgement: half way between its share and all.
    double all = 0;
    for (const GroupPrior& g : book.groups) all += g.percent[low];
    QVERIFY(std::abs(lead(more)->percent[low] - 50 * (lead(book)->percent[low] / all + 1)) < 1e-9);
    QVERIFY(!learned(book, {{"moon", Symptom::low, 1}}).has_value());
    QVERIFY(!learned(book, {{"lead", Symptom::low, -1}}).has_value());
  }

  void two_faults_are_found_one_after_the_other() {
    // An open lead and a drifted sender: the lead first; then, mended, the sender.
    const std::array seen{answer(crossed_, "ground-lead", "stays"), answer(crossed_, "lead-volts", "none"),
                          answer(crossed_, "lead-through", "high"), answer(crossed_, "bath", "high"),
                          answer(crossed_, "sender-ohms-hex", "high")};
    const auto posterior = weigh(crossed_, Symptom::low, seen);
    QVERIFY(posterior->twoFaults > 0.5);
    QVERIFY(probability(crossed_, *posterior, "lead-open") > 0.5);
    QVERIFY(probability(crossed_, *posterior, "sender-drifted") + probability(crossed_, *posterior, "sender-open") +
                probability(crossed_, *posterior, "wrong-family") >
            0.5);
    std::vector<Answer> all(seen.begin(), seen.end());
    while (const auto next = conclude(crossed_, Symptom::low, all)->next) all.push_back({next->test, {}});
    const Conclusion ended = *conclude(crossed_, Symptom::low, all);
    QCOMPARE(ended.both.size(), std::size_t{2});
    QVERIFY(ended.sentence.find("Mend or renew the lead") != std::string::npos);
    QVERIFY(ended.sentence.find("sender") != std::string::npos);
  }

 private:
  /// Whether a fault cured by the repair gives, at some severity, the same most likely answers as the case does.
  static bool toldFromNone(const Predictions& p, std::size_t ofCase, std::size_t repair) {
    const auto answers = test::likeliestAnswers(p, ofCase);
    for (std::size_t c = 0; c < p.cases().size() && p.cases()[c].faults.size() == 1; ++c) {
      const Fault& fault = p.faults().faults[p.cases()[c].faults[0]];
      if (p.faults().repairIndex(fault) != repair || test::likeliestAnswers(p, c) != answers) continue;
      qInfo("no test tells %s from %s", p.faults().faults[p.cases()[ofCase].faults[0]].code.c_str(),
            fault.code.c_str());
      return alike(p, p.cases()[ofCase].faults[0], p.cases()[c].faults[0]);
    }
    return false;
  }

  void a_repair_that_did_not_help_is_ruled_out_and_the_search_goes_on() {
    const std::vector<Answer> seen{answer(crossed_, "unplug", "stays"), answer(crossed_, "ground-lead", "to-hot")};
    const auto before = conclude(crossed_, Symptom::low, seen);
    QVERIFY(before);
    const std::vector<std::size_t> tried{before->repair};
    const auto weighed = weigh(crossed_, Symptom::low, seen, tried);
    QVERIFY(weighed);
    double sum = 0;
    for (const double p : weighed->cases) sum += p;
    QVERIFY(std::abs(sum - 1) < 1e-9);
    const auto after = conclude(crossed_, Symptom::low, seen, {}, tried);
    QVERIFY(after && after->repair != before->repair);
    QVERIFY(weighed->repairs[before->repair] < 0.1 * before->probability);
  }

  void of_two_faults_the_one_that_was_not_mended_is_left() {
    // The lead is broken and the sender is open: one measured from end to end, the other at its hex.
    const std::vector<Answer> seen{answer(crossed_, "lead-through", "high"),
                                   answer(crossed_, "sender-ohms-hex", "open"), answer(crossed_, "unplug", "stays")};
    const auto both = weigh(crossed_, Symptom::low, seen);
    QVERIFY(both && both->twoFaults > 0.5);
    std::size_t lead = 0;
    std::size_t sender = 0;
    for (std::size_t r = 0; r < crossed_.faults().repairs.size(); ++r) {
      if (crossed_.faults().repairs[r].code == "mend-lead") lead = r;
      if (crossed_.faults().repairs[r].code == "new-sender") sender = r;
    }
    const std::vector<std::size_t> tried{lead};
    const auto left = conclude(crossed_, Symptom::low, seen, {}, tried);
    QVERIFY(left);
    QCOMPARE(left->repair, sender);
    QVERIFY(left->both.empty());
    // The lead is good now: grounded, the needle goes hot. Before the repair that would have told against the lead.
    std::vector<Answer> later = seen;
    later.push_back(answer(crossed_, "ground-lead", "to-hot"));
    const auto asBefore = weigh(crossed_, Symptom::low, later, tried);
    later.back().afterTried = 1;
    const auto asAfter = weigh(crossed_, Symptom::low, later, tried);
    QVERIFY(asBefore && asAfter);
    QVERIFY(asAfter->repairs[sender] > asBefore->repairs[sender]);
    QVERIFY(asAfter->findings.size() < asBefore->findings.size());
  }
};

QTEST_APPLESS_MAIN(TestDiagnosis)
#include "tst_diagnosis.moc"
