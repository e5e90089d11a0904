#include <pairing/draw_block.h>
#include <pairing/monte_carlo.h>
#include <QTest>
#include <cmath>
#include "invented_pairs.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

PairOptions rowsOnly(std::size_t rows) {
  PairOptions options;
  options.rows = rows;
  return options;
}

bool same(const Sampled& a, const Sampled& b) {
  for (std::size_t i = 0; i < a.rows.size(); ++i)
    if (a.rows[i].mean != b.rows[i].mean || a.rows[i].standard != b.rows[i].standard ||
        a.rows[i].low95 != b.rows[i].low95 || a.rows[i].high95 != b.rows[i].high95)
      return false;
  return a.rows.size() == b.rows.size();
}

}  // namespace

class MonteCarloTest : public QObject {
  Q_OBJECT
 private slots:
  // JCGM 101 against JCGM 100: where things are straight, mean and standard uncertainty agree.
  void firstOrderAndDrawsAgreeWhereThePairIsStraight() {
    const auto family = betaThrough(900, 70).withBow(0.01);
    for (const auto& trim :
         {TrimNetwork(), TrimNetwork::series(ohms(8.2)), TrimNetwork::seriesThenParallel(ohms(8.2), ohms(470))}) {
      const auto gauge = gaugeFor(family);
      const auto sender = betaThrough(1100, 72).withBow(0.02);
      const auto table = errorTable(gauge, sender, trim, band(80, 115), rowsOnly(8)).value();
      const auto sampled = monteCarlo(gauge, sender, table, {}).value();
      QVERIFY2(sampled.linear(), sampled.comparison.c_str());
      for (std::size_t i = 0; i < sampled.rows.size(); ++i) {
        const double u = inKelvin(table.rows[i].uncertainty.total()) / 2;
        QVERIFY(std::abs(inKelvin(sampled.rows[i].standard) - u) < 0.02 * u);
        QVERIFY(std::abs(inKelvin(sampled.rows[i].mean - table.rows[i].error)) < 0.03 * u);
      }
      QVERIFY(sampled.comparison.find("agree") != std::string::npos);
    }
  }

  // One rectangular input alone: the 95 % interval of a rectangular distribution is 0.95 of its width (JCGM 101, 7.7;
  // JCGM 100, 4.3.7).
  void intervalOfARectangularInputIsThatOfARectangle() {
    const auto family = betaThrough(900, 70);
    PairOptions options = rowsOnly(3);
    options.inputs = {0.0, 0, 0.05, kelvins(0), kelvins(0), volts(0)};
    const auto gauge = gaugeFor(family);
    const auto table = errorTable(gauge, family, {}, band(80, 115), options).value();
    const auto sampled = monteCarlo(gauge, family, table, {}).value();
    const double width = 0.05 * 75;  // of the marked span, 40 to 115 °C
    for (const SampledRow& row : sampled.rows) {
      QVERIFY(std::abs(inKelvin(row.standard) - width / std::sqrt(3.0)) < 0.01 * width);
      QVERIFY(std::abs(inKelvin(row.low95) + 0.95 * width) < 0.01 * width);
      QVERIFY(std::abs(inKelvin(row.high95) - 0.95 * width) < 0.01 * width);
    }
  }

  void whereItBendsTheReportSaysSoAndWhere() {
    // A dial of few marks behind a crossed coil has a kink; a sender of wide tolerance straddles it.
    const auto family = betaThrough(900, 70);
    const auto gauge = coilGaugeFor(family);
    PairOptions options = rowsOnly(12);
    options.inputs.senderTolerance = 0.6;
    const auto sender = betaThrough(2500, 60);
    const auto table = errorTable(gauge, sender, {}, band(60, 115), options).value();
    const auto sampled = monteCarlo(gauge, sender, table, {}).value();
    QVERIFY(!sampled.linear());
    QVERIFY2(sampled.comparison.find("does not hold at") != std::string::npos, sampled.comparison.c_str());
    QVERIFY(sampled.comparison.find("°C") != std::string::npos);
  }

  void resultDoesNotDependOnTheNumberOfThreads() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto sender = betaThrough(1500, 62);
    const auto table = errorTable(gauge, sender, TrimNetwork::parallel(ohms(470)), band(80, 115), rowsOnly(5)).value();
    Draws draws;
    draws.count = 10001;  // not a whole number of blocks
    draws.threads = 1;
    const auto one = monteCarlo(gauge, sender, table, draws).value();
    for (const unsigned threads : {2U, 3U, 8U}) {
      draws.threads = threads;
      QVERIFY(same(one, monteCarlo(gauge, sender, table, draws).value()));
    }
    draws.seed = 1960;
    QVERIFY(!same(one, monteCarlo(gauge, sender, table, draws).value()));
  }

  void ownFamilyDoesNotSpreadForNotKnowingItsCurve() {
    const auto family = betaThrough(900, 70).withBow(0.05);
    PairOptions options = rowsOnly(4);
    options.inputs = {0.0, 0, 0, kelvins(0), kelvins(0), volts(0)};
    options.sameFamily = true;
    const auto gauge = gaugeFor(family);
    const auto table = errorTable(gauge, family, {}, band(80, 114), options).value();
    const auto sampled = monteCarlo(gauge, family, table, {}).value();
    for (const SampledRow& row : sampled.rows) QVERIFY(inKelvin(row.standard) < 1e-6);
  }

  // C++ standard, [rand.predef]: the 10000th value of mt19937_64. Here: moments of what is drawn from it.
  void drawsHaveTheMomentsOfTheirDistributions() {
    const DrawBlock draws = drawBlock(7, 3, 200000);
    double mean = 0;
    double square = 0;
    double uniformSquare = 0;
    double together = 0;
    for (std::size_t i = 0; i < draws.size(); ++i) {
      mean += draws.senderCurve[i];
      square += draws.senderCurve[i] * draws.senderCurve[i];
      uniformSquare += draws.cluster[i] * draws.cluster[i];
      together += draws.senderCurve[i] * draws.familyCurve[i];
    }
    const auto n = static_cast<double>(draws.size());
    QVERIFY(std::abs(mean / n) < 0.01);
    QVERIFY(std::abs(square / n - 1) < 0.02);
    QVERIFY(std::abs(uniformSquare / n - 1.0 / 3) < 0.005);
    QVERIFY(std::abs(together / n) < 0.01);
  }

  void askedToStopItStopsAndSaysSo() {
    const auto family = betaThrough(900, 70);
    const auto gauge = gaugeFor(family);
    const auto table = errorTable(gauge, family, {}, band(80, 115)).value();
    std::stop_source source;
    source.request_stop();
    const auto sampled = monteCarlo(gauge, family, table, {}, source.get_token());
    QVERIFY(!sampled);
    QCOMPARE(QString::fromStdString(sampled.error().code), QString("cancelled"));
  }

  void tooFewOrFarTooManyDrawsAreRefused() {
    const auto family = betaThrough(900, 70);
    const auto gauge = gaugeFor(family);
    const auto table = errorTable(gauge, family, {}, band(80, 115)).value();
    Draws draws;
    draws.count = 10;
    QVERIFY(!monteCarlo(gauge, family, table, draws));
    draws.count = 1000000000;
    QVERIFY(!monteCarlo(gauge, family, table, draws));
  }
};

QTEST_APPLESS_MAIN(MonteCarloTest)
#include "tst_monte_carlo.moc"
