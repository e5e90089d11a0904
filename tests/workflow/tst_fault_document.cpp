#include <workflow/fault_document.h>
#include <QTest>
#include "demo_catalogue.h"

using namespace ohmkin;
using workflow::FaultSession;

namespace {

/// All of a session that can be kept.
FaultSession full() {
  FaultSession session;
  session.question.gauge = "GA-1";
  session.question.sender = "AM-4107";
  session.question.running = celsius(85);
  session.question.supply = volts(12.4);
  session.question.feedShunt = ohms(220);
  session.question.groundShunt = ohms(390);
  session.symptom = circuit::Symptom::low;
  session.seen = {{"unplug", "stays", 0}, {"lamps", "", 0}, {"ground-lead", "stays", 1}};
  session.paid = {"hood", "dash-out"};
  session.tried = {"mend-lead"};
  session.helped = "cluster-ground";
  session.cause = "cluster-ground-open";
  return session;
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const auto at = text.find(what);
  Q_ASSERT(at != std::string::npos);
  return text.replace(at, what.size(), with);
}

}  // namespace

class TestFaultDocument : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;

 private slots:
  void what_is_written_is_read_back() {
    const FaultSession session = full();
    const std::string text = workflow::faultDocument(session);
    const auto back = workflow::readFaultDocument(text, "job 7");
    QVERIFY2(back, back ? "" : back.error().sentence().c_str());
    QCOMPARE(back->question.gauge, session.question.gauge);
    QCOMPARE(back->question.sender, session.question.sender);
    QCOMPARE(inCelsius(*back->question.running), 85.0);
    QCOMPARE(inVolts(*back->question.supply), 12.4);
    QCOMPARE(inOhms(*back->question.feedShunt), 220.0);
    QCOMPARE(inOhms(*back->question.groundShunt), 390.0);
    QVERIFY(back->symptom == session.symptom);
    QVERIFY(back->seen == session.seen);
    QCOMPARE(back->paid, session.paid);
    QCOMPARE(back->tried, session.tried);
    QCOMPARE(back->helped, session.helped);
    QCOMPARE(back->cause, session.cause);
    QCOMPARE(workflow::faultDocument(*back), text);
  }

  void a_search_just_begun_is_read_back_with_nothing_made_up() {
    FaultSession session;
    session.question.gauge = "GA-1";
    const auto back = workflow::readFaultDocument(workflow::faultDocument(session), "job 7");
    QVERIFY(back);
    QVERIFY(!back->symptom && !back->question.running && !back->question.supply && !back->question.feedShunt);
    QVERIFY(back->seen.empty() && back->paid.empty() && back->tried.empty() && back->helped.empty());
  }

  void what_is_no_session_is_refused_and_says_where_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("says");
    const std::string good = workflow::faultDocument(full());
    const auto row = [](const char* name, const std::string& text, const char* code, const char* says) {
      QTest::newRow(name) << QString::fromStdString(text) << QString(code) << QString(says);
    };
    const char* unreadable = "fault-session-unreadable";
    row("empty", "", unreadable, "job 7");
    row("no JSON", "{\"schema\"", unreadable, "JSON");
    row("a list", "[]", unreadable, "JSON");
    row("another document", "{\"schema\":\"ohmkin.plan\",\"version\":1}", unreadable, "another kind");
    row("newer", replaced(good, "\"version\": 1", "\"version\": 2"), "fault-session-newer", "version 2");
    row("deep", std::string(2000, '[') + std::string(2000, ']'), unreadable, "deep");
    row("large", good + std::string(300000, ' '), unreadable, "bytes");
    row("no gauge", replaced(good, "\"GA-1\"", "null"), unreadable, "question.gauge");
    row("a gauge of 300 letters", replaced(good, "GA-1", std::string(300, 'g')), unreadable, "question.gauge");
    row("a gauge that is a number", replaced(good, "\"GA-1\"", "12"), unreadable, "question.gauge");
    row("a temperature beyond any engine", replaced(good, "85.0", "1e9"), unreadable, "running_c");
    row("volts in words", replaced(good, "12.4", "\"twelve\""), unreadable, "supply_v");
    row("ohms below none", replaced(good, "220.0", "-3"), unreadable, "feed_shunt_ohm");
    row("a symptom nobody has", replaced(good, "\"low\"", "\"on-fire\""), unreadable, "on-fire");
    row("a code with a path in it", replaced(good, "\"unplug\"", "\"../../etc\""), unreadable, "seen.test");
    row("a test twice", replaced(good, "\"lamps\"", "\"unplug\""), unreadable, "twice");
    row("a set-up twice", replaced(good, "\"dash-out\"", "\"hood\""), unreadable, "twice");
    row("after more repairs than were tried", replaced(good, "\"after_tried\": 1", "\"after_tried\": 2"), unreadable,
        "after_tried");
    row("a repair that helped and did not",
        replaced(good, "\"helped\": \"cluster-ground\"", "\"helped\": \"mend-lead\""), unreadable, "helped");
    row("answers that are no list", replaced(good, "\"paid\": [", "\"paid\": \"hood\", \"other\": ["), unreadable,
        "paid");
    std::string many = "\"hood\"";
    for (int i = 0; i < 300; ++i) many += ",\"s" + std::to_string(i) + "\"";
    row("300 set-ups", replaced(good, "\"hood\"", many), unreadable, "302");
  }
  void what_is_no_session_is_refused_and_says_where() {
    QFETCH(QString, text);
    QFETCH(QString, code);
    QFETCH(QString, says);
    const auto read = workflow::readFaultDocument(text.toStdString(), "job 7");
    QVERIFY(!read);
    QCOMPARE(QString::fromStdString(read.error().code), code);
    const QString sentence = QString::fromStdString(read.error().sentence());
    QVERIFY2(sentence.contains("job 7") && sentence.contains(says), qPrintable(sentence));
  }

  void a_kept_session_answers_as_the_open_one_did() {
    const auto catalogue = demo_.open();
    FaultSession session;
    session.question.gauge = "GA-1";
    session.symptom = circuit::Symptom::low;
    session.seen = {{"unplug", "stays", 0}, {"ground-lead", "stays", 0}, {"lamps", "", 0}};
    const auto finder = workflow::FaultFinder::make(catalogue, session.question);
    QVERIFY(finder);
    const std::vector<circuit::Answer> typed{*finder->read("unplug=stays", ""), *finder->read("ground-lead=stays", ""),
                                             *finder->read("lamps=unsure", "")};
    const auto open = finder->answer(circuit::Symptom::low, typed);
    const auto back = workflow::readFaultDocument(workflow::faultDocument(session), "job 7");
    QVERIFY(open && back);
    const auto again = workflow::answerOf(*finder, *back, "job 7");
    QVERIFY(again);
    QVERIFY(again->posterior.cases == open->posterior.cases);
    QCOMPARE(again->conclusion.sentence, open->conclusion.sentence);
  }

  void what_the_circuit_does_not_have_is_refused_data() {
    QTest::addColumn<QString>("what");
    QTest::addColumn<QString>("says");
    QTest::newRow("test") << "test"
                          << "no-such-test";
    QTest::newRow("outcome") << "outcome"
                             << "no-such-result";
    QTest::newRow("set-up") << "paid"
                            << "roof-off";
    QTest::newRow("repair tried") << "tried"
                                  << "pray";
    QTest::newRow("repair that helped") << "helped"
                                        << "pray-again";
    QTest::newRow("cause") << "cause"
                           << "gremlins";
  }
  void what_the_circuit_does_not_have_is_refused() {
    QFETCH(QString, what);
    QFETCH(QString, says);
    const std::string code = says.toStdString();
    FaultSession session;
    session.question.gauge = "GA-1";
    if (what == "test") session.seen = {{code, "stays", 0}};
    if (what == "outcome") session.seen = {{"unplug", code, 0}};
    if (what == "paid") session.paid = {code};
    if (what == "tried") session.tried = {code};
    if (what == "helped") session.helped = code;
    if (what == "cause") session.cause = code;
    const auto catalogue = demo_.open();
    const auto finder = workflow::FaultFinder::make(catalogue, session.question);
    QVERIFY(finder);
    const auto answer = workflow::answerOf(*finder, session, "job 7");
    QVERIFY(!answer);
    QVERIFY(QString::fromStdString(answer.error().sentence()).contains(says));
  }

  void what_another_gauge_does_not_have_is_left_out_and_the_rest_stays() {
    const auto catalogue = demo_.open();
    FaultSession session;
    session.question.gauge = "GA-1";
    session.seen = {
        {"unplug", "stays", 0}, {"no-such-test", "stays", 0}, {"lamps", "no-such-result", 0}, {"ground-lead", "", 2}};
    session.paid = {"hood", "roof-off"};
    session.tried = {"pray", "mend-lead"};
    session.cause = "gremlins";
    const auto finder = workflow::FaultFinder::make(catalogue, session.question);
    QVERIFY(finder);
    QCOMPARE(workflow::leaveOutUnknown(*finder, session), std::size_t(5));
    QVERIFY((session.seen == std::vector<FaultSession::Seen>{{"unplug", "stays", 0}, {"ground-lead", "", 1}}));
    QCOMPARE(session.paid, std::vector<std::string>{"hood"});
    QCOMPARE(session.tried, std::vector<std::string>{"mend-lead"});
    QVERIFY(session.cause.empty());
    QVERIFY(workflow::answerOf(*finder, session, "job 7"));
    QCOMPARE(workflow::leaveOutUnknown(*finder, session), std::size_t(0));
  }
};

QTEST_APPLESS_MAIN(TestFaultDocument)
#include "tst_fault_document.moc"
