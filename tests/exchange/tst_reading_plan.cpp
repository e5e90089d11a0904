#include <exchange/reading_plan.h>
#include <rapidcheck.h>
#include <QTest>
#include <array>

using namespace ohmkin;
using namespace ohmkin::exchange;

namespace {

ReadingPlan anyPlan() {
  ReadingPlan plan;
  plan.encoding = *rc::gen::element<std::string>("utf-8", "utf-16le", "utf-16be", "windows-1252");
  plan.separator = *rc::gen::element(',', ';', '\t', '|', ' ');
  plan.decimal = *rc::gen::element('.', ',');
  plan.thousands = *rc::gen::element('\0', '.', ',', ' ', '\'');
  plan.comment = *rc::gen::element<std::string>("", "#", "//", "%");
  plan.skip = static_cast<std::size_t>(*rc::gen::inRange(0, 10'001));
  plan.heading = static_cast<std::size_t>(*rc::gen::inRange(0, 10));
  plan.carriageReturns = *rc::gen::arbitrary<bool>();
  plan.blankLineParts = *rc::gen::arbitrary<bool>();
  const int columns = *rc::gen::inRange(0, 30);
  for (int i = 0; i < columns; ++i) {
    ColumnPlan column;
    column.role =
        *rc::gen::element(Role::ignored, Role::temperature, Role::resistance, Role::time, Role::curve, Role::direction);
    if (column.role == Role::temperature)
      column.unit = *rc::gen::element(ColumnUnit::celsius, ColumnUnit::fahrenheit, ColumnUnit::kelvin);
    if (column.role == Role::resistance)
      column.unit = *rc::gen::element(ColumnUnit::ohm, ColumnUnit::kilohm, ColumnUnit::megohm);
    if (column.role == Role::time)
      column.unit = *rc::gen::element(ColumnUnit::millisecond, ColumnUnit::second, ColumnUnit::minute, ColumnUnit::hour,
                                      ColumnUnit::clock, ColumnUnit::minuteClock, ColumnUnit::yearMonthDay,
                                      ColumnUnit::dayMonthYear, ColumnUnit::monthDayYear);
    plan.columns.push_back(column);
  }
  return plan;
}

}  // namespace

class TestReadingPlan : public QObject {
  Q_OBJECT
 private slots:
  void what_is_written_out_is_read_back_the_same() {
    QVERIFY(rc::check([] {
      const ReadingPlan plan = anyPlan();
      const auto back = parsePlan(planText(plan));
      RC_ASSERT(back.has_value());
      RC_ASSERT(*back == plan);
      RC_ASSERT(planText(plan).find('\n') == std::string::npos);
    }));
  }
  void a_correction_changes_what_it_mentions_and_nothing_else() {
    const auto base = parsePlan("temperature=1:C, resistance=2:ohm, curve=3, separator=semicolon, skip=4");
    QVERIFY(base);
    const auto corrected = parsePlan("resistance=4:kΩ, skip=5", *base);
    QVERIFY(corrected);
    QCOMPARE(corrected->with(Role::resistance), std::vector<std::size_t>{3});
    QCOMPARE(corrected->with(Role::temperature), std::vector<std::size_t>{0});
    QCOMPARE(corrected->with(Role::curve), std::vector<std::size_t>{2});
    QVERIFY(corrected->columns[3].unit == ColumnUnit::kilohm && corrected->columns[1] == ColumnPlan{});
    QVERIFY(corrected->separator == ';' && corrected->skip == 5);
  }
  void what_cannot_be_meant_is_refused_data() {
    QTest::addColumn<QString>("text");
    for (const char* text :
         {"temperature", "temperature=", "temperature=0", "temperature=257", "temperature=1:ohm", "resistance=2:C",
          "curve=1:s", "resistnce=2", "separator=dot", "decimal=7", "skip=-1", "skip=10001", "encoding=../../etc",
          "encoding=no-such-encoding", "comment=12", "heading=one"})
      QTest::newRow(text) << text;
  }
  void what_cannot_be_meant_is_refused() {
    QFETCH(QString, text);
    const auto plan = parsePlan(text.toStdString(), {}, "--map");
    QVERIFY(!plan);
    QVERIFY(!plan.error().expected.empty() && plan.error().where == "--map");
  }
  void a_plan_without_temperature_or_with_one_mark_for_two_things_is_not_read_by() {
    QVERIFY(!checkPlan(*parsePlan("resistance=2:ohm")));
    QVERIFY(!checkPlan(*parsePlan("temperature=2:C")));
    QVERIFY(!checkPlan(*parsePlan("temperature=1:C, resistance=2:ohm, decimal=comma, thousands=comma")));
    QVERIFY(!checkPlan(*parsePlan("temperature=1:C, resistance=2:ohm, curve=3, curve=4")));
    QVERIFY(checkPlan(*parsePlan("temperature=1:C, resistance=2:ohm")).has_value());
  }
};

QTEST_APPLESS_MAIN(TestReadingPlan)
#include "tst_reading_plan.moc"
