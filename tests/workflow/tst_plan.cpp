#include "demo_catalogue.h"

#include <rapidcheck.h>
#include <workflow/plan.h>
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
  void a_bad_engine_is_named() {
    PlanQuestion question = asked();
    question.engines[1].casting = "99999";
    const auto plan = workflow::plan(catalogue_, question);
    QVERIFY(!plan);
    QVERIFY2(plan.error().sentence().find("99999") != std::string::npos, plan.error().sentence().c_str());
  }
};

QTEST_APPLESS_MAIN(TestPlan)
#include "tst_plan.moc"
