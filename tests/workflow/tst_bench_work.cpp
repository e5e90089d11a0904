#include "demo_catalogue.h"

#include <catalog/bench_equipment.h>
#include <fmt/format.h>
#include <workflow/bench_work.h>
#include <workflow/import_readings.h>
#include <QTest>
#include <algorithm>
#include <cmath>

using namespace ohmkin;
using workflow::BenchQuestion;
using workflow::HandReading;

namespace {

HandReading inWater(double celsiusShown, Ohms shown) {
  HandReading hand;
  hand.bath.shown = celsius(celsiusShown);
  hand.bath.thermometer = "0.5 K";
  hand.shown = shown;
  hand.practice = {0.001, true, true, true};
  return hand;
}

bool says(const std::vector<Finding>& findings, const char* code) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

/// Readings of a part that lies by `factor` off the family's curve.
std::vector<HandReading> partOf(const bench::FamilyCurve& family, double factor, std::initializer_list<double> at) {
  std::vector<HandReading> all;
  for (const double t : at) all.push_back(inWater(t, factor * *family.curve.resistance(celsius(t))));
  return all;
}

}  // namespace

/// Readings as they are taken, and after each all that can be said so far. Families are the demo's, invented.
class TestBenchWork : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  int copies_ = 0;
  catalog::Catalogue fresh() {
    const auto file = demo_.beside(fmt::format("bench-{}.ohmkin", ++copies_).c_str());
    std::filesystem::copy_file(demo_.file(), file, std::filesystem::copy_options::overwrite_existing);
    return catalog::Catalogue::open(file, catalog::Access::readWrite);
  }

 private slots:
  void cautionsComeFirstAndAreNeverEmpty() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto answer = workflow::benchWork(catalogue, families, {});
    QVERIFY(answer);
    QVERIFY(says(answer->cautions, "local-codes-first"));
    QVERIFY(says(answer->cautions, "no-sealed-vessel"));
    QVERIFY(says(answer->cautions, "hot-water-and-steam"));
    QVERIFY(says(answer->cautions, "open-flame"));
    QVERIFY(!answer->whose && !answer->fit);
    QVERIFY(answer->next && answer->next->finding);  // where to begin
  }

  void limitsAreTakenAsRectangular() {
    // JCGM 100:2008, 4.3.7: limits ±a with nothing known between them have the standard uncertainty a/√3.
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    BenchQuestion question;
    question.meter = "±0.8 %";
    question.readings = {inWater(60, ohms(120))};
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->readings.size() == 1);
    QVERIFY(std::abs(answer->readings[0].uLnOhms - 0.008 / std::sqrt(3.0)) < 1e-6);
    const double thermometer = 0.5 / std::sqrt(3.0);
    QVERIFY(inKelvin(answer->readings[0].u) >= thermometer && inKelvin(answer->readings[0].u) < thermometer + 0.05);
  }

  void oneReadingIsEnoughToBegin() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto h = families.at(catalog::FamilyKey("H"));
    BenchQuestion question;
    question.meter = "0.8 %";
    question.readings = partOf(families.curves[*h], 1, {40});
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->whose && answer->noFit);
    QCOMPARE(answer->whose->suspects.front().family, *h);
    double sum = answer->whose->none;
    for (const auto& suspect : answer->whose->suspects) sum += suspect.probability;
    QVERIFY(std::abs(sum - 1) < 1e-9);
  }

  void theFitGrowsWithTheReadings() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    BenchQuestion question;
    question.meter = "0.8 %";
    question.readings = partOf(families.curves[*a], 1, {45, 60});
    QVERIFY(workflow::benchWork(catalogue, families, question)->noFit);
    question.readings = partOf(families.curves[*a], 1, {45, 55, 65, 75, 85, 95});
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->fit && !answer->noFit);
    for (const auto& residual : answer->fit->residuals) QVERIFY(std::abs(inKelvin(residual)) < 0.5);
  }

  void theQuestionOfTheBarometerIsAskedAndTheOtherLinesStand() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    BenchQuestion question;
    question.meter = "0.8 %";
    HandReading boil;
    boil.bath.kind = catalog::BathKind::boilingWater;
    boil.bath.barometer = kilopascals(101.3);
    boil.shown = ohms(60);
    question.readings = {inWater(60, ohms(120)), boil};
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer);
    QVERIFY(answer->lines[0].reading && !answer->lines[0].refused);
    QVERIFY(answer->lines[1].refused && answer->lines[1].refused->code == "barometer-reduced-question");
    QCOMPARE(answer->readings.size(), std::size_t{1});

    // 79.4952 kPa at 2000 m, 93.315 °C on the saturation line: tests/data/iso2533-atmosphere.csv.
    question.readings[1].bath.barometer.reset();
    question.readings[1].bath.altitude = millimetres(2'000'000);
    const auto high = workflow::benchWork(catalogue, families, question);
    QVERIFY(high && high->lines[1].reading);
    QVERIFY(std::abs(inCelsius(high->lines[1].reading->at) - 93.3) < 0.1);
    QVERIFY(inKelvin(high->next->best.at) <= inKelvin(celsius(93.4)));  // no open pot goes higher there
  }

  void overloadIsSaidAndNeverANumber() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    BenchQuestion question;
    HandReading over = inWater(20, ohms(1));
    over.shown.reset();
    question.readings = {over};
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer);
    QVERIFY(!answer->lines[0].reading && !answer->lines[0].refused && !answer->lines[0].findings.empty());
    QVERIFY(answer->readings.empty() && !answer->whose);
  }

  void aPartIsJudgedAgainstTheFamilyItClaims_data() {
    QTest::addColumn<double>("factor");
    QTest::addColumn<int>("conformance");
    QTest::newRow("on the curve") << 1.0 << static_cast<int>(bench::Conformance::pass);
    QTest::newRow("on the limit of 8 %") << 1.08 << static_cast<int>(bench::Conformance::undecided);
    QTest::newRow("30 % high") << 1.3 << static_cast<int>(bench::Conformance::fail);
  }
  void aPartIsJudgedAgainstTheFamilyItClaims() {
    QFETCH(double, factor);
    QFETCH(int, conformance);
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    BenchQuestion question;
    question.meter = "0.8 %";
    question.part = "BR-2215";
    question.readings = partOf(families.curves[*a], factor, {50, 70, 90});
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->good && answer->claimed == a && answer->againstClaim);
    QCOMPARE(static_cast<int>(answer->good->conformance), conformance);
    QCOMPARE(answer->good->tolerance, 0.08);
    QVERIFY(answer->good->risk.has_value());
  }

  void aToleranceNobodyStatesIsAssumedAndFlagged() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto d = families.at(catalog::FamilyKey("D"));
    BenchQuestion question;
    question.family = "Family D";
    question.readings = partOf(families.curves[*d], 1, {60});
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->good);
    QVERIFY(answer->good->toleranceAssumed);
    QCOMPARE(answer->good->tolerance, 0.10);
    QVERIFY(says(answer->good->findings, "tolerance-assumed"));
    question.tolerance = 0.05;
    QVERIFY(!workflow::benchWork(catalogue, families, question)->good->toleranceAssumed);
  }

  void aPartThatReadsAsAnotherFamilyIsWarnedOf() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto b = families.at(catalog::FamilyKey("B"));
    BenchQuestion question;
    question.meter = "0.8 %";
    question.part = "BR-2215";  // of family A by its number
    question.readings = partOf(families.curves[*b], 1, {50, 70, 90});
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer && answer->againstClaim);
    QVERIFY(answer->againstClaim->severity == Severity::warning);
    QCOMPARE(answer->whose->suspects.front().family, *b);
  }

  void keptReadingsAreACurveAndTheNextPartIsHeldAgainstIt() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    BenchQuestion question;
    question.meter = "0.3 %";
    question.part = "br-2216";
    question.lot = "3";
    question.readings = partOf(families.curves[*a], 1, {45, 55, 65, 75, 85, 95});
    const auto kept = workflow::keepBench(catalogue, families, question, "Ann");
    QVERIFY2(kept, kept ? "" : kept.error().sentence().c_str());
    QVERIFY(kept->curve.has_value());
    const auto curves = catalog::benchCurves(catalogue, catalog::SenderKey("BR-2216"));
    QCOMPARE(curves.size(), std::size_t{1});
    QCOMPARE(curves[0].lot, std::string("3"));
    // Limits of 0.3 % are 0.173 % standard (JCGM 100:2008, 4.3.7), the same in every reading: however many there are,
    // the curve is known no better.
    QVERIFY(curves[0].floor > 0.003 / std::sqrt(3.0));
    QVERIFY(workflow::provenance(catalogue, *kept->curve).find("Ann") != std::string::npos);
    const auto raw = catalog::readingsOf(catalogue, kept->run);
    QCOMPARE(raw.size(), std::size_t{6});
    QVERIFY(raw[0].u > 0 && raw[0].uLnOhms > 0);

    question.readings = partOf(families.curves[*a], 1.06, {60, 80, 90});
    const auto later = workflow::benchWork(catalogue, families, question);
    QVERIFY(later);
    QCOMPARE(later->drift.size(), std::size_t{1});
    QVERIFY(std::abs(later->drift[0].drift.ratio - 0.06) < 0.005);
    QVERIFY(later->drift[0].drift.significant);
    // A second curve of the same lot stands beside the first.
    question.readings = partOf(families.curves[*a], 1.06, {45, 55, 65, 75, 85, 95});
    QVERIFY(workflow::keepBench(catalogue, families, question, "Bert")->curve.has_value());
    QCOMPARE(catalog::benchCurves(catalogue, catalog::SenderKey("BR-2216"), "3").size(), std::size_t{2});
  }

  void anUnknownPartKeepsItsReadingsWithoutACurve() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto a = families.at(catalog::FamilyKey("A"));
    BenchQuestion question;
    question.part = "NO-SUCH-1";
    question.readings = partOf(families.curves[*a], 1, {45, 55, 65, 75, 85, 95});
    QVERIFY(says(workflow::benchWork(catalogue, families, question)->findings, "part-unknown"));
    const auto kept = workflow::keepBench(catalogue, families, question, "Ann");
    QVERIFY(kept && !kept->curve);
    QCOMPARE(catalog::runs(catalogue).front().said.part, std::string("NO-SUCH-1"));
    const auto nothing = workflow::keepBench(catalogue, families, {}, "Ann");
    QVERIFY(!nothing && nothing.error().code == "bench-nothing-to-keep");
  }

  void theShopsOwnMeterIsUsedByName() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    catalog::MeterRecord record;
    record.name = catalog::MeterKey("Blue one");
    record.leads = ohms(0.3);
    record.leadsStandardUncertainty = ohms(0.05);
    record.ranges = {{ohms(400), ohms(0.1), 0.005, 2, 1.0}};
    QVERIFY(catalog::keepMeter(catalogue, record, "Ann"));
    BenchQuestion question;
    question.meter = "blue one";
    question.readings = {inWater(60, ohms(120.3)), inWater(20, ohms(2000))};
    const auto answer = workflow::benchWork(catalogue, families, question);
    QVERIFY(answer);
    QVERIFY(std::abs(inOhms(answer->readings.at(0).ohms) - 120) < 1e-9);
    QVERIFY(answer->lines[1].refused);  // above its only range
    question.meter = "blew one";
    const auto unknown = workflow::benchWork(catalogue, families, question);
    QVERIFY(!unknown && unknown.error().code == "meter-unknown");
    QVERIFY(unknown.error().expected.find("Blue one") != std::string::npos);
  }

  void coldOhmsAtTheCounterLeaveSomeFamilies() {
    auto catalogue = fresh();
    const auto families = workflow::benchFamilies(catalogue);
    const auto h = families.at(catalog::FamilyKey("H"));
    const Ohms cold = *families.curves[*h].curve.resistance(celsius(22));
    const auto check = workflow::quickCheck(catalogue, families, "digital", celsius(22), cold);
    QVERIFY(check);
    QVERIFY(std::find(check->remain.begin(), check->remain.end(), *h) != check->remain.end());
    QVERIFY(!check->excluded.empty());
    QCOMPARE(check->remain.size() + check->excluded.size() + check->silent.size(), families.curves.size());
  }
};

QTEST_APPLESS_MAIN(TestBenchWork)
#include "tst_bench_work.moc"
