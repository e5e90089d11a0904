#include "invented_families.h"
#include "reference_table.h"

#include <bench/acceptance.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include "said.h"

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

const FamilyCurve kFamily = bench::test::family("A", 100, 20, 3500, 0, 0.10);

/// A reading at 20 °C whose deviation is `deviation` with the standard uncertainty `u`, both of the family's ohms.
Reading off(double deviation, double u) {
  return {celsius(20), kelvins(0), ohms(100 * (1 + deviation)), u / (1 + deviation), {}};
}

Acceptance judgedOff(double deviation, double u, const AcceptanceRule& rule = {}) {
  return *judge(kFamily, std::vector{off(deviation, u)}, rule);
}

}  // namespace

/// Numbers and their provenance: tests/data/guarded-acceptance.csv (published second-hand, or from memory, as marked).
class TestAcceptance : public QObject {
  Q_OBJECT
  const ohmkin::test::ReferenceTable table_{"guarded-acceptance.csv"};

  std::size_t rowOf(const std::string& kind, const std::string& part) const {
    for (std::size_t i = 0; i < table_.size(); ++i)
      if (table_.text(i, "kind") == kind && table_.text(i, "case").find(part) != std::string::npos) return i;
    throw std::runtime_error("no row " + kind + " " + part);
  }

 private slots:
  void probability_of_conformity_meets_the_zener_example() {
    // From memory of JCGM 106: 0.07 inside a limit with u = 0.05 conforms with 0.92. The same 1.4 u inside ±10 %.
    const double published = table_.number(rowOf("jcgm106_zener", "p_c"), "published");
    const auto answer = judgedOff(0.10 - 1.4 * 0.01, 0.01);
    QVERIFY(std::abs(answer.readings[0].conforming - published) < 0.005);
    QVERIFY(std::abs(answer.readings[0].conforming - 0.919243) < 1e-6);
    QCOMPARE(answer.conformance, Conformance::undecided);
  }

  void at_the_acceptance_limit_the_risk_is_that_of_the_guard_band() {
    // w = U = 2u: 0.977 (from memory of JCGM 106), Φ(2) = 0.977250.
    const auto passes = judgedOff(0.0799999, 0.01);
    QCOMPARE(passes.conformance, Conformance::pass);
    QVERIFY(std::abs(1 - passes.wrong - table_.number(rowOf("guard_w_equals_U", "p_c"), "computed")) < 1e-5);
    QCOMPARE(judgedOff(0.0801, 0.01).conformance, Conformance::undecided);
    QCOMPARE(judgedOff(0.1199, 0.01).conformance, Conformance::undecided);
    const auto fails = judgedOff(0.1200001, 0.01);
    QCOMPARE(fails.conformance, Conformance::fail);
    QVERIFY(std::abs(fails.wrong - 0.022750) < 1e-5);
    QCOMPARE(judgedOff(-0.1201, 0.01).conformance, Conformance::fail);
    QCOMPARE(judgedOff(-0.0799, 0.01).conformance, Conformance::pass);
  }

  void guard_multipliers_give_their_published_risk() {
    for (const auto& [row, risk] : {std::pair{"risk 5 %", 0.05}, std::pair{"risk 1 %", 0.01}}) {
      AcceptanceRule rule;
      rule.guard = table_.number(rowOf("guard_multiplier_k", row), "published");
      const auto answer = judgedOff(0.10 - rule.guard * 0.01 - 1e-9, 0.01, rule);
      QCOMPARE(answer.conformance, Conformance::pass);
      QVERIFY2(std::abs(answer.wrong - risk) < 0.0006, qPrintable(QString::number(answer.wrong)));
    }
  }

  void risks_of_the_rule_meet_deavers_values_data() {
    QTest::addColumn<double>("limit");
    QTest::addColumn<double>("ratio");
    QTest::addColumn<double>("guard");
    QTest::addColumn<QString>("row");
    QTest::addColumn<bool>("consumer");
    QTest::newRow("TUR 4, no guard") << 2.0 << 4.0 << 1.0 << "+-2 sd; TUR=4; guard factor 1 -> false accept" << true;
    QTest::newRow("TUR 4, wide limits") << 2.5 << 4.0 << 1.0 << "+-2.5 sd; TUR=4; guard factor 1 -> false accept"
                                        << true;
    QTest::newRow("TUR 2 guarded, accept") << 2.0 << 2.0 << 0.91 << "TUR=2; guard factor 0.91 -> false accept" << true;
    QTest::newRow("TUR 2 guarded, reject") << 2.0 << 2.0 << 0.91 << "TUR=2; guard factor 0.91 -> false reject" << false;
  }
  void risks_of_the_rule_meet_deavers_values() {
    QFETCH(double, limit);
    QFETCH(double, ratio);
    QFETCH(double, guard);
    QFETCH(QString, row);
    QFETCH(bool, consumer);
    const std::size_t at = rowOf("deaver_global_risk", row.toStdString());
    const auto risk = decisionRisk(1, 1 / ratio, limit, guard * limit);
    const double got = consumer ? risk->consumer : risk->producer;
    QVERIFY2(std::abs(got - table_.number(at, "computed")) < 1e-6, qPrintable(QString::number(got, 'g', 9)));
    QVERIFY(std::abs(got - table_.number(at, "published")) < 0.000501);
  }

  void a_sharp_meter_takes_no_risk_and_a_wide_guard_gives_none_to_the_buyer() {
    const auto sharp = decisionRisk(1, 1e-6, 2, 2);
    QVERIFY(sharp->consumer < 1e-6 && sharp->producer < 1e-6);
    const auto none = decisionRisk(1, 0.3, 2, 0);
    QVERIFY(none->consumer < 1e-12);
    QVERIFY(std::abs(none->producer - 0.954500) < 1e-6);  // every good part: Φ(2) − Φ(−2)
  }

  void more_guard_never_makes_a_pass_or_a_fail_of_an_undecided_part() {
    rc::check("guard only moves towards undecided", [] {
      const double deviation = *rc::gen::inRange(-300, 301) * 1e-3;
      const double u = *rc::gen::inRange(1, 80) * 1e-3;
      AcceptanceRule narrow, wide;
      narrow.guard = *rc::gen::inRange(0, 30) * 0.1;
      wide.guard = narrow.guard + *rc::gen::inRange(0, 30) * 0.1;
      const auto before = judgedOff(deviation, u, narrow).conformance;
      const auto after = judgedOff(deviation, u, wide).conformance;
      RC_ASSERT(after == before || after == Conformance::undecided);
    });
  }

  void one_bad_reading_fails_the_part_and_one_doubtful_one_leaves_it_undecided() {
    const auto whole = [](std::vector<Reading> readings) { return judge(kFamily, readings)->conformance; };
    QCOMPARE(whole({off(0, 0.01), off(0.02, 0.01)}), Conformance::pass);
    QCOMPARE(whole({off(0, 0.01), off(0.09, 0.01)}), Conformance::undecided);
    QCOMPARE(whole({off(0.2, 0.01), off(0.09, 0.01), off(0, 0.01)}), Conformance::fail);
  }

  void the_bath_counts_through_the_slope() {
    // B = 3500 at 20 °C: 4.07 % a kelvin, so 1 K is u = 4.07 %.
    const auto answer = judge(kFamily, std::vector<Reading>{{celsius(20), kelvins(1), ohms(100), 0, {}}});
    QVERIFY(std::abs(answer->readings[0].u - 3500 / (293.15 * 293.15)) < 1e-9);
  }

  void what_is_assumed_unreached_or_too_coarse_is_said() {
    FamilyCurve plain = kFamily;
    plain.tolerance.reset();
    const auto assumed = judge(plain, std::vector{off(0.02, 0.01)});
    QVERIFY(assumed->toleranceAssumed && assumed->tolerance == 0.10);
    QVERIFY(said::has(assumed->findings, "tolerance-assumed"));
    QVERIFY(said::has(assumed->findings, "decision-risk"));
    QVERIFY(said::has(judgedOff(0, 0.06).findings, "measurement-too-coarse"));
    const Reading away{celsius(200), kelvins(1), ohms(3), 0.01, {}};
    const auto silent = judge(kFamily, std::vector{away});
    QCOMPARE(silent->conformance, Conformance::notComparable);
    QCOMPARE(QString::fromStdString(silent->findings.front().code), QString("part-not-comparable"));
    QVERIFY(said::has(judge(kFamily, std::vector{away, off(0, 0.01)})->findings, "curve-not-reaching"));
    FamilyCurve longer = kFamily;
    longer.curve = *longer.curve.extendedTo({celsius(-20), celsius(150)});
    const double hot = longer.curve.lnOhms(inKelvin(celsius(140)));
    QVERIFY(said::has(
        judge(longer, std::vector<Reading>{{celsius(140), kelvins(0), ohms(std::exp(hot)), 0.01, {}}})->findings,
        "curve-extrapolated"));
  }

  void drift_is_the_ratio_to_the_earlier_curve() {
    std::vector<Reading> now;
    for (double t : {20.0, 60.0, 95.0}) now.push_back(bench::test::readingOf(kFamily, t, std::log(1.08), 0, 0.005));
    const auto drifted = drift(kFamily.curve, now);
    QVERIFY(std::abs(drifted->ratio - 0.08) < 1e-9);
    QVERIFY(drifted->significant && drifted->uniform);
    // More ohms of a falling sender read cold: ln 1.08 / (3500 / 368.15²) = 2.98 K less.
    QVERIFY(std::abs(inKelvin(drifted->shows) + 2.980) < 0.005);
    QCOMPARE(drifted->findings.front().severity, Severity::warning);
    std::vector<Reading> same;
    for (double t : {20.0, 60.0, 95.0}) same.push_back(bench::test::readingOf(kFamily, t, 0.002, 0, 0.005));
    QVERIFY(!drift(kFamily.curve, same)->significant);
  }

  // One meter, 1 % standard, in baths known exactly: its error is in every reading alike, and forty of them say no more
  // of it than one. The baths' own errors do average out.
  void more_readings_with_the_same_meter_do_not_average_its_error_away() {
    std::vector<Reading> few{bench::test::readingOf(kFamily, 20, 0.015, 0, 0.01)};
    std::vector<Reading> many;
    std::vector<Reading> baths;  // each known to 0.3 K, as readingOf has it
    for (int i = 0; i < 40; ++i) {
      many.push_back(bench::test::readingOf(kFamily, 20 + 1.5 * i, 0.015, 0, 0.01));
      baths.push_back(bench::test::readingOf(kFamily, 20, 0.015, 0, 0));
    }
    few.front().u = kelvins(0);
    for (Reading& reading : many) reading.u = kelvins(0);
    QVERIFY(std::abs(drift(kFamily.curve, many)->u / drift(kFamily.curve, few)->u - 1) < 1e-9);
    QVERIFY(!drift(kFamily.curve, many)->significant);
    // 0.3 K is 3500/293.15² · 0.3 = 1.222 % of ohms a reading, over √40, beside the least 0.01 % of any meter
    QVERIFY(std::abs(drift(kFamily.curve, baths)->u / std::exp(0.015) - 0.01222 / std::sqrt(40.0)) < 2e-5);
  }

  void a_bend_is_not_called_a_scale() {
    const std::vector bent{bench::test::readingOf(kFamily, 20, 0.10, 0, 0.005),
                           bench::test::readingOf(kFamily, 95, -0.10, 0, 0.005)};
    const auto result = drift(kFamily.curve, bent);
    QVERIFY(!result->uniform);
    QVERIFY(said::has(result->findings, "drift-uneven"));
  }

  void wrong_questions_are_refused() {
    const auto code = [](const auto& r) { return QString::fromStdString(r ? "answered" : r.error().code); };
    QCOMPARE(code(judge(kFamily, {})), QString("no-readings"));
    AcceptanceRule rule;
    rule.guard = -1;
    QCOMPARE(code(judge(kFamily, std::vector{off(0, 0.01)}, rule)), QString("rule-out-of-range"));
    QCOMPARE(code(decisionRisk(0, 1, 1, 1)), QString("risk-out-of-range"));
    const Reading away{celsius(200), kelvins(1), ohms(3), 0.01, {}};
    QCOMPARE(code(drift(kFamily.curve, std::vector{away})), QString("drift-not-comparable"));
  }
};

QTEST_APPLESS_MAIN(TestAcceptance)
#include "tst_acceptance.moc"
