#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <QTest>

using namespace ohmkin;
using namespace ohmkin::exchange;

namespace {

Proposal proposed(std::string_view text, const std::string& corrections = {},
                  TemperatureUnit bare = TemperatureUnit::celsius) {
  const auto proposal = propose(text, "f.csv", {bare, true, corrections});
  if (!proposal) qFatal("%s", proposal.error().sentence().c_str());
  return *proposal;
}

bool finds(const Proposal& proposal, std::string_view code) {
  for (const Finding& finding : proposal.findings)
    if (finding.code == code) return true;
  return false;
}

}  // namespace

class TestReadingProposal : public QObject {
  Q_OBJECT
 private slots:
  void every_column_comes_with_a_reason_and_how_sure_it_is() {
    const Proposal proposal = proposed("No;Temp °C;R kOhm;Remark\n1;20;0,48;ok\n2;60;0,12;ok too\n3;95;0,047;fine\n");
    QCOMPARE(proposal.columns.size(), std::size_t{4});
    for (const ColumnReason& column : proposal.columns)
      QVERIFY(!column.reason.empty() && column.confidence > 0 && column.confidence <= 1);
    QCOMPARE(QString::fromStdString(proposal.columns[2].reason),
             QString("the heading 'R kOhm' says resistance, in kΩ"));
    QCOMPARE(proposal.firstRows.size(), std::size_t{3});
    for (const char* code : {"encoding", "separator", "decimal-mark"}) QVERIFY2(finds(proposal, code), code);
  }
  void an_unstated_unit_is_the_one_chosen_here_and_said() {
    const Proposal proposal = proposed("temperature,ohms\n68,480\n140,120\n", {}, TemperatureUnit::fahrenheit);
    QVERIFY(proposal.plan.columns[0].unit == ColumnUnit::fahrenheit);
    QVERIFY(finds(proposal, "temperature-unit-unstated"));
    QVERIFY(!finds(proposed("temperature_f,ohms\n68,480\n140,120\n"), "temperature-unit-unstated"));
  }
  void an_answer_to_a_question_closes_it() {
    constexpr std::string_view open = "temp_c;ohms\n20;1,300\n30;1,100\n40;1,050\n";
    const Proposal before = proposed(open);
    QCOMPARE(before.questions.size(), std::size_t{1});
    QVERIFY(before.questions[0].sentence.find("'1,300'") != std::string::npos);
    QCOMPARE(before.questions[0].answers.size(), std::size_t{2});
    const auto first = parsePlan(before.questions[0].answers[0], before.plan);
    QVERIFY(first && *first == before.plan);
    const Proposal after = proposed(open, before.questions[0].answers[1]);
    QVERIFY(after.questions.empty() && after.plan.thousands == ',' && after.plan.decimal == '.');
    QCOMPARE(after.signature, before.signature);
  }
  void columns_that_nothing_names_are_asked_for_and_can_be_told() {
    constexpr std::string_view text = "voltage (V);current (mA)\n20;480\n60;120\n";
    const Proposal before = proposed(text);
    QCOMPARE(before.questions.size(), std::size_t{1});
    QCOMPARE(before.questions[0].code, std::string("columns-unknown"));
    QVERIFY(!checkPlan(before.plan));
    const Proposal after = proposed(text, "temperature=1:C, resistance=2:ohm");
    QVERIFY(after.questions.empty() && checkPlan(after.plan).has_value());
    QCOMPARE(after.columns[0].reason, std::string("you said so"));
  }
  void an_encoding_that_is_told_is_used_from_the_beginning() {
    constexpr std::string_view text =
        "Temp \xF8"
        "C;Ohm\n20;480\n60;120\n";  // F8 is ° in the code page 850 of old PCs
    QCOMPARE(proposed(text).columns[0].heading, std::string("Temp øC"));
    const Proposal told = proposed(text, "encoding=cp850");
    QCOMPARE(told.columns[0].heading, std::string("Temp °C"));
    QCOMPARE(told.plan.encoding, std::string("cp850"));
  }
  void files_of_one_habit_share_a_signature() {
    const std::string monday =
        proposed("Logger\nSerial: 4711\nDate: 2024-05-06\n\nTemp °C;Ohm\n20,5;480\n60;120,25\n").signature;
    const std::string tuesday =
        proposed("Logger\nSerial: 99\nDate: 2024-05-07\n\nTemp °C;Ohm\n0,1;1480\n30;320,5\n40;200\n").signature;
    const std::string another =
        proposed("Logger\nSerial: 4711\nDate: 2024-05-06\n\nTemp °F;Ohm\n20,5;480\n60;120,25\n").signature;
    QCOMPARE(monday, tuesday);
    QVERIFY(monday != another);
    QCOMPARE(monday.size(), std::size_t{32});
  }
  void a_sample_cut_off_in_the_middle_of_a_line_is_enough() {
    const auto proposal = propose("temp_c,ohms\n20,480\n60,120\n95,4", "f.csv");
    QVERIFY(proposal);
    QCOMPARE(proposal->firstRows.size(), std::size_t{2});
  }
};

QTEST_APPLESS_MAIN(TestReadingProposal)
#include "tst_reading_proposal.moc"
