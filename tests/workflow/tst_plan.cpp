#include "demo_catalogue.h"

#include <catalog/gauges.h>
#include <catalog/joints.h>
#include <rapidcheck.h>
#include <workflow/plan_parts.h>
#include <QTest>

using namespace ohmkin;
using workflow::PlanQuestion;
using workflow::Question;

class TestPlan : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  catalog::Catalogue catalogue_ = demo_.open();

  static PlanQuestion asked() {
    PlanQuestion question;
    for (const int year : {1966, 1968, 1975}) {
      Question dash;
      dash.line = "ridgeway-utility";
      dash.year = ModelYear{year};
      dash.cluster = "gauge package";
      question.dashes.push_back(dash);
    }
    for (const char* casting : {"30112", "30418"}) {
      Question engine;
      engine.casting = casting;
      question.engines.push_back(engine);
    }
    return question;
  }

 private slots:
  void every_cell_is_the_matchs_own_answer() {
    const auto plan = workflow::plan(catalogue_, asked());
    QVERIFY2(plan, plan ? "" : plan.error().sentence().c_str());
    QCOMPARE(plan->cells.size(), std::size_t{6});
    for (std::size_t d = 0; d < 3; ++d) {
      for (std::size_t e = 0; e < 2; ++e) {
        Question both = asked().dashes[d];
        both.casting = asked().engines[e].casting;
        const auto answer = workflow::match(catalogue_, both);
        QVERIFY(answer);
        const auto& cell = plan->at(d, e);
        QCOMPARE(cell.answered, answer->branches.front().ranked.front().recommended());
        if (cell.answered) QCOMPARE(cell.part, answer->branches.front().ranked.front().part);
      }
    }
  }
  void parts_to_buy_are_listed_once() {
    const auto plan = workflow::plan(catalogue_, asked());
    auto parts = plan->partsToBuy;
    QVERIFY(!parts.empty());
    std::sort(parts.begin(), parts.end());
    QVERIFY(std::adjacent_find(parts.begin(), parts.end()) == parts.end());
  }
  void a_plan_is_saved_and_reopened_without_loss() {
    const std::string document = workflow::planDocument(asked());
    const auto again = workflow::readPlanDocument(document, "plan.json");
    QVERIFY(again);
    QCOMPARE(workflow::planDocument(*again), document);
  }
  void a_document_that_is_not_a_plan_is_refused_with_its_place() {
    for (const char* bad :
         {"", "[]", "{}", "{\"schema\":\"ohmkin.plan\",\"version\":2}",
          "{\"schema\":\"ohmkin.plan\",\"version\":1,\"dashes\":3,\"engines\":[]}",
          "{\"schema\":\"ohmkin.plan\",\"version\":1,\"dashes\":[{\"year\":\"x\"}],\"engines\":[]}",
          "{\"schema\":\"ohmkin.plan\",\"version\":1,\"dashes\":[{\"colour\":\"red\"}],\"engines\":[]}"}) {
      const auto read = workflow::readPlanDocument(bad, "plan.json");
      QVERIFY2(!read, bad);
      QVERIFY(read.error().sentence().starts_with("plan.json"));
    }
    rc::check("any bytes are refused or read",
              [](const std::string& text) { (void)workflow::readPlanDocument(text, "x"); });
  }
  void an_empty_side_is_refused() {
    PlanQuestion question = asked();
    question.engines.clear();
    QCOMPARE(workflow::plan(catalogue_, question).error().code, std::string("plan-without-engine"));
    question = asked();
    question.dashes.clear();
    QCOMPARE(workflow::plan(catalogue_, question).error().code, std::string("plan-without-dash"));
  }
  void a_bad_engine_is_refused_in_its_own_cells_and_the_others_are_answered() {
    PlanQuestion question = asked();
    question.engines[1].casting = "99999";
    const auto plan = workflow::plan(catalogue_, question);
    QVERIFY2(plan, plan ? "" : plan.error().sentence().c_str());
    const auto alone = workflow::plan(catalogue_, {asked().dashes, {asked().engines.front()}});
    QVERIFY(alone && alone->answered());
    for (std::size_t d = 0; d < 3; ++d) {
      const auto& bad = plan->at(d, 1);
      QVERIFY(bad.refused);
      QCOMPARE(bad.refused->code, std::string("casting-unknown"));
      QVERIFY(!bad.answered && bad.shopping.empty() && bad.partsToBuy.empty());
      QVERIFY2(bad.sentence.find("99999") != std::string::npos, bad.sentence.c_str());
      QVERIFY(!plan->at(d, 0).refused);
      QCOMPARE(plan->at(d, 0).part, alone->at(d, 0).part);
      QCOMPARE(plan->bestEngine[d], alone->at(d, 0).answered ? std::size_t{0} : plan->cells.size());
    }
    QCOMPARE(plan->partsToBuy, alone->partsToBuy);  // the refused engine adds nothing
  }
  void a_plan_of_nothing_but_refusals_has_no_answer() {
    PlanQuestion question = asked();
    question.engines = {Question{}};
    question.engines.front().casting = "99999";
    const auto plan = workflow::plan(catalogue_, question);
    QVERIFY(plan && !plan->answered());
    QVERIFY(plan->partsToBuy.empty());
    QVERIFY(std::all_of(plan->bestEngine.begin(), plan->bestEngine.end(),
                        [&](std::size_t best) { return best == plan->cells.size(); }));
  }
  void sides_are_called_by_their_names() {
    PlanQuestion question = asked();
    question.engines[0] = {};
    question.engines[0].engine = "ridgeway-six";
    const auto plan = workflow::plan(catalogue_, question);
    QVERIFY(plan);
    QCOMPARE(plan->dashNames[1], std::string("1968 Ridgeway utility, gauge package"));
    QCOMPARE(plan->engineNames[0], std::string("Ridgeway inline six, 3.9 l"));
    QCOMPARE(plan->engineNames[1], std::string("Ridgeway inline six, 3.9 l, head casting 30418"));
  }
  void quantities_are_what_the_marked_cells_need_together() {
    const auto plan = workflow::plan(catalogue_, asked());
    QVERIFY(plan);
    int bought = 0, wanted = 0;
    for (const auto& part : plan->shopping) bought += part.quantity;
    for (std::size_t d = 0; d < 3; ++d)
      if (plan->bestEngine[d] < 2) wanted += static_cast<int>(plan->at(d, plan->bestEngine[d]).shopping.size());
    QVERIFY(wanted > 0);
    QCOMPARE(bought, wanted);
    // Two dashes that want the same sender want two of it: 1966 and 1968 came with the same family of gauge.
    const std::string& part = plan->at(1, plan->bestEngine[1]).part;
    int dashes = 0;
    for (std::size_t d = 0; d < 3; ++d)
      if (plan->bestEngine[d] < 2 && plan->at(d, plan->bestEngine[d]).part == part) ++dashes;
    const auto line = std::find_if(plan->shopping.begin(), plan->shopping.end(),
                                   [&](const auto& p) { return p.part == part && p.kind == "sender"; });
    QVERIFY(line != plan->shopping.end());
    QCOMPARE(line->quantity, dashes);
  }
  void resistors_are_named_one_by_one_with_their_network() {
    // As many resistors as the network has, each one of its values (IEC 60063 E24) and of the rating the trim gives.
    std::size_t trims = 0;
    for (const auto& gauge : catalog::gauges(catalogue_)) {
      for (const auto& thread : catalog::threads(catalogue_)) {
        Question question;
        question.gauge = gauge.id.text;
        question.portThread = thread.id.text;
        const auto answer = workflow::match(catalogue_, question);
        QVERIFY(answer);
        for (const auto& candidate : answer->branches.front().ranked) {
          if (candidate.rank != pairing::Rank::trimmedWithinLimits) continue;
          ++trims;
          const auto parts = workflow::partsFor(candidate);
          QCOMPARE(parts.front().part, candidate.part);
          const auto& network = candidate.trim->network;
          std::vector<workflow::PartToBuy> resistors;
          std::copy_if(parts.begin(), parts.end(), std::back_inserter(resistors),
                       [](const auto& part) { return part.kind == "resistor"; });
          QCOMPARE(resistors.size(), static_cast<std::size_t>(network.parts()));
          for (std::size_t i = 0; i < resistors.size(); ++i) {
            const auto& part = resistors[i];
            QCOMPARE(part.network, network.name());
            QVERIFY2(part.network.find(part.part) != std::string::npos, part.network.c_str());
            QCOMPARE(inWatts(*part.rating), inWatts(candidate.trim->loads[i].rating));
            QCOMPARE(part.series, std::string("E24"));
            const Ohms ofItsPlace = part.name == "in parallel" ? network.parallelOhms()
                                    : part.name == "in series" ? network.seriesOhms()
                                                               : network.feedOhms();
            QCOMPARE(inOhms(*part.resistance), inOhms(ofItsPlace));
            QVERIFY(workflow::wordsOf(part).find(part.part + ", ") != std::string::npos);
          }
        }
      }
    }
    QVERIFY(trims > 0);
  }
};

QTEST_APPLESS_MAIN(TestPlan)
#include "tst_plan.moc"
