#include <dating/model_year.h>
#include <QTest>

using namespace ohmkin;
using namespace ohmkin::dating;
using std::chrono::days;

class TestModelYear : public QObject {
  Q_OBJECT
 private slots:
  /// Common practice, no source: production of a model year begins in the summer before it and ends in its summer.
  void a_model_year_is_built_from_summer_to_summer() {
    const DateSpan made = usualProduction(ModelYear{1970});
    QVERIFY(made.holds(date(1969, 9, 1)));
    QVERIFY(made.holds(date(1970, 7, 31)));
    QVERIFY(!made.holds(date(1969, 6, 30)));
    QVERIFY(!made.holds(date(1970, 9, 1)));
  }
  void every_day_belongs_to_one_or_two_model_years() {
    for (Date day = date(1950, 1, 1); day < date(2001, 1, 1); day += days{1}) {
      int years = 0;
      for (int year = 1949; year <= 2002; ++year) years += usualProduction(ModelYear{year}).holds(day);
      QVERIFY(years == 1 || years == 2);
    }
  }
};

QTEST_APPLESS_MAIN(TestModelYear)
#include "tst_model_year.moc"
