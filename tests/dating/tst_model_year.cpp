#include <dating/model_year.h>
#include <QTest>
#include <cmath>

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
    QCOMPARE(modelYearsBuiltOn(date(1970, 1, 15)), (std::vector{ModelYear{1970}}));
    QCOMPARE(modelYearsBuiltOn(date(1970, 8, 14)), (std::vector{ModelYear{1970}, ModelYear{1971}}));
    QCOMPARE(modelYearsBuiltOn(date(1970, 10, 1)), (std::vector{ModelYear{1971}}));
  }
  void every_day_belongs_to_one_or_two_model_years() {
    for (Date day = date(1950, 1, 1); day < date(2001, 1, 1); day += days{1}) {
      const auto years = modelYearsBuiltOn(day);
      QVERIFY(years.size() == 1 || years.size() == 2);
      for (const ModelYear year : years) QVERIFY(usualProduction(year).holds(day));
      QVERIFY(!usualProduction(ModelYear{years.front().value - 1}).holds(day));
      QVERIFY(!usualProduction(ModelYear{years.back().value + 1}).holds(day));
    }
  }

  void the_build_date_decides_a_mid_year_change() {
    const std::vector<DateSpan> variants{{{}, date(1974, 2, 1)}, {date(1974, 2, 1), {}}};
    const DateSpan made = usualProduction(ModelYear{1974});
    QCOMPARE(changeover(variants[0], variants[1]), std::optional(date(1974, 2, 1)));
    const auto before = variantsOf(variants, made, date(1974, 1, 31));
    QCOMPARE(before.size(), std::size_t(1));
    QCOMPARE(before[0].variant, std::size_t(0));
    QCOMPARE(before[0].probability, 1.0);
    const auto after = variantsOf(variants, made, date(1974, 2, 1));
    QCOMPARE(after[0].variant, std::size_t(1));
  }
  void without_a_build_date_each_variant_has_its_share_of_the_days() {
    const std::vector<DateSpan> variants{{{}, date(1974, 2, 1)}, {date(1974, 2, 1), {}}, {date(1980, 1, 1), {}}};
    const auto shares = variantsOf(variants, {date(1973, 7, 1), date(1974, 9, 1)});
    QCOMPARE(shares.size(), std::size_t(2));  // the third was never built that year
    // Counted by hand: July to January 215 days, February to August 212 days.
    QVERIFY(std::abs(shares[0].probability - 215.0 / 427) < 1e-15);
    QVERIFY(std::abs(shares[1].probability - 212.0 / 427) < 1e-15);
  }
  void a_leap_day_counts() {
    const std::vector<DateSpan> variants{{date(1972, 2, 1), date(1972, 3, 1)}, {date(1972, 3, 1), date(1972, 3, 30)}};
    for (const VariantShare& share : variantsOf(variants, usualProduction(ModelYear{1972})))
      QCOMPARE(share.probability, 0.5);  // 29 days each
    QCOMPARE(variantsOf(variants, usualProduction(ModelYear{1972}), date(1972, 2, 29)).front().variant, std::size_t(0));
  }
  void gaps_and_overlaps_are_told_with_their_days() {
    const DateSpan made{date(1973, 7, 1), date(1974, 9, 1)};
    QVERIFY(coverage(std::vector<DateSpan>{{{}, date(1974, 2, 1)}, {date(1974, 2, 1), {}}}, made).empty());
    const auto gap = coverage(std::vector<DateSpan>{{{}, date(1974, 1, 31)}, {date(1974, 2, 1), {}}}, made);
    QCOMPARE(gap.size(), std::size_t(1));
    QCOMPARE(QString::fromStdString(gap[0].code), QString("model-year-gap"));
    QCOMPARE(QString::fromStdString(gap[0].sentence), QString("Nothing is recorded for vehicles built 31 Jan 1974."));
    const auto overlap = coverage(std::vector<DateSpan>{{date(1974, 2, 1), {}}, {{}, date(1974, 2, 3)}}, made);
    QCOMPARE(overlap.size(), std::size_t(1));
    QCOMPARE(QString::fromStdString(overlap[0].sentence),
             QString("Two variants claim vehicles built 1 Feb 1974 to 2 Feb 1974."));
    QVERIFY(variantsOf(std::vector<DateSpan>{{{}, date(1974, 1, 31)}, {date(1974, 2, 1), {}}}, made, date(1974, 1, 31))
                .empty());
    QCOMPARE(coverage({}, made).size(), std::size_t(1));
    QVERIFY(!changeover({{}, date(1974, 1, 31)}, {date(1974, 2, 1), {}}));
  }
};

QTEST_APPLESS_MAIN(TestModelYear)
#include "tst_model_year.moc"
