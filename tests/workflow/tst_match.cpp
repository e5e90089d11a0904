#include "demo_catalogue.h"

#include <catalog/families.h>
#include <catalog/senders.h>
#include <catalog/vehicles.h>
#include <workflow/judge_electrical.h>
#include <workflow/match.h>
#include <QTest>
#include <algorithm>

using namespace ohmkin;
using workflow::Answer;
using workflow::Branch;
using workflow::Candidate;
using workflow::Question;

namespace {

const Candidate* find(const Branch& branch, const std::string& part) {
  const auto found = std::find_if(branch.ranked.begin(), branch.ranked.end(),
                                  [&](const Candidate& c) { return c.part == part && c.lot.empty(); });
  return found == branch.ranked.end() ? nullptr : &*found;
}

bool says(const std::vector<Finding>& findings, const std::string& code) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

}  // namespace

/// The whole use case on the demo catalogue. The numbers behind it are checked against outside sources in
/// tests/pairing, tests/curve, tests/gauge and tests/joint; here it is that they are put together rightly.
class TestMatch : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  Answer answer(const Question& question) {
    const auto catalogue = demo_.open();
    auto result = workflow::match(catalogue, question);
    if (!result) qFatal("%s", result.error().sentence().c_str());
    return std::move(*result);
  }
  static Question utility() {
    Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.cluster = "gauge package";
    question.casting = "30418";
    return question;
  }

 private slots:
  void the_gauge_decides_the_resistance_and_the_head_decides_the_thread() {
    // common practice, no source: sender thread by the head's date, resistance by the gauge
    const Answer a = answer(utility());
    QCOMPARE(a.branches.size(), std::size_t{1});
    const Branch& branch = a.branches.front();
    QCOMPARE(branch.familyName, std::string("Family A"));
    QCOMPARE(branch.portLink.headline, std::string("1/2-14 NPT"));
    QVERIFY(a.answered());
    QCOMPARE(branch.ranked.front().family, std::string("Family A"));
    QCOMPARE(branch.ranked.front().thread, std::string("1/2-14 NPT"));
    QCOMPARE(branch.ranked.front().rank, pairing::Rank::sameFamily);
  }

  void nothing_that_is_not_a_variable_sender_is_ever_recommended() {
    const auto catalogue = demo_.open();
    std::size_t lookAlikes = 0;
    for (const char* casting : {"30112", "30227", "30418"}) {
      Question question = utility();
      question.casting = casting;
      const Answer a = answer(question);
      for (const Branch& branch : a.branches) {
        for (const Candidate& candidate : branch.ranked) {
          if (candidate.kind == "variable sender") continue;
          ++lookAlikes;
          QVERIFY2(!candidate.recommended(), candidate.part.c_str());
          QVERIFY2(says(candidate.findings, "not-a-variable-sender"), candidate.part.c_str());
        }
      }
    }
    QVERIFY(lookAlikes > 5);
  }

  void a_late_hot_mark_is_refused_untrimmed_and_shown_with_the_reason() {
    const Answer a = answer(utility());
    std::size_t late = 0;
    for (const Candidate& candidate : a.branches.front().ranked) {
      if (!candidate.errors) continue;
      const auto* reaches = std::get_if<pairing::Reaches>(&candidate.errors->hot);
      const bool tooLate = reaches == nullptr ? std::holds_alternative<pairing::NeverReaches>(candidate.errors->hot)
                                              : reaches->late > kelvins(3);
      if (!tooLate) continue;
      ++late;
      QVERIFY2(!candidate.recommended() || candidate.rank == pairing::Rank::trimmedWithinLimits,
               candidate.part.c_str());
      QVERIFY(!candidate.sentence.empty());
    }
    QVERIFY(late > 0);
  }

  void the_order_is_that_of_the_design() {
    const Answer a = answer(utility());
    const auto& ranked = a.branches.front().ranked;
    for (std::size_t i = 1; i < ranked.size(); ++i) QVERIFY(ranked[i - 1].rank <= ranked[i].rank);
  }

  void a_bushing_is_named_where_the_thread_needs_one() {
    const Answer a = answer(utility());
    const Candidate* sender = find(a.branches.front(), "BR-2215");
    QVERIFY(sender != nullptr);
    QCOMPARE(sender->screw.state, workflow::JointState::withPart);
    QVERIFY(std::find(sender->partsNeeded.begin(), sender->partsNeeded.end(), "AD-12") != sender->partsNeeded.end());
    QCOMPARE(sender->rank, pairing::Rank::withBushing);
  }

  void the_era_joint_says_that_the_engine_is_later() {
    // common practice, no source: an engine may be ten years younger than its vehicle
    Question question = utility();
    question.castingDate = "H 22 1";
    const Answer a = answer(question);
    QVERIFY2(a.branches.front().era.words.starts_with("later engine"), a.branches.front().era.words.c_str());
    QVERIFY(a.branches.front().engineLink.detail.find("22 Aug 1981") != std::string::npos);
  }

  void an_unknown_cluster_gives_an_answer_for_each_and_asks() {
    Question question = utility();
    question.cluster.clear();
    const Answer a = answer(question);
    QCOMPARE(a.branches.size(), std::size_t{2});
    QVERIFY(!a.branches[0].title.empty());
    QVERIFY(a.branches[0].title != a.branches[1].title);
    QVERIFY(a.look.has_value());
  }

  void a_mid_year_change_is_settled_by_the_build_date() {
    const auto catalogue = demo_.open();
    std::size_t changes = 0;
    for (const auto& line : catalog::lines(catalogue)) {
      for (const auto& cluster : catalog::clusters(catalogue, line.id)) {
        if (!cluster.built.from || cluster.years.until.value - cluster.years.from.value < 1) continue;
        Question question;
        question.line = line.id.text;
        question.year = cluster.years.from;
        question.cluster = cluster.option;
        const Answer open = answer(question);
        question.built = *cluster.built.from;
        const Answer settled = answer(question);
        QVERIFY2(settled.branches.size() < open.branches.size(), line.id.text.c_str());
        ++changes;
      }
    }
    QVERIFY(changes >= 2);
  }

  void a_mid_year_change_is_settled_by_the_serial_too() {
    Question question;
    question.line = "stanmoor";
    question.year = ModelYear{1980};
    QCOMPARE(answer(question).branches.size() > 1, true);
    question.serial = 412599;
    const Answer before = answer(question);
    question.serial = 412600;
    const Answer after = answer(question);
    QVERIFY(before.branches.front().gaugeName != after.branches.front().gaugeName);
    for (const Answer* settled : {&before, &after}) {
      for (const Branch& branch : settled->branches) QCOMPARE(branch.gaugeName, settled->branches.front().gaugeName);
    }
  }

  void a_lamp_only_cluster_gets_no_sender_and_says_why() {
    Question question = utility();
    question.cluster = "standard";
    const Answer a = answer(question);
    QVERIFY(!a.answered());
    QVERIFY(says(a.branches.front().findings, "lamp-only"));
  }

  void a_dash_that_is_not_original_needs_the_gauge_named() {
    Question question = utility();
    question.cluster.clear();
    question.dashOriginal = false;
    const Answer open = answer(question);
    QVERIFY(!open.answered());
    QCOMPARE(open.look->field, std::string("gauge"));
    question.gauge = "GA-1";
    QVERIFY(answer(question).answered());
  }

  void nothing_known_of_the_engine_still_gives_an_answer() {
    Question question = utility();
    question.casting.clear();
    const Answer a = answer(question);
    QVERIFY(!a.branches.empty());
    QVERIFY(a.answered());
  }

  void what_was_seen_at_the_port_goes_before_the_book() {
    Question question = utility();
    question.portThread = "3/8-18 NPT";
    const Answer a = answer(question);
    QCOMPARE(a.branches.front().portLink.headline, std::string("3/8-18 NPT"));
    QCOMPARE(a.branches.front().portLink.basis, workflow::Basis::conflict);
    QVERIFY(says(a.findings, "port-thread-not-the-castings"));
  }

  void a_reading_names_the_families_it_agrees_with() {
    Question question = utility();
    question.readings.emplace_back(celsius(40), ohms(318));  // the demo's own family A, cold
    const Answer a = answer(question);
    const auto found =
        std::find_if(a.findings.begin(), a.findings.end(), [](const Finding& f) { return f.code == "reading-agrees"; });
    QVERIFY(found != a.findings.end());
    QVERIFY(found->sentence.find("Family A") != std::string::npos);
  }

  void a_lot_that_was_measured_is_judged_by_its_own_curve() {
    const auto catalogue = demo_.open();
    std::size_t lots = 0;
    for (const auto& sender : catalog::senders(catalogue)) {
      if (catalog::benchCurves(catalogue, sender.id).empty()) continue;
      Question question;
      question.gauge = "GA-1";
      question.portThread = sender.thread.text;
      question.fitted = sender.id.text;
      const Answer a = answer(question);
      for (const Candidate& candidate : a.branches.front().ranked) {
        if (candidate.part != sender.id.text || candidate.lot.empty()) continue;
        ++lots;
        const Candidate* byFamily = find(a.branches.front(), candidate.part);
        QVERIFY(byFamily != nullptr && byFamily->errors && candidate.errors);
        QVERIFY(byFamily->errors->worst.error != candidate.errors->worst.error);
      }
    }
    QVERIFY(lots > 0);
  }

  void every_verdict_names_its_evidence_and_source() {
    const Answer a = answer(utility());
    for (const Candidate& candidate : a.branches.front().ranked) {
      QVERIFY2(!candidate.sentence.empty(), candidate.part.c_str());
      for (const Finding& finding : candidate.findings) {
        QVERIFY2(!finding.code.empty() && !finding.sentence.empty(), candidate.part.c_str());
        QVERIFY2(!finding.source.empty(), (candidate.part + ": " + finding.code).c_str());
      }
    }
  }

  // The six and the V8 share thermostat and so band, not the cap: what is remembered of one serves the other.
  void what_was_judged_before_changes_no_recommendation() {
    const auto catalogue = demo_.open();
    workflow::PairMemory memory;
    std::size_t compared = 0;
    for (const char* casting : {"30418", "41204", "30112", "41360", "30418"}) {
      Question question = utility();
      question.casting = casting;
      const auto fresh = workflow::match(catalogue, question);
      const auto remembered = workflow::match(catalogue, question, {}, memory);
      QVERIFY(fresh && remembered);
      QCOMPARE(remembered->branches.size(), fresh->branches.size());
      for (std::size_t b = 0; b < fresh->branches.size(); ++b) {
        for (std::size_t i = 0; i < fresh->branches[b].ranked.size(); ++i) {
          const workflow::Candidate& one = fresh->branches[b].ranked[i];
          const workflow::Candidate& other = remembered->branches[b].ranked[i];
          if (!one.recommended()) break;
          QCOMPARE(other.part, one.part);
          QCOMPARE(other.sentence, one.sentence);
          QCOMPARE(other.findings.size(), one.findings.size());
          for (std::size_t f = 0; f < one.findings.size(); ++f)
            QCOMPARE(other.findings[f].sentence, one.findings[f].sentence);
          ++compared;
        }
      }
    }
    QVERIFY(compared >= 10);
  }
  void the_needles_stand_where_the_table_says() {
    const Answer a = answer(utility());
    const Branch& branch = a.branches.front();
    const Candidate& best = branch.ranked.front();
    for (const auto& row : best.errors->rows) {
      const auto needles = workflow::needlesAt(branch, best, row.trueTemperature);
      QVERIFY(needles.shown.has_value());
      QVERIFY(std::abs(inKelvin(needles.shown->shown - row.indicated.shown)) < 1e-9);
    }
    const auto trimmed =
        std::find_if(branch.ranked.begin(), branch.ranked.end(), [](const Candidate& c) { return c.trim != nullptr; });
    QVERIFY(trimmed != branch.ranked.end());
    for (const auto& row : trimmed->trim->after.rows) {
      const auto needles = workflow::needlesAt(branch, *trimmed, row.trueTemperature, workflow::Fitted::withTrim);
      QVERIFY(needles.shown && std::abs(inKelvin(needles.shown->shown - row.indicated.shown)) < 1e-9);
    }
  }
};

QTEST_APPLESS_MAIN(TestMatch)
#include "tst_match.moc"
