#include "bench_files.h"

#include <circuit/faults.h>
#include <sheet/paper.h>
#include <workflow/find_fault.h>
#include <workflow/job_sheet.h>
#include <workflow/job_work.h>
#include <workflow/match.h>
#include <workflow/match_document.h>
#include <workflow/stock_label.h>
#include <workflow/stock_work.h>
#include <QtTest>

using namespace ohmkin;
using catalog::Catalogue;
using catalog::JobNumber;
using workflow::Question;

namespace {

Question usual() {
  Question question;
  question.line = "Ridgeway utility";
  question.year = ModelYear{1968};
  question.casting = "30418";
  return question;
}

JobNumber opened(Catalogue& catalogue) {
  catalog::JobFields said;
  said.reference = "blue pickup";
  return workflow::openJob(catalogue, said, "Ann")->id;
}

QString code(const auto& result) { return result ? QString("none") : QString::fromStdString(result.error().code); }

}  // namespace

class JobWorkTest : public QObject {
  Q_OBJECT
 private slots:
  void everything_of_a_question_comes_back() {
    Question question = usual();
    question.built = *parseDate("1968-03-21");
    question.serial = 41200;
    question.dashOriginal = false;
    question.cluster = "gauge \"package\" ";
    question.fitted = "BR-2215";
    question.readings = {{celsius(20), ohms(480)}, {celsius(80.5), ohms(51)}};
    question.band = TemperatureSpan{celsius(70), celsius(110)};
    const std::string text = workflow::questionDocument(question);
    const auto back = workflow::readQuestionDocument(text, "test");
    QVERIFY(back);
    QCOMPARE(workflow::questionDocument(*back), text);
    QCOMPARE(back->readings.size(), std::size_t{2});
    QCOMPARE(inOhms(back->readings[1].second), 51.0);
    QVERIFY(back->dashOriginal && !*back->dashOriginal);
  }

  void what_is_no_question_is_refused_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("expected");
    const QString head = R"({"schema": "ohmkin.question", "version": 1)";
    QTest::newRow("nothing") << ""
                             << "question-unreadable";
    QTest::newRow("another document") << R"({"schema": "ohmkin.match", "version": 1})"
                                      << "question-unreadable";
    QTest::newRow("newer") << R"({"schema": "ohmkin.question", "version": 2})"
                           << "question-newer";
    QTest::newRow("a number for a text") << head + R"(, "line": 5})"
                                         << "question-unreadable";
    QTest::newRow("a year far off") << head + R"(, "year": 99999999999})"
                                    << "question-unreadable";
    QTest::newRow("a list of nothing") << head + R"(, "readings": [1]})"
                                       << "question-unreadable";
    QTest::newRow("ohms below nothing") << head + R"(, "readings": [[20, -1]]})"
                                        << "question-unreadable";
    QTest::newRow("a band upside down") << head + R"(, "band_c": [90, 20]})"
                                        << "question-unreadable";
    QTest::newRow("an unknown key") << head + R"(, "colour": "blue"})"
                                    << "question-unreadable";
    QTest::newRow("too large") << head + ", \"line\": \"" + QString(70000, 'x') + "\"}"
                               << "question-unreadable";
  }
  void what_is_no_question_is_refused() {
    QFETCH(QString, text);
    QTEST(code(workflow::readQuestionDocument(text.toStdString(), "test")), "expected");
  }

  void a_kept_answer_stays_while_the_catalogue_changes_and_the_difference_is_told() {
    Catalogue catalogue = demos_.fresh();
    const JobNumber id = opened(catalogue);
    const auto answer = workflow::match(catalogue, usual());
    QVERIFY(answer && answer->answered());
    const auto kept = workflow::keepMatch(catalogue, id, *answer, "Ann");
    QVERIFY(kept);
    QVERIFY(!kept->part.empty());
    const auto same = workflow::answerAgain(catalogue, id, kept->ordinal);
    QVERIFY(same && !same->differs);
    QCOMPARE(same->sentence, std::string("Today's answer is the same."));

    // Some of it come in: the verdict no longer says that there are none.
    QVERIFY(kept->document.find("None on the shelf.") != std::string::npos);
    QVERIFY(workflow::receive(catalogue, kept->part, "9Z", 3, {"Bob", {}, {}}));
    const auto again = workflow::answerAgain(catalogue, id, kept->ordinal);
    QVERIFY(again && again->differs);
    QVERIFY(!again->differences.empty());
    QCOMPARE(again->differences.front().what, std::string("verdict"));
    QVERIFY(again->differences.front().then.find("None on the shelf") != std::string::npos);
    QVERIFY(again->differences.front().now.find("None on the shelf") == std::string::npos);
    QCOMPARE(again->because.back(), std::string("What is on the shelf changed."));

    const auto view = workflow::jobView(catalogue, id);
    QCOMPARE(view->documents.front().kept.document, kept->document);
    QVERIFY(view->documents.front().asWritten);
    QCOMPARE(code(workflow::answerAgain(catalogue, id, 9)), QString("document-unknown"));
  }

  void hostile_documents_do_not_come_in_data() {
    QTest::addColumn<QByteArray>("text");
    QTest::addColumn<QString>("expected");
    QTest::newRow("no JSON") << QByteArray("hello") << "document-unreadable";
    QTest::newRow("JSON of another") << QByteArray(R"({"schema": "other.thing"})") << "document-unreadable";
    QTest::newRow("schema is a list") << QByteArray(R"({"schema": []})") << "document-unreadable";
    QTest::newRow("a list") << QByteArray("[]") << "document-unreadable";
    QTest::newRow("too deep") << QByteArray(100000, '[') << "document-too-deep";
    QTest::newRow("deep in a text is not deep")
        << QByteArray(R"({"schema": "ohmkin.pair", "a": ")") + QByteArray(500, '[') + "\"}"
        << "none";
    QTest::newRow("too large") << QByteArray(9 << 20, ' ') << "document-too-large";
    QTest::newRow("a fault session") << QByteArray(R"({"schema": "ohmkin.fault-session", "version": 1})") << "none";
  }
  void hostile_documents_do_not_come_in() {
    Catalogue catalogue = demos_.fresh();
    QFETCH(QByteArray, text);
    const auto kept = workflow::keepJson(catalogue, opened(catalogue), text.toStdString(), "", "Ann");
    QTEST(code(kept), "expected");
  }

  void an_attachment_that_went_or_changed_is_told() {
    Catalogue catalogue = demos_.fresh();
    const JobNumber id = opened(catalogue);
    const QString file = QString::fromStdString(demos_.beside("dial.png").string());
    const auto write = [&](const char* bytes) {
      QFile out(file);
      QVERIFY(out.open(QIODevice::WriteOnly) && out.write(bytes) > 0);
    };
    write("picture");
    QVERIFY(workflow::attachFile(catalogue, id, file.toStdString(), "", "Ann"));
    const auto state = [&] { return *workflow::jobView(catalogue, id, true)->documents.front().attachment; };
    QCOMPARE(state(), workflow::AttachmentState::asKept);
    write("Picture");
    QCOMPARE(state(), workflow::AttachmentState::changed);
    QVERIFY(QFile::remove(file));
    QCOMPARE(state(), workflow::AttachmentState::missing);
    QCOMPARE(code(workflow::attachFile(catalogue, id, "/nowhere/x.png", "", "Ann")), QString("attachment-unreadable"));
  }

  void causes_found_move_the_likelihoods() {
    Catalogue catalogue = demos_.fresh();
    const auto before = circuit::usualFaults();
    const std::string cause = before->faults.front().code;
    QVERIFY(workflow::shopJobs(catalogue).empty());
    for (int i = 0; i < 3; ++i) QVERIFY(workflow::closeJob(catalogue, opened(catalogue), {"", cause, "low"}, "Ann"));
    const auto counts = workflow::shopJobs(catalogue);
    QCOMPARE(counts.size(), std::size_t{1});
    QCOMPARE(counts.front().group, cause);
    QCOMPARE(counts.front().jobs, 3.0);
    QCOMPARE(counts.front().symptom, circuit::Symptom::low);
    QVERIFY(circuit::learned(*before, counts));
    QCOMPARE(code(workflow::closeJob(catalogue, opened(catalogue), {"", "no-such-fault", ""}, "Ann")),
             QString("cause-unknown"));
  }

  void the_shelf_says_where_the_rest_is() {
    Catalogue catalogue = demos_.fresh();
    const auto part = workflow::onShelf(catalogue, "br 2215");  // demo: 6 in 4C, 1 in the window display
    QVERIFY(part);
    QCOMPARE(part->sentence(), std::string("BR-2215: 7 on the shelf, 6 in 4C, 1 in window display."));
    const auto sold = workflow::sell(catalogue, "br2215", "", 1, {"Ann", {}, {}});
    QVERIFY(sold);
    QCOMPARE(sold->sentence, std::string("BR-2215: sold 1 from 4C, 5 left there."));
    const auto short_ = workflow::sell(catalogue, "BR-2215", "window display", 2, {"Ann", {}, {}});
    QCOMPARE(code(short_), QString("stock-short"));
    QVERIFY(short_.error().found.find("5 in 4C") != std::string::npos);
    QCOMPARE(code(workflow::sell(catalogue, "BR-22155", "", 1, {"Ann", {}, {}})), QString("part-unknown"));
    QVERIFY(workflow::countBin(catalogue, "BR-2215", "4C", 0, {"Ann", {}, {}}));
    QVERIFY(workflow::underMinimum(catalogue).front().part == "BR-2215");
  }

  void sheets_say_what_was_kept() {
    Catalogue catalogue = demos_.fresh();
    const JobNumber id = opened(catalogue);
    const auto answer = workflow::match(catalogue, usual());
    const auto kept = workflow::keepMatch(catalogue, id, *answer, "Ann");
    workflow::SheetOptions options;
    const auto pages = workflow::jobSheet(catalogue, id, options);
    QVERIFY(pages);
    QVERIFY(pages->front().find("blue pickup") != std::string::npos);
    QVERIFY(pages->front().find(kept->part) != std::string::npos);
    QVERIFY(pages->front().find("NEEDLE SHOWS") != std::string::npos);
    QCOMPARE(pages->size(), std::size_t{2});  // the offset card follows
    QVERIFY(pages->front().find("page 1 of 2") != std::string::npos);
    const auto labels = workflow::shelfLabels(catalogue, {"BR-2215"}, options, true);
    QVERIFY(labels);
    QCOMPARE(labels->size(), std::size_t{2});  // one a bin
    QVERIFY(labels->front().find("BR-2215") != std::string::npos && labels->front().find("4C") != std::string::npos);
  }

 private:
  test::WritableDemos demos_;
};

QTEST_APPLESS_MAIN(JobWorkTest)
#include "tst_job_work.moc"
