#include <dating/calendar.h>
#include <dating/layout.h>
#include <fmt/format.h>
#include <QTest>

#include "reference_table.h"
#include "usual_layouts.h"

using namespace ohmkin;
using namespace ohmkin::dating;
using K = FieldKind;

namespace {

Layout of(std::vector<Field> fields) { return {"try", "layout under test", FoundOn::head, std::move(fields)}; }

QString q(const std::string& text) { return QString::fromStdString(text); }

}  // namespace

class TestLayout : public QObject {
  Q_OBJECT
 private slots:
  /// Weekdays, ordinal days and week dates as published with ISO 8601 and its implementations; sources in
  /// tests/data/dates.csv.
  void the_calendar_is_that_of_iso_8601() {
    const ohmkin::test::ReferenceTable dates("dates.csv");
    static const std::vector<std::string> names{"",         "Monday", "Tuesday",  "Wednesday",
                                                "Thursday", "Friday", "Saturday", "Sunday"};
    int weekdays = 0;
    int ordinals = 0;
    int weeks = 0;
    for (std::size_t i = 0; i < dates.size(); ++i) {
      const Date day = *parseDate(dates.text(i, "date"));
      const IsoWeekDay week = isoWeekDay(day);
      if (!dates.blank(i, "weekday_published")) {
        QCOMPARE(q(names.at(static_cast<std::size_t>(week.weekday))), q(dates.text(i, "weekday_published")));
        ++weekdays;
      }
      if (!dates.blank(i, "ordinal_published")) {
        QCOMPARE(double(dayOfYear(day)), dates.number(i, "ordinal_published"));
        ++ordinals;
      }
      if (!dates.blank(i, "week_date_published")) {
        QCOMPARE(q(fmt::format("{:04}-W{:02}-{}", week.year, week.week, week.weekday)),
                 q(dates.text(i, "week_date_published")));
        QCOMPARE(mondayOf(week.year, week.week) + std::chrono::days{week.weekday - 1}, day);
        ++weeks;
      }
    }
    QVERIFY(weekdays >= 10 && ordinals >= 5 && weeks >= 8);
  }
  /// ISO 8601: a year has 53 weeks where 1 January is a Thursday, or a Wednesday in a leap year.
  void long_years_have_53_weeks() {
    for (int year = 1900; year <= 2030; ++year) {
      const int newYear = isoWeekDay(date(year, 1, 1)).weekday;
      QCOMPARE(weeksIn(year), newYear == 4 || (newYear == 3 && daysInYear(year) == 366) ? 53 : 52);
    }
  }

  void usual_layouts_are_taken() {
    for (const Layout& layout : dating::test::usualLayouts()) {
      const auto checked = checkedLayout(layout);
      QVERIFY2(checked, checked ? "" : checked.error().sentence().c_str());
    }
  }

  /// Written out by hand; the meaning of each kind is in layout.h.
  void a_day_is_written_as_the_layout_says_data() {
    QTest::addColumn<QString>("layout");
    QTest::addColumn<QString>("day");
    QTest::addColumn<QString>("code");
    QTest::newRow("month letter, day, digit") << "letter-day-digit"
                                              << "1975-03-14"
                                              << "C145";
    QTest::newRow("one-digit day") << "letter-day-digit"
                                   << "1960-12-04"
                                   << "L40";
    QTest::newRow("first separator of the set") << "letter-day-digit-spaced"
                                                << "1975-03-14"
                                                << "C 14 5";
    QTest::newRow("J is September where I is left out") << "no-i"
                                                        << "1969-09-05"
                                                        << "J 05 69";
    QTest::newRow("M is December where I is left out") << "no-i"
                                                       << "1969-12-31"
                                                       << "M 31 69";
    QTest::newRow("day first") << "day-letter-digit"
                               << "1981-08-22"
                               << "22H1";
    QTest::newRow("four digits") << "day-letter-four"
                                 << "1981-08-02"
                                 << "2 H 1981";
    QTest::newRow("slashes") << "slashes"
                             << "1967-01-02"
                             << "1/2/67";
    QTest::newRow("six digits") << "six-digits"
                                << "1967-01-02"
                                << "010267";
    QTest::newRow("day of year") << "day-of-year"
                                 << "1985-04-12"
                                 << "5102";
    QTest::newRow("last day of a leap year, shift left out") << "day-of-year-shift"
                                                             << "1972-12-31"
                                                             << "72366";
    QTest::newRow("week whose year is the next") << "week"
                                                 << "1996-12-31"
                                                 << "017";
    QTest::newRow("week date") << "week-weekday"
                               << "1985-04-12"
                               << "1985-W15-5";
    QTest::newRow("shift") << "shift-attached"
                           << "1975-03-14"
                           << "DC145";
    QTest::newRow("five dots are May") << "dial"
                                       << "1971-05-20"
                                       << "71 .....";
    QTest::newRow("weekday letters") << "weekday-checked"
                                     << "1970-01-01"
                                     << "01010H";
    QTest::newRow("fixed text") << "fixed"
                                << "1978-11-30"
                                << "KR11*8";
  }
  void a_day_is_written_as_the_layout_says() {
    QFETCH(QString, layout);
    QFETCH(QString, day);
    QFETCH(QString, code);
    const auto checked = checkedLayout(dating::test::usualLayout(layout.toStdString()));
    QVERIFY(checked);
    QCOMPARE(q(encode(*checked, *parseDate(day.toStdString()))), code);
  }

  void a_layout_that_gives_no_date_is_refused_data() {
    QTest::addColumn<int>("which");
    QTest::addColumn<QString>("code");
    int i = 0;
    for (const char* code :
         {"layout-empty",      "layout-no-year",    "layout-no-date",        "layout-no-date",    "layout-circular",
          "layout-circular",   "layout-circular",   "layout-circular",       "layout-ambiguous",  "layout-ambiguous",
          "layout-ambiguous",  "layout-ambiguous",  "layout-field-optional", "layout-field-text", "layout-field-text",
          "layout-field-text", "layout-field-text", "layout-field-text",     "layout-field-text", "layout-too-long",
          "layout-too-loose",  "layout-too-long",   "layout-ambiguous",      "layout-field-kind", "layout-field-text"})
      QTest::addRow("%d %s", i, code) << i << code, ++i;
  }
  void a_layout_that_gives_no_date_is_refused() {
    const Field opt{K::separator, "-", true};
    const std::vector<std::vector<Field>> layouts{
        {},
        {{K::monthLetter, ""}, {K::day, ""}},
        {{K::day, ""}, {K::yearDigit, ""}},
        {{K::yearFourDigits, ""}, {K::shift, "AB"}},
        {{K::monthLetter, ""}, {K::monthNumber, ""}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::yearDigit, ""}, {K::yearTwoDigits, ""}},
        {{K::dayOfYear, ""}, {K::monthLetter, ""}, {K::yearDigit, ""}},
        {{K::week, ""}, {K::monthLetter, ""}, {K::yearDigit, ""}},
        {{K::monthNumber, ""}, {K::day, ""}, {K::yearTwoDigits, ""}},  // 1111: 1 November or 11 January
        {{K::day, ""}, {K::separator, "-", true}, {K::monthNumber, ""}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::day, ""}, {K::weekday, "", true}, {K::yearDigit, ""}},
        {{K::clockDial, ""}, {K::separator, "."}, {K::yearDigit, ""}},  // the stop is one more dot
        {{K::monthLetter, "", true}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::fixedText, ""}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::fixedText, "A?"}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::separator, "7"}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::shift, "A1"}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, {K::day, "000"}, {K::yearDigit, ""}},
        {{K::week, ""}, {K::weekday, "MTWTFSS"}, {K::yearDigit, ""}},  // two T, two S
        {{K::monthLetter, ""}, {K::fixedText, std::string(80, 'X')}, {K::yearDigit, ""}},
        {{K::monthLetter, ""}, opt, opt, opt, opt, opt, {K::yearDigit, ""}},
        std::vector<Field>(17, Field{K::separator, "-"}),
        {{K::shift, "AB", true},
         {K::monthLetter, ""},
         {K::fixedText, "B", true},
         {K::yearDigit, ""}},  // AB5: January or, of shift A, February
        {{static_cast<K>(99), ""}, {K::monthLetter, ""}, {K::yearDigit, ""}},
        {{K::monthLetter, "\xff\xfe"}, {K::yearDigit, ""}},
    };
    QFETCH(int, which);
    QFETCH(QString, code);
    const auto checked = checkedLayout(of(layouts.at(static_cast<std::size_t>(which))));
    QVERIFY(!checked);
    QCOMPARE(q(checked.error().code), code);
    QVERIFY(!checked.error().sentence().empty());
  }
  void the_two_meanings_of_an_ambiguous_layout_are_named() {
    const auto checked = checkedLayout(of({{K::monthNumber, ""}, {K::day, ""}, {K::yearTwoDigits, ""}}));
    QVERIFY(!checked);
    const QString sentence = q(checked.error().sentence());
    // 10173: month 1, day 01, or month 10, day 1.
    QVERIFY2(sentence.contains("month number 1, day 1,") && sentence.contains("month number 10, day 1,"),
             qPrintable(sentence));
  }
  void what_cannot_be_taken_for_another_part_is_taken() {
    QVERIFY(checkedLayout(of({{K::monthNumber, ""}, {K::shift, "AB"}, {K::day, ""}, {K::yearTwoDigits, ""}})));
    QVERIFY(checkedLayout(of({{K::monthLetter, ""}, {K::yearDigit, ""}})));
    QVERIFY(checkedLayout(of({{K::weekday, ""}, {K::week, ""}, {K::yearTwoDigits, ""}})));
    QCOMPARE(q(checkedLayout(of({{K::fixedText, "kr"}, {K::monthLetter, ""}, {K::yearDigit, ""}}))->fields[0].text),
             QString("KR"));
  }
  void kinds_and_places_go_by_the_names_of_the_catalogue() {
    for (int i = 0; i < 14; ++i) {
      const K kind = static_cast<K>(i);
      QVERIFY(!text(kind).empty());
      QVERIFY(fieldKind(text(kind)) == kind);
    }
    QVERIFY(!fieldKind("hour"));
    QCOMPARE(q(std::string(text(FoundOn::assemblyStamp))), QString("assembly stamp"));
  }
};

QTEST_APPLESS_MAIN(TestLayout)
#include "tst_layout.moc"
