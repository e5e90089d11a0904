#include "invented_families.h"
#include "reference_table.h"

#include <bench/identify.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

/// Families, readings and results by numerical integration: tests/bench/identify_reference.py, an independent way.
std::vector<FamilyCurve> referenceFamilies(const ohmkin::test::ReferenceTable& table) {
  std::vector<FamilyCurve> families;
  for (std::size_t i = 0; i < table.size(); ++i)
    if (table.text(i, "kind") == "family")
      families.push_back(bench::test::family(
          "family " + table.text(i, "item"), table.number(i, "x1"), table.number(i, "x2"), table.number(i, "x3"),
          table.number(i, "x4"), table.blank(i, "x5") ? std::optional<double>{} : std::optional(table.number(i, "x5")),
          {celsius(table.number(i, "x6")), celsius(table.number(i, "x7"))}, table.number(i, "x8")));
  return families;
}

std::vector<Reading> referenceReadings(const ohmkin::test::ReferenceTable& table, const std::string& which) {
  std::vector<Reading> readings;
  for (std::size_t i = 0; i < table.size(); ++i)
    if (table.text(i, "kind") == "reading" && table.text(i, "case") == which)
      readings.push_back({celsius(table.number(i, "x1")),
                          kelvins(table.number(i, "x2")),
                          ohms(table.number(i, "x3")),
                          table.number(i, "x4"),
                          {}});
  return readings;
}

double probabilityOf(const Identification& answer, std::size_t family) {
  return std::ranges::find(answer.suspects, family, &Suspect::family)->probability;
}

rc::Gen<Reading> anyReading() {
  return rc::gen::apply(
      [](int t, int lnOhms, int uLn, int u) {
        return Reading{celsius(t), kelvins(u * 0.1), ohms(std::exp(lnOhms * 0.01)), uLn * 1e-3, {}};
      },
      rc::gen::inRange(-40, 150), rc::gen::inRange(200, 900), rc::gen::inRange(0, 50), rc::gen::inRange(0, 30));
}

}  // namespace

class TestIdentify : public QObject {
  Q_OBJECT
 private slots:
  void posterior_agrees_with_numerical_integration_data() {
    QTest::addColumn<QString>("which");
    for (int i = 0; i < 8; ++i) QTest::addRow("case %d", i) << QString::number(i);
  }
  void posterior_agrees_with_numerical_integration() {
    QFETCH(QString, which);
    const ohmkin::test::ReferenceTable table("identify-posterior.csv");
    const auto families = referenceFamilies(table);
    QCOMPARE(families.size(), std::size_t{6});
    const auto answer = identify(families, referenceReadings(table, which.toStdString()));
    QVERIFY(answer.has_value());
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "kind") != "posterior" || table.text(i, "case") != which.toStdString()) continue;
      const auto item = static_cast<std::size_t>(table.number(i, "item"));
      const bool none = item == families.size();
      const double probability = none ? answer->none : probabilityOf(*answer, item);
      const double evidence =
          none ? answer->noneLnEvidence : std::ranges::find(answer->suspects, item, &Suspect::family)->lnEvidence;
      QVERIFY2(std::abs(probability - table.number(i, "x1")) < 1e-7,
               qPrintable(QString("family %1: %2").arg(item).arg(probability, 0, 'g', 12)));
      if (table.number(i, "x2") > -60)
        QVERIFY2(std::abs(evidence - table.number(i, "x2")) < 1e-6,
                 qPrintable(QString("family %1: ln evidence %2").arg(item).arg(evidence, 0, 'g', 12)));
      ++seen;
    }
    QCOMPARE(seen, 7);
  }

  void the_worth_of_a_further_reading_agrees_with_adaptive_quadrature() {
    const ohmkin::test::ReferenceTable table("identify-posterior.csv");
    const auto families = referenceFamilies(table);
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.text(i, "kind") != "next") continue;
      const Temperature at = celsius(table.number(i, "item"));
      NextOptions options;
      options.within = {at, at};
      const auto next = nextReading(families, referenceReadings(table, table.text(i, "case")), options);
      QVERIFY(next.has_value());
      QVERIFY2(std::abs(next->best.bits - table.number(i, "x1")) < 0.01, qPrintable(QString::number(next->best.bits)));
      QVERIFY2(std::abs(next->best.certainty - table.number(i, "x2")) < 0.01,
               qPrintable(QString::number(next->best.certainty)));
      ++seen;
    }
    QCOMPARE(seen, 20);
  }

  void probabilities_sum_to_one_whatever_was_read() {
    rc::check("posterior sums to 1", [] {
      const auto readings = *rc::gen::nonEmpty(rc::gen::container<std::vector<Reading>>(anyReading()));
      const auto answer = identify(bench::test::threeFamilies(), readings);
      RC_ASSERT(answer.has_value());
      double sum = answer->none;
      for (const Suspect& s : answer->suspects) {
        RC_ASSERT(s.probability >= 0 && std::isfinite(s.lnEvidence));
        sum += s.probability;
      }
      RC_ASSERT(std::abs(sum - 1) < 1e-12);
      RC_ASSERT(std::ranges::is_sorted(answer->suspects, std::ranges::greater{}, &Suspect::probability));
    });
  }

  void the_order_of_the_readings_does_not_matter() {
    rc::check("permuted readings give the same posterior", [] {
      auto readings = *rc::gen::nonEmpty(rc::gen::container<std::vector<Reading>>(anyReading()));
      const auto families = bench::test::threeFamilies();
      const auto before = identify(families, readings);
      std::ranges::shuffle(readings, std::mt19937(*rc::gen::arbitrary<unsigned>()));
      const auto after = identify(families, readings);
      for (std::size_t f = 0; f < families.size(); ++f)
        RC_ASSERT(std::abs(probabilityOf(*before, f) - probabilityOf(*after, f)) < 1e-9);
    });
  }

  void a_part_is_known_better_the_more_is_read_of_it() {
    // Parts drawn from the model itself: the expected posterior of the true family never falls with a further reading
    // (the mean of p(f | data) over data of f is at least p(f), by Jensen's inequality), here over 4,000 parts.
    const auto families = bench::test::threeFamilies();
    const IdentifyModel model;
    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    const std::array<double, 4> baths{20, 95, 60, 5};
    for (std::size_t truth = 0; truth < families.size(); ++truth) {
      std::array<double, 5> mean{};
      for (int part = 0; part < 4000; ++part) {
        const double spread = std::log1p(families[truth].tolerance.value_or(model.assumedTolerance)) / std::sqrt(3.0);
        const double scale = std::sqrt(model.commonShare) * spread * normal(random);
        const double knowledge = families[truth].curve.floor();
        const double common = knowledge * std::sqrt(0.5) * normal(random);
        std::vector<Reading> readings;
        for (std::size_t n = 0; n < baths.size(); ++n) {
          const double slope = families[truth].curve.lnOhmsSlope(inKelvin(celsius(baths[n])));
          const double own = std::sqrt((1 - model.commonShare) * spread * spread + 0.5 * knowledge * knowledge +
                                       0.01 * 0.01 + slope * slope * 0.09) *
                             normal(random);
          readings.push_back(bench::test::readingOf(families[truth], baths[n], scale + common, own, 0.01));
          mean[n + 1] += probabilityOf(*identify(families, readings, model), truth) / 4000;
        }
      }
      mean[0] = 0.95 / 3;
      for (std::size_t n = 0; n + 1 < mean.size(); ++n)
        QVERIFY2(mean[n + 1] > mean[n] - 0.005,
                 qPrintable(QString("%1 after %2 readings").arg(mean[n + 1]).arg(n + 1)));
      QVERIFY(mean[4] > 0.95);
    }
  }

  void a_further_reading_is_expected_to_tell_something_and_no_more_than_is_open() {
    rc::check("0 <= bits <= entropy, and certainty does not fall", [] {
      const auto readings = *rc::gen::container<std::vector<Reading>>(2, anyReading());
      const auto families = bench::test::threeFamilies();
      const auto answer = identify(families, readings);
      double entropy = answer->none > 0 ? -answer->none * std::log2(answer->none) : 0;
      for (const Suspect& s : answer->suspects)
        if (s.probability > 0) entropy -= s.probability * std::log2(s.probability);
      const auto next = nextReading(families, readings);
      RC_ASSERT(next.has_value());
      for (const Separation& s : next->tried) {
        RC_ASSERT(s.bits >= 0 && s.bits <= entropy + 0.01);
        RC_ASSERT(s.certainty >= next->certaintyNow - 0.01 && s.certainty <= 1);
        RC_ASSERT(s.bits <= next->best.bits);
      }
    });
  }

  void curves_that_cross_are_told_apart_away_from_where_they_cross() {
    // Same ohms at 60 °C, other slopes: that bath tells least.
    const std::vector families{bench::test::family("steep", 300, 60, 3900, 0.005, 0.05),
                               bench::test::family("shallow", 300, 60, 3000, 0.005, 0.05)};
    const auto next = nextReading(families, {});
    QVERIFY(next.has_value());
    const auto least = std::ranges::min_element(next->tried, {}, &Separation::bits);
    QCOMPARE(inCelsius(least->at), 60.0);
    QVERIFY(std::abs(inCelsius(next->best.at) - 60) >= 35);
    QCOMPARE(QString::fromStdString(next->finding->code), QString("next-reading"));
  }

  void forty_readings_do_not_average_away_what_is_the_part_s_own() {
    // The same curve read every 2.5 K and every 20 K: for telling two near ones apart, both are some six baths.
    const std::vector families{bench::test::family("X", 300, 60, 3500, 0.005, 0.1),
                               bench::test::family("Y", 300, 60, 3400, 0.005, 0.1)};
    const auto favour = [&](double step) {
      std::vector<Reading> readings;
      for (double t = 0; t <= 100; t += step) readings.push_back(bench::test::readingOf(families[0], t, 0, 0, 0.001));
      const auto answer = identify(families, readings);
      return std::log(probabilityOf(*answer, 0) / probabilityOf(*answer, 1));
    };
    QVERIFY2(std::abs(favour(2.5) / favour(20) - 1) < 0.35, qPrintable(QString::number(favour(2.5) / favour(20))));
    QVERIFY(favour(2.5) > 0);
  }

  void one_scale_along_the_whole_curve_is_the_part_and_not_another_family() {
    const auto families = bench::test::threeFamilies();
    std::vector<Reading> readings;
    for (double t : {10.0, 50.0, 90.0}) readings.push_back(bench::test::readingOf(families[0], t, 0.06, 0, 0.005));
    const auto answer = identify(families, readings);
    QCOMPARE(answer->suspects.front().family, std::size_t{0});
    QVERIFY(answer->suspects.front().probability > 0.95);
    QVERIFY(std::abs(answer->suspects.front().partScale - 0.06) < 0.02);
    QCOMPARE(QString::fromStdString(answer->findings.front().code), QString("curve-identified"));
  }

  void a_sender_of_no_family_is_said_to_be_none_of_these() {
    const auto answer =
        identify(bench::test::threeFamilies(), std::vector<Reading>{{celsius(20), kelvins(0.5), ohms(9000), 0.01, {}},
                                                                    {celsius(90), kelvins(0.5), ohms(4000), 0.01, {}}});
    QVERIFY(answer->none > 0.99);
    QCOMPARE(QString::fromStdString(answer->findings.front().code), QString("curve-none"));
  }

  void a_part_number_is_not_a_curve() {
    const auto families = bench::test::threeFamilies();
    std::vector<Reading> readings{bench::test::readingOf(families[0], 21, 0, 0, 0.01)};
    const auto codeOf = [&](std::size_t claimed) {
      const auto finding = againstClaim(*identify(families, readings), families, claimed);
      return QString::fromStdString(finding ? finding->code : finding.error().code);
    };
    QCOMPARE(codeOf(0), QString("claim-agrees"));
    QCOMPARE(codeOf(1), QString("claim-open"));  // A and B are alike cold
    QCOMPARE(codeOf(2), QString("claim-disagrees"));
    QCOMPARE(codeOf(3), QString("claim-unknown"));
    readings.push_back(bench::test::readingOf(families[0], 95, 0, 0, 0.01));
    QCOMPARE(codeOf(1), QString("claim-disagrees"));
    const auto warning = againstClaim(*identify(families, readings), families, 1);
    QCOMPARE(warning->severity, Severity::warning);
    QVERIFY(warning->sentence.find("reads as A") != std::string::npos);
  }

  void a_curve_that_does_not_reach_the_bath_neither_gains_nor_loses() {
    auto families = bench::test::threeFamilies();
    families.push_back(bench::test::family("hot only", 51, 95, 3600, 0.02, 0.1, {celsius(60), celsius(120)}));
    const auto answer = identify(families, std::vector<Reading>{{celsius(20), kelvins(0.5), ohms(1400), 0.01, {}}});
    // As much beside "none of these" as before: (0.95/4) / 0.05.
    QVERIFY(std::abs(probabilityOf(*answer, 3) / answer->none - 0.95 / 4 / 0.05) < 1e-9);
    QVERIFY(std::ranges::any_of(answer->findings, [](const Finding& f) { return f.code == "curve-not-reaching"; }));
  }

  void an_assumed_tolerance_is_flagged() {
    const auto families = bench::test::threeFamilies();
    const auto answer = identify(families, std::vector{bench::test::readingOf(families[2], 20, 0, 0, 0.01)});
    QVERIFY(std::ranges::any_of(answer->findings, [](const Finding& f) { return f.code == "tolerance-assumed"; }));
  }

  void cold_ohms_exclude_what_lies_beyond_tolerance_and_doubt() {
    const auto families = bench::test::threeFamilies();
    const Reading room{celsius(21), kelvins(2), ohms(1300), 0.01, {}};
    const auto answer = quickCheck(families, room);
    QVERIFY(answer.has_value());
    // By hand: A is 1322 Ω at 21 °C, B 1193 Ω, C 386 Ω; allowed ln 1.1 + 2·√(0.01² + (2·0.04)² + 0.01²) = 0.26.
    QCOMPARE(answer->remain, (std::vector<std::size_t>{0, 1}));
    QCOMPARE(answer->excluded, (std::vector<std::size_t>{2}));
    const auto outside = quickCheck(families, {celsius(200), kelvins(2), ohms(1300), 0.01, {}});
    QCOMPARE(outside->silent.size(), std::size_t{3});
  }

  void wrong_questions_are_refused_in_words() {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto families = bench::test::threeFamilies();
    const Reading good{celsius(20), kelvins(1), ohms(100), 0.01, {}};
    const auto code = [](const auto& result) {
      return QString::fromStdString(result ? "answered" : result.error().code);
    };
    QCOMPARE(code(identify({}, std::vector{good})), QString("no-families"));
    QCOMPARE(code(identify(families, {})), QString("no-readings"));
    for (const double r : {0.0, -1.0, nan}) {
      Reading bad = good;
      bad.ohms = ohms(r);
      QCOMPARE(code(identify(families, std::vector{bad})), QString("reading-ohms"));
      QCOMPARE(code(quickCheck(families, bad)), QString("reading-ohms"));
    }
    Reading bad = good;
    bad.at = kelvin(nan);
    QCOMPARE(code(nextReading(families, std::vector{bad})), QString("reading-temperature"));
    bad = good;
    bad.uLnOhms = -0.1;
    QCOMPARE(code(identify(families, std::vector{bad})), QString("reading-uncertainty"));
    auto odd = families;
    odd[1].tolerance = 1.5;
    QCOMPARE(code(identify(odd, std::vector{good})), QString("tolerance-out-of-range"));
    odd[1].tolerance = 0.1;
    odd[1].weight = 0;
    QCOMPARE(code(identify(odd, std::vector{good})), QString("weight-out-of-range"));
    IdentifyModel model;
    model.commonShare = 1.2;
    QCOMPARE(code(identify(families, std::vector{good}, model)), QString("model-out-of-range"));
    NextOptions options;
    options.step = kelvins(0.1);
    QCOMPARE(code(nextReading(families, {}, options)), QString("next-reading-options"));
  }
};

QTEST_APPLESS_MAIN(TestIdentify)
#include "tst_identify.moc"
