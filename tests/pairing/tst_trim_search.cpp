#include <pairing/trim_proposal.h>
#include <pairing/trim_search.h>
#include <QTest>
#include <cmath>
#include "exhaustive_trim.h"
#include "invented_pairs.h"
#include "scipy_table.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

TrimOptions over(Series series, std::size_t temperatures) {
  TrimOptions options;
  options.series = series;
  options.pair.rows = temperatures;
  options.feedToSender = false;
  return options;
}

void compareWithEveryNetwork(unsigned pairs, Series series, std::size_t temperatures) {
  for (unsigned i = 0; i < pairs; ++i) {
    const RandomPair pair = randomPair(i);
    const TrimOptions options = over(series, temperatures);
    const auto found = searchTrim(pair.gauge, pair.sender, pair.band, options);
    QVERIFY(found);
    const Exhaustive every =
        tryEveryNetwork(pair.gauge, pair.sender, pair.band, series, temperatures, options.limits.lowWeight);
    QCOMPARE(found->networks, every.networks);
    QCOMPARE(found->evaluated + found->excluded, found->networks);
    for (std::size_t t = 0; t < 5; ++t) {
      QVERIFY(found->ofTopology[t]);
      const double difference = inKelvin(found->ofTopology[t]->weightedWorst) - every.best[t];
      QVERIFY2(std::abs(difference) < 1e-9, qPrintable(QString("pair %1, %2 against %3")
                                                           .arg(i)
                                                           .arg(found->ofTopology[t]->network.name().c_str())
                                                           .arg(every.network[t].name().c_str())));
    }
    QVERIFY(std::abs(inKelvin(found->best.weightedWorst) - *std::min_element(every.best.begin(), every.best.end())) <
            1e-9);
  }
}

}  // namespace

class TrimSearchTest : public QObject {
  Q_OBJECT
 private slots:
  void theBestOfE24IsTheBruteForceBestOn200Pairs() { compareWithEveryNetwork(200, Series::e24, 12); }
  void theBestOfE96IsTheBruteForceBestOn20Pairs() { compareWithEveryNetwork(20, Series::e96, 12); }

  // tests/data/pairing-trims-scipy.csv: NumPy, every network tried; generator beside this file.
  void theBestAgreesWithNumpyToAMicrokelvin() {
    const ReferenceTable table("pairing-trims-scipy.csv");
    QVERIFY(table.size() >= 50);
    for (std::size_t row = 0; row < table.size(); ++row) {
      const auto found =
          searchTrim(gaugeOf(table, row), senderOf(table, row), bandOf(table, row), over(Series::e24, 60));
      QVERIFY(found);
      const QByteArray where = "row " + QByteArray::number(int(row));
      QVERIFY2(std::abs(inKelvin(found->best.weightedWorst) - table.number(row, "best")) < 1e-6, where);
      const char* const columns[] = {"best_none", "best_series", "best_parallel", "best_parallel_then_series",
                                     "best_series_then_parallel"};
      for (std::size_t t = 0; t < 5; ++t)
        QVERIFY2(std::abs(inKelvin(found->ofTopology[t]->weightedWorst) - table.number(row, columns[t])) < 1e-6, where);
    }
  }

  void theBestOnTimeIsTheBruteForceBestOnTime() {
    std::size_t unlike = 0;
    for (unsigned i = 0; i < 42; ++i) {
      const RandomPair pair = randomPair(i);
      TrimOptions options = over(Series::e12, 12);
      const auto free = searchTrim(pair.gauge, pair.sender, pair.band, options).value();
      options.latest = kelvins(2);
      // The matched pair's needle is at the mark where the dial was printed to be right.
      const auto every = tryEveryNetwork(pair.gauge, pair.sender, pair.band, Series::e12, 12, options.limits.lowWeight,
                                         inKelvin(celsius(117)));
      const double best = *std::min_element(every.best.begin(), every.best.end());
      const auto found = searchTrim(pair.gauge, pair.sender, pair.band, options);
      if (!found) {
        QCOMPARE(QString::fromStdString(found.error().code), QString("no-trim-on-time"));
        QVERIFY(std::isinf(best));
        continue;
      }
      QVERIFY2(std::abs(inKelvin(found->best.weightedWorst) - best) < 1e-9, QByteArray::number(i));
      QCOMPARE(found->evaluated + found->excluded, found->networks);
      unlike += found->best.network == free.best.network ? 0 : 1;
    }
    QVERIFY(unlike > 5);
  }

  // The brute force of exhaustive_trim.h again; the bound lies between its topologies, on its best, and below it.
  void nothingWorseThanTheBoundIsFoundAndNothingBetterIsMissed() {
    for (unsigned i = 0; i < 42; ++i) {
      const RandomPair pair = randomPair(i);
      TrimOptions options = over(Series::e12, 12);
      const auto every = tryEveryNetwork(pair.gauge, pair.sender, pair.band, Series::e12, 12, options.limits.lowWeight);
      const double best = *std::min_element(every.best.begin(), every.best.end());
      for (const double bound : {best + 1, best * (1 + 1e-9), best * (1 - 1e-6)}) {
        options.atMost = kelvins(bound);
        const auto found = searchTrim(pair.gauge, pair.sender, pair.band, options);
        QCOMPARE(bool(found), bound >= best);
        if (!found) continue;
        for (std::size_t t = 0; t < 5; ++t) {
          QCOMPARE(bool(found->ofTopology[t]), every.best[t] <= bound);
          if (!found->ofTopology[t]) continue;
          QVERIFY(std::abs(inKelvin(found->ofTopology[t]->weightedWorst) - every.best[t]) < 1e-9);
        }
      }
    }
  }

  void mostNetworksAreExcludedByTheBound() {
    const RandomPair pair = randomPair(0);
    const auto found = searchTrim(pair.gauge, pair.sender, pair.band, over(Series::e96, 60));
    QVERIFY(found);
    QVERIFY(found->excluded > 100 * found->evaluated);
  }

  void theFeedResistorFoundIsTheBestOfItsSeries() {
    const auto family = betaThrough(900, 70);
    const auto gauge = coilGaugeFor(family);
    for (const double cold : {500.0, 700.0, 1300.0}) {
      TrimOptions options = over(Series::e24, 30);
      options.feedToSender = true;
      const auto sender = betaThrough(cold, 0.9 * 70 * cold / 900 + 7);
      const auto found = searchTrim(gauge, sender, band(80, 115), options);
      QVERIFY(found && found->ofTopology[5]);
      double best = INFINITY;
      for (const double x : preferredOhms(Series::e24, ohms(1), ohms(100e3))) {
        const auto altered = trimmed(gauge, TrimNetwork::feedToSender(ohms(x)));
        if (!altered) continue;
        double worst = -INFINITY;
        for (const double t : evenly(band(80, 115), 30)) {
          const double error = altered->shownKelvin(sender.lnOhms(t)) - t;
          worst = std::max(worst, error > 0 ? error : -2 * error);
        }
        best = std::min(best, worst);
      }
      QVERIFY(std::abs(inKelvin(found->ofTopology[5]->weightedWorst) - best) < 1e-9);
    }
  }

  void onlyTheDrawerIsLookedIntoWhereOneIsGiven() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    TrimOptions options = over(Series::e96, 30);
    options.drawer = {ohms(330), ohms(10), ohms(330), ohms(22)};
    const auto found = searchTrim(gauge, betaThrough(1500, 62), band(80, 115), options);
    QVERIFY(found);
    QCOMPARE(found->networks, std::size_t(1 + 3 + 3 + 9 + 9));
    const auto inDrawer = [&](Ohms r) { return r == ohms(0) || r == ohms(330) || r == ohms(10) || r == ohms(22); };
    for (const auto& each : found->ofTopology)
      if (each) QVERIFY(inDrawer(each->network.seriesOhms()) && inDrawer(each->network.parallelOhms()));
  }

  void readingLowWeighsHeavier() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto sender = betaThrough(1500, 62);
    TrimOptions even = over(Series::e96, 60);
    even.limits.lowWeight = 1;
    TrimOptions heavy = even;
    heavy.limits.lowWeight = 5;
    const auto lowest = [&](const TrimOptions& options) {
      const auto found = searchTrim(gauge, sender, band(75, 115), options);
      return inKelvin(errorTable(gauge, sender, found->best.network, band(75, 115))->low.error);
    };
    QVERIFY(lowest(heavy) > lowest(even));
  }

  void badInputIsRefused() {
    const auto family = betaThrough(900, 70);
    const auto gauge = gaugeFor(family);
    TrimOptions options;
    options.drawer = {ohms(-3)};
    QCOMPARE(QString::fromStdString(searchTrim(gauge, family, band(80, 115), options).error().code),
             QString("resistor-out-of-range"));
    options = {};
    options.highest = ohms(0.5);
    QCOMPARE(QString::fromStdString(searchTrim(gauge, family, band(80, 115), options).error().code),
             QString("no-resistor-values"));
    QCOMPARE(QString::fromStdString(searchTrim(gauge, family, band(115, 80)).error().code), QString("band-reversed"));
    QCOMPARE(QString::fromStdString(searchTrim(gauge, family, band(160, 180)).error().code), QString("band-off-curve"));
    options = {};
    options.limits.lowWeight = NAN;
    QVERIFY(!searchTrim(gauge, family, band(80, 115), options));
  }
};

QTEST_APPLESS_MAIN(TrimSearchTest)
#include "tst_trim_search.moc"
