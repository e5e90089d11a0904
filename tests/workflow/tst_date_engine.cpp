#include "demo_catalogue.h"

#include <catalog/layouts.h>
#include <workflow/date_engine.h>
#include <workflow/layouts.h>
#include <QTest>
#include <algorithm>

using namespace ohmkin;
using workflow::DateQuestion;

class TestDateEngine : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  catalog::Catalogue catalogue_ = demo_.open();

 private slots:
  void every_layout_of_the_demo_is_sound_and_reads_its_own_example() {
    const auto records = catalog::dateLayouts(catalogue_);
    QVERIFY(records.size() >= 10);
    for (const auto& record : records) {
      const auto layout = workflow::layoutOf(record);
      QCOMPARE(layout.fields.size(), record.fields.size());  // no kind of field got lost between the two rooms
      const auto checked = dating::checkedLayout(layout);
      QVERIFY2(checked, (record.id.text + ": " + (checked ? "" : checked.error().sentence())).c_str());
      const auto decoded = workflow::tryLayout(layout, record.example);
      QVERIFY2(decoded, record.id.text.c_str());
      const bool there = std::any_of(decoded->readings.begin(), decoded->readings.end(), [&](const auto& reading) {
        return reading.from <= record.exampleDate && record.exampleDate < reading.until;
      });
      QVERIFY2(there, record.id.text.c_str());
    }
  }

  void a_head_cast_years_after_the_vehicle_makes_it_a_later_engine() {
    // common practice, no source: an engine may be ten years younger than its vehicle
    DateQuestion question;
    question.castings.push_back({"", dating::CastingRole::head, "30418", "H 22 1", ""});
    question.year = ModelYear{1968};
    const auto answer = workflow::dateEngine(catalogue_, question);
    QVERIFY2(answer, answer ? "" : answer.error().sentence().c_str());
    QVERIFY(answer->dated());
    QCOMPARE(isoDate(answer->posterior.castings.front().days.mostProbable()), std::string("1981-08-22"));
    QVERIFY(answer->posterior.firstEngine.has_value());
    QVERIFY(*answer->posterior.firstEngine < 0.15);
    QVERIFY2(answer->engineWords.find("later") != std::string::npos, answer->engineWords.c_str());
  }

  void a_code_that_is_no_date_is_an_answer_that_says_why() {
    DateQuestion question;
    question.castings.push_back({"", dating::CastingRole::head, "30418", "F 31 1", ""});  // June has 30 days
    const auto answer = workflow::dateEngine(catalogue_, question);
    QVERIFY(answer);
    const bool june = std::any_of(answer->findings.begin(), answer->findings.end(),
                                  [](const Finding& f) { return f.sentence.find("Jun") != std::string::npos; });
    QVERIFY(june);
  }

  void unknown_names_are_refused() {
    DateQuestion question;
    question.castings.push_back({"", dating::CastingRole::head, "30481", "H 22 1", ""});
    QCOMPARE(workflow::dateEngine(catalogue_, question).error().code, std::string("casting-unknown"));
    question.castings.front() = {"", dating::CastingRole::head, "", "H 22 1", "no-such-layout"};
    QCOMPARE(workflow::dateEngine(catalogue_, question).error().code, std::string("layout-unknown"));
  }

  void the_time_line_holds_casting_and_vehicle() {
    DateQuestion question;
    question.castings.push_back({"", dating::CastingRole::head, "30418", "H 22 1", ""});
    question.year = ModelYear{1968};
    const auto answer = workflow::dateEngine(catalogue_, question);
    QVERIFY(answer);
    for (const char* kind : {"casting", "vehicle"}) {
      QVERIFY(std::any_of(answer->timeLine.begin(), answer->timeLine.end(),
                          [&](const auto& span) { return span.kind == kind; }));
    }
  }
};

QTEST_APPLESS_MAIN(TestDateEngine)
#include "tst_date_engine.moc"
