#include <pairing/preferred_values.h>
#include <pairing/trim_network.h>
#include <QTest>
#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include "invented_pairs.h"
#include "reference_table.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

const Ohms kOpen = ohms(std::numeric_limits<double>::infinity());

const std::vector<TrimNetwork>& everyNetwork() {
  static const std::vector<TrimNetwork> all{
      TrimNetwork(), TrimNetwork::series(ohms(12)), TrimNetwork::parallel(ohms(510)),
      TrimNetwork::parallelThenSeries(ohms(510), ohms(12)), TrimNetwork::seriesThenParallel(ohms(12), ohms(510))};
  return all;
}

}  // namespace

class TrimNetworkTest : public QObject {
  Q_OBJECT
 private slots:
  // Ohm's law one way and the other.
  void theSenderBehindWhatThePostSeesIsTheSender() {
    for (const TrimNetwork& network :
         {TrimNetwork(), TrimNetwork::series(ohms(12)), TrimNetwork::parallel(ohms(510)),
          TrimNetwork::parallelThenSeries(ohms(510), ohms(12)), TrimNetwork::seriesThenParallel(ohms(12), ohms(510))}) {
      for (const double sender : {0.5, 20.0, 480.0, 1e5}) {
        const auto behind = network.senderBehind(network.seen(ohms(sender)));
        QVERIFY2(behind && std::abs(inOhms(*behind) / sender - 1) < 1e-9, network.name().c_str());
      }
    }
  }

  void noSenderIsBehindWhatANetworkCannotMakeOfIt() {
    QVERIFY(!TrimNetwork::series(ohms(12)).senderBehind(ohms(12)));
    QVERIFY(!TrimNetwork::parallel(ohms(510)).senderBehind(ohms(510)));
    QVERIFY(!TrimNetwork::parallelThenSeries(ohms(510), ohms(12)).senderBehind(ohms(522)));
    QVERIFY(!TrimNetwork::seriesThenParallel(ohms(12), ohms(510)).senderBehind(ohms(11)));
    QVERIFY(!TrimNetwork().senderBehind(ohms(INFINITY)));
  }

  void namesReadAsAPersonWouldSayThem_data() {
    QTest::addColumn<int>("which");
    QTest::addColumn<QString>("name");
    const char* const names[] = {"no resistor", "12 Ω in series", "510 Ω in parallel", "(sender ∥ 510 Ω) + 12 Ω",
                                 "(sender + 12 Ω) ∥ 510 Ω"};
    for (int i = 0; i < 5; ++i) QTest::newRow(names[i]) << i << QString::fromUtf8(names[i]);
  }
  void namesReadAsAPersonWouldSayThem() {
    QFETCH(int, which);
    QFETCH(QString, name);
    QCOMPARE(QString::fromStdString(everyNetwork()[std::size_t(which)].name()), name);
  }

  // Ohm's law at the ends.
  void groundedAndOpenLeadsAreOrdinarySenders() {
    const double openSeen[] = {INFINITY, INFINITY, 510, 522, 510};
    const double groundedSeen[] = {0, 12, 0, 12, 12.0 * 510 / 522};
    for (std::size_t i = 0; i < 5; ++i) {
      QCOMPARE(inOhms(everyNetwork()[i].seen(kOpen)), openSeen[i]);
      QCOMPARE(inOhms(everyNetwork()[i].seen(ohms(0))), groundedSeen[i]);
    }
  }

  void sensitivitiesAreTheSlopesOfTheOhmsSeen() {
    constexpr double h = 1e-6;
    for (const TrimNetwork& network : everyNetwork())
      for (const double r : {20.0, 75.0, 400.0, 3000.0}) {
        const auto on = network.sensitivity(ohms(r));
        const auto seenWith = [&](double sender, double s, double p) {
          const auto n = makeNetwork(network.topology(), network.seriesOhms() * s, network.parallelOhms() * p, ohms(0));
          return std::log(inOhms(n->seen(ohms(r * sender))));
        };
        QVERIFY(std::abs((seenWith(1 + h, 1, 1) - seenWith(1 - h, 1, 1)) / (2 * h) - on.sender) < 1e-8);
        QVERIFY(std::abs((seenWith(1, 1 + h, 1) - seenWith(1, 1 - h, 1)) / (2 * h) - on.series) < 1e-8);
        QVERIFY(std::abs((seenWith(1, 1, 1 + h) - seenWith(1, 1, 1 - h)) / (2 * h) - on.parallel) < 1e-8);
      }
  }

  // Kirchhoff: a network before a crossed coil is another crossed coil. With the field Q + R·P as plane vectors,
  // (R ∥ p) + s gives Q' = p(Q + sP), P' = Q + (s + p)P; (R + s) ∥ p gives Q' = (s + p)Q + spP, P' = Q + pP.
  void networkBeforeACrossedCoilIsAnotherCrossedCoil() {
    using Vector = std::complex<double>;
    const double radian = std::numbers::pi / 180;
    const gauge::CrossedCoil coil{{55}, {-120}, ohms(140), {}, {}};
    const Vector q = std::polar(inOhms(coil.half), coil.grounded.degrees * radian);
    const Vector p = std::polar(1.0, (coil.grounded.degrees + coil.sweep.degrees) * radian);
    const double series = 12;
    const double parallel = 510;
    const auto coilOf = [&](Vector grounded, Vector open) {
      return gauge::CrossedCoil{{std::arg(grounded) / radian},
                                {std::arg(open / grounded) / radian},
                                ohms(std::abs(grounded) / std::abs(open)),
                                {},
                                {}};
    };
    const gauge::CrossedCoil after[] = {coilOf(parallel * (q + series * p), q + (series + parallel) * p),
                                        coilOf((series + parallel) * q + series * parallel * p, q + parallel * p)};
    const TrimNetwork networks[] = {TrimNetwork::parallelThenSeries(ohms(parallel), ohms(series)),
                                    TrimNetwork::seriesThenParallel(ohms(series), ohms(parallel))};
    for (std::size_t i = 0; i < 2; ++i)
      for (const double r : {0.0, 15.0, 60.0, 200.0, 900.0, 5000.0}) {
        const double through = gauge::deflection(coil, networks[i].seen(ohms(r))).degrees;
        QVERIFY(std::abs(through - gauge::deflection(after[i], ohms(r)).degrees) < 1e-9);
      }
  }

  // Kirchhoff at the sender post, currents in from the feed through coil and resistor, out through coil and sender.
  void feedResistorMovesTheNeedleAsKirchhoffSays() {
    const auto family = betaThrough(900, 70);
    const auto gauge = coilGaugeFor(family);
    const auto& coil = std::get<gauge::CrossedCoil>(*gauge.movement());
    const double a = inOhms(*coil.feedCoil);
    const double b = inOhms(*coil.groundCoil);
    const double x = 1200;
    const auto altered = trimmed(gauge, TrimNetwork::feedToSender(ohms(x)));
    QVERIFY(altered);
    // Field of one ampere in each coil, from the three numbers: grounded, all current is in the feed coil; open, both
    // carry the same.
    using Vector = std::complex<double>;
    const double radian = std::numbers::pi / 180;
    const Vector feedCoil = std::polar(inOhms(coil.half) / b, coil.grounded.degrees * radian);
    const Vector both = std::polar(1.0, (coil.grounded.degrees + coil.sweep.degrees) * radian);
    for (const double r : {10.0, 70.0, 250.0, 900.0}) {
      const double post = (1 / a + 1 / x) / (1 / a + 1 / x + 1 / b + 1 / r);  // volts, feed 1 V
      const Vector field = feedCoil * ((1 - post) / a) + (both - feedCoil) * (post / b);
      const double needle = gauge::deflection(*altered->movement(), ohms(r)).degrees;
      QVERIFY2(std::abs(needle - std::arg(field) / radian) < 1e-9,
               QByteArray::number(needle - std::arg(field) / radian));
    }
  }

  void feedResistorWithoutCoilOhmsIsRefused() {
    const auto network = TrimNetwork::feedToSender(ohms(1200));
    const auto unknown = trimmed(gaugeFor(betaThrough(900, 70)), network);
    QVERIFY(!unknown);
    QCOMPARE(QString::fromStdString(unknown.error().code), QString("feed-resistor-needs-crossed-coil"));
  }

  void networksThatCannotBeBuiltAreRefused_data() {
    QTest::addColumn<int>("topology");
    QTest::addColumn<double>("s");
    QTest::addColumn<double>("p");
    QTest::newRow("no ohms") << int(Topology::series) << 0.0 << 0.0;
    QTest::newRow("below nothing") << int(Topology::parallel) << 0.0 << -5.0;
    QTest::newRow("infinite") << int(Topology::parallel) << 0.0 << double(INFINITY);
    QTest::newRow("not a number") << int(Topology::series) << double(NAN) << 0.0;
    QTest::newRow("a part too many") << int(Topology::series) << 12.0 << 510.0;
  }
  void networksThatCannotBeBuiltAreRefused() {
    QFETCH(int, topology);
    QFETCH(double, s);
    QFETCH(double, p);
    QVERIFY(!makeNetwork(static_cast<Topology>(topology), ohms(s), ohms(p), ohms(0)));
  }

  // IEC 60063 by way of tests/data/iec60063-e-series.csv.
  void preferredValuesAreThoseOfIec60063() {
    const ReferenceTable table("iec60063-e-series.csv");
    std::size_t seen = 0;
    for (std::size_t row = 0; row < table.size(); ++row) {
      const auto series = parseSeries(table.text(row, "series"));
      if (!series) continue;
      const auto index = static_cast<std::size_t>(table.number(row, "index"));
      QVERIFY(index < mantissas(*series).size());
      QCOMPARE(mantissas(*series)[index], table.number(row, "value"));
      ++seen;
    }
    QCOMPARE(seen, std::size_t(6 + 12 + 24 + 48 + 96));
  }

  void spansOfValuesHoldBothEnds() {
    const auto values = preferredOhms(Series::e24, ohms(1), ohms(100e3));
    QCOMPARE(values.size(), std::size_t(121));
    QCOMPARE(values.front(), 1.0);
    QCOMPARE(values.back(), 100e3);
    QVERIFY(std::find(values.begin(), values.end(), 5600.0) != values.end());
    QVERIFY(preferredOhms(Series::e6, ohms(0), ohms(10)).empty());
    QVERIFY(!parseSeries("E13"));
  }
};

QTEST_APPLESS_MAIN(TrimNetworkTest)
#include "tst_trim_network.moc"
