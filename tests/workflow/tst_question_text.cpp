#include "demo_catalogue.h"

#include <rapidcheck.h>
#include <workflow/question_text.h>
#include <QTest>
#include <algorithm>

using namespace ohmkin;

class TestQuestionText : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  catalog::Catalogue catalogue_ = demo_.open();
  workflow::Vocabulary vocabulary_{catalogue_};

 private slots:
  void the_order_of_the_words_does_not_matter() {
    for (const char* text : {"1968 ridgeway utility gauge package casting 30418 dated H 22 1",
                             "casting 30418 dated H 22 1, gauge package 1968 ridgeway utility",
                             "gauge package, ridgeway utility, 30418, 1968 dated H 22 1"}) {
      const auto q = workflow::readQuestion(vocabulary_, text).question;
      QCOMPARE(q.line, std::string("ridgeway-utility"));
      QCOMPARE(q.year, std::optional(ModelYear{1968}));
      QCOMPARE(q.cluster, std::string("gauge package"));
      QCOMPARE(q.casting, std::string("30418"));
      QCOMPARE(q.castingDate, std::string("H 22 1"));
    }
  }
  void readings_build_dates_and_parts_are_understood() {
    const auto q = workflow::readQuestion(vocabulary_,
                                          "ridgeway utility built 1968-03-21 engine 1981-09-01 fitted BR-2215 20C=480")
                       .question;
    QCOMPARE(q.built, std::optional(date(1968, 3, 21)));
    QCOMPARE(q.engineBuilt, std::optional(date(1981, 9, 1)));
    QCOMPARE(q.fitted, std::string("BR-2215"));
    QCOMPARE(q.readings.size(), std::size_t{1});
  }
  void numbers_asked_for_are_read_as_those_held_are() {
    const workflow::Vocabulary asked(catalogue_, workflow::Vocabulary::Numbers::askedFor);
    std::size_t numbers = 0;
    for (const workflow::Word& word : vocabulary_.words()) {
      numbers += word.field == "casting" || word.field == "fitted" ? 1 : 0;
      for (const std::string& text : {word.text, "1968 " + word.text + " xylophone", word.folded}) {
        const auto held = workflow::readQuestion(vocabulary_, text);
        const auto other = workflow::readQuestion(asked, text);
        QCOMPARE(other.question.casting, held.question.casting);
        QCOMPARE(other.question.fitted, held.question.fitted);
        QCOMPARE(other.pieces.size(), held.pieces.size());
        for (std::size_t i = 0; i < held.pieces.size(); ++i) {
          QCOMPARE(other.pieces[i].field, held.pieces[i].field);
          QCOMPARE(other.pieces[i].reading, held.pieces[i].reading);
        }
      }
    }
    QVERIFY(numbers > 80);
    QVERIFY(asked.words().size() + numbers == vocabulary_.words().size());
  }
  void what_is_not_understood_is_said_so() {
    const auto reading = workflow::readQuestion(vocabulary_, "1968 ridgeway utility xylophone");
    const auto odd = std::find_if(reading.pieces.begin(), reading.pieces.end(),
                                  [](const auto& piece) { return piece.field.empty(); });
    QVERIFY(odd != reading.pieces.end());
    QCOMPARE(odd->length, std::size_t{9});
  }
  void a_makes_name_is_enough_where_one_line_of_it_has_that_model_year() {
    QCOMPARE(workflow::readQuestion(vocabulary_, "1971 brackwell").question.line,
             std::string("brackwell-parcel-truck"));
    QCOMPARE(workflow::readQuestion(vocabulary_, "brackwell gauge package 1971").question.line,
             std::string("brackwell-parcel-truck"));
    QCOMPARE(workflow::readQuestion(vocabulary_, "norrhult estate").question.line,
             std::string("norrhult-alvik-estate"));
  }
  void a_makes_name_that_could_be_several_lines_names_them() {
    const std::string text = "1962 brackwell";
    const auto reading = workflow::readQuestion(vocabulary_, text);
    QVERIFY(reading.question.line.empty());
    QCOMPARE(reading.pieces[1].couldBe.size(), std::size_t{4});  // the half-ton ended with 1957
    QVERIFY(workflow::complaint(reading.pieces[1], text).find("Brackwell Fenholt wagon") != std::string::npos);
    const auto never = workflow::readQuestion(vocabulary_, "1990 brackwell");
    QVERIFY(workflow::complaint(never.pieces[1], "1990 brackwell").find("Brackwell parcel truck (1960–72)") !=
            std::string::npos);
  }
  void a_make_beside_a_line_named_in_full_is_no_complaint() {
    for (const char* text : {"brackwell 1965 pickup", "1968 ridgeway, ute"}) {
      const auto reading = workflow::readQuestion(vocabulary_, text);
      for (const auto& piece : reading.pieces) QVERIFY2(workflow::complaint(piece, text).empty(), text);
    }
  }
  void completion_goes_on_with_a_name_over_several_words() {
    const auto some = workflow::completions(vocabulary_, "1968 ridgeway ut");
    QVERIFY(std::any_of(some.begin(), some.end(),
                        [](const auto& c) { return c.insert.find("tility") != std::string::npos; }));
    QVERIFY(workflow::completions(vocabulary_, "").empty());
  }
  void any_text_is_read_without_harm() {
    rc::check("pieces lie inside the text and do not overlap", [&](const std::string& text) {
      std::size_t end = 0;
      for (const auto& piece : workflow::readQuestion(vocabulary_, text).pieces) {
        RC_ASSERT(piece.from >= end && piece.length > 0 && piece.from + piece.length <= text.size());
        end = piece.from + piece.length;
      }
    });
  }
};

QTEST_APPLESS_MAIN(TestQuestionText)
#include "tst_question_text.moc"
