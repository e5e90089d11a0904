#include "reference_table.h"

#include <quantity/date.h>
#include <QTest>

using namespace ohmkin;

class TestDate : public QObject {
  Q_OBJECT
 private slots:
  /// Ordinal days as published with ISO 8601 and its implementations; sources in tests/data/dates.csv.
  void ordinals_are_those_published() {
    const test::ReferenceTable dates("dates.csv");
    int seen = 0;
    for (std::size_t i = 0; i < dates.size(); ++i) {
      if (dates.blank(i, "ordinal_published")) continue;
      const Date d = *parseDate(dates.text(i, "date"));
      const int year = static_cast<int>(std::chrono::year_month_day{d}.year());
      QCOMPARE(static_cast<double>((d - date(year, 1, 1)).count() + 1), dates.number(i, "ordinal_published"));
      ++seen;
    }
    QVERIFY(seen >= 5);
  }
  void days_that_do_not_exist_are_refused() {
    for (const char* bad : {"1971-02-29", "1971-06-31", "1971-13-01", "1971-00-10", "71-06-01", "1971/06/01",
                            "1971-6-1", "", "1971-06-01 "})
      QVERIFY2(!parseDate(bad), bad);
    QVERIFY(parseDate("1972-02-29"));
    QVERIFY(!parseDate("1900-02-29"));
    QVERIFY(parseDate("2000-02-29"));
  }
  void spans_are_half_open() {
    const DateSpan span{date(1974, 2, 1), date(1975, 1, 1)};
    QVERIFY(span.holds(date(1974, 2, 1)));
    QVERIFY(span.holds(date(1974, 12, 31)));
    QVERIFY(!span.holds(date(1975, 1, 1)));
    QVERIFY(!span.holds(date(1974, 1, 31)));
    QVERIFY(DateSpan{}.holds(date(1900, 1, 1)));
    const ModelYearSpan years{ModelYear{1967}, ModelYear{1971}};
    QVERIFY(years.holds(ModelYear{1970}));
    QVERIFY(!years.holds(ModelYear{1971}));
  }
  void prints_for_a_person_and_for_a_file() {
    QCOMPARE(isoDate(date(1981, 8, 22)), std::string("1981-08-22"));
    QCOMPARE(plainDate(date(1981, 8, 22)), std::string("22 Aug 1981"));
    QCOMPARE(plainSpan({ModelYear{1967}, ModelYear{1971}}), std::string("1967–70"));
    QCOMPARE(plainSpan({ModelYear{1967}, ModelYear{1968}}), std::string("1967"));
    QCOMPARE(plainSpan({ModelYear{1998}, ModelYear{2002}}), std::string("1998–2001"));
  }
};

QTEST_APPLESS_MAIN(TestDate)
#include "tst_date.moc"
