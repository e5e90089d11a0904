#include "nodal_gauge.h"
#include "reference_table.h"

#include <QProcess>
#include <QStandardPaths>
#include <QTest>
#include <map>
#include <random>

using namespace ohmkin;
using namespace ohmkin::gauge;
using test::NodalGauge;

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
constexpr double kWithin = 1e-6;  // degrees

class Invented {
 public:
  double between(double low, double high) { return std::uniform_real_distribution(low, high)(random_); }
  double ohmsBetween(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool tossed() { return between(0, 1) < 0.5; }
  Eigen::Vector2d turns() {
    const double direction = between(0, 2 * std::numbers::pi);
    return between(0.3, 2) * Eigen::Vector2d(std::sin(direction), std::cos(direction));
  }

  /// Coils tapped at the sender post, or side by side from the feed; a bucking coil across the feed on half of them;
  /// shunts anywhere.
  NodalGauge gauge() {
    NodalGauge g;
    g.coils.push_back({test::kFeed, test::kSender, ohmsBetween(30, 400), turns()});
    g.coils.push_back({tossed() ? test::kSender : test::kFeed, test::kGround, ohmsBetween(30, 400), turns()});
    if (tossed()) g.coils.push_back({test::kFeed, test::kGround, ohmsBetween(30, 400), turns()});
    for (const auto& [a, b] : {std::pair{0, 1}, {0, 2}, {1, 2}})
      if (tossed()) g.shunt[a][b] = ohmsBetween(20, 2000);
    g.feedOhms = tossed() ? 0 : between(0.1, 20);
    return g;
  }

  /// Coils tapped at the sender post, nothing else: what coil ohms at the posts describe.
  NodalGauge tapped() {
    NodalGauge g;
    const double direction = between(0, 2 * std::numbers::pi);
    const double apart = (tossed() ? 1 : -1) * between(0.6, 2.2);
    g.coils.push_back({test::kFeed, test::kSender, ohmsBetween(30, 400), {std::sin(direction), std::cos(direction)}});
    g.coils.push_back({test::kSender, test::kGround, ohmsBetween(30, 400),
                       between(0.5, 2) * Eigen::Vector2d(std::sin(direction + apart), std::cos(direction + apart))});
    return g;
  }

 private:
  std::mt19937_64 random_{1959};
};

/// A sweep that can be told from none and from half a turn, and a field that is there.
bool usable(const CrossedCoil& coil) {
  const double sweep = std::abs(coil.sweep.degrees);
  return sweep > 5 && sweep < 175 && std::isfinite(inOhms(coil.half)) && inOhms(coil.half) > 1 &&
         inOhms(coil.half) < 1e5;
}

CrossedCoil withCoils(CrossedCoil coil, const NodalGauge& g) {
  coil.feedCoil = ohms(g.coils[0].ohms);
  coil.groundCoil = ohms(g.coils[1].ohms);
  return coil;
}

double off(const Movement& movement, const NodalGauge& g, double sender, const Conditions& conditions = {},
           double supply = 12) {
  return std::abs(test::turned(deflection(movement, ohms(sender), conditions).degrees - g.degrees(sender, supply)));
}

}  // namespace

/// Source: Kirchhoff's current law, solved by Eigen at the nodes of invented circuits, and by ngspice.
class TestKirchhoff : public QObject {
  Q_OBJECT
 private slots:
  void three_numbers_describe_every_linear_crossed_coil_gauge() {
    Invented invented;
    int gauges = 0;
    double worst = 0;
    while (gauges < 2000) {
      const NodalGauge g = invented.gauge();
      const CrossedCoil coil = test::measured(g);
      if (!usable(coil)) continue;
      QVERIFY(checked(coil).has_value());
      for (int i = 0; i < 8; ++i) worst = std::max(worst, off(coil, g, invented.ohmsBetween(1, 10000)));
      ++gauges;
    }
    QVERIFY2(worst < kWithin, qPrintable(QString("worst %1 degrees").arg(worst)));
  }

  void the_supply_and_ohms_in_the_feed_do_nothing() {
    Invented invented;
    for (int i = 0; i < 300; ++i) {
      NodalGauge g = invented.gauge();
      const CrossedCoil coil = test::measured(g);
      if (!usable(coil)) continue;
      const double sender = invented.ohmsBetween(5, 2000);
      for (const double supply : {10.0, 12.6, 15.0}) {
        QVERIFY(off(coil, g, sender, {.supply = volts(supply)}, supply) < kWithin);
        g.feedOhms = invented.between(0.001, 20);
      }
    }
  }

  // (R∥p)+s: Q' = p(Q + sP), P' = Q + (s+p)P; (R+s)∥p: Q' = (s+p)Q + spP, P' = Q + pP. So a trimmed gauge has three
  // numbers of its own.
  void a_trimmed_gauge_is_a_crossed_coil_with_other_numbers() {
    Invented invented;
    int gauges = 0;
    while (gauges < 300) {
      const NodalGauge g = invented.gauge();
      if (!usable(test::measured(g))) continue;
      const double s = invented.ohmsBetween(5, 500);
      const double p = invented.ohmsBetween(20, 2000);
      const bool parallelFirst = invented.tossed();
      const auto through = [&](double r) {
        if (std::isinf(r)) return parallelFirst ? p + s : p;
        return parallelFirst ? r * p / (r + p) + s : (r + s) * p / (r + s + p);
      };
      const CrossedCoil trimmed =
          test::measured(g.degrees(through(0)), g.degrees(through(kOpen)), 100, g.degrees(through(100)));
      if (std::abs(trimmed.sweep.degrees) < 5) continue;
      for (int i = 0; i < 8; ++i) {
        const double sender = invented.ohmsBetween(1, 10000);
        const double law = deflection(trimmed, ohms(sender)).degrees;
        QVERIFY(std::abs(test::turned(law - g.degrees(through(sender)))) < kWithin);
      }
      ++gauges;
    }
  }

  void a_load_in_the_shared_ground_acts_as_other_sender_ohms() {
    Invented invented;
    int gauges = 0;
    while (gauges < 300) {
      NodalGauge g = invented.tapped();
      const CrossedCoil coil = withCoils(test::measured(g), g);
      if (!usable(coil)) continue;
      g.groundOhms = invented.ohmsBetween(0.01, 2);
      g.loadAmperes = invented.between(0, 1.2) / g.groundOhms;
      const Conditions conditions{.groundRise = g.loadAmperes * g.groundOhms / 12, .groundOhms = ohms(g.groundOhms)};
      QVERIFY(unanswered(coil, conditions).empty());
      for (int i = 0; i < 8; ++i) QVERIFY(off(coil, g, invented.ohmsBetween(5, 3000), conditions) < kWithin);
      ++gauges;
    }
  }

  void warm_coils_are_coils_of_more_ohms() {
    Invented invented;
    int gauges = 0;
    while (gauges < 300) {
      NodalGauge g = invented.tapped();
      const CrossedCoil coil = withCoils(test::measured(g), g);
      if (!usable(coil)) continue;
      const double warmer = invented.between(-40, 50);
      for (test::Coil& c : g.coils) c.ohms *= 1 + 0.0039 * warmer;
      const Conditions conditions{.cluster = celsius(20 + warmer)};
      for (int i = 0; i < 4; ++i) QVERIFY(off(coil, g, invented.ohmsBetween(5, 3000), conditions) < kWithin);
      g.groundOhms = 0.5;
      g.loadAmperes = 1;
      const Conditions both{.cluster = conditions.cluster, .groundRise = 0.5 / 12, .groundOhms = ohms(0.5)};
      QVERIFY(off(coil, g, 60, both) < kWithin);
      ++gauges;
    }
  }

  void a_resistor_from_feed_to_sender_post_changes_the_numbers_as_computed() {
    Invented invented;
    int gauges = 0;
    while (gauges < 300) {
      NodalGauge g = invented.tapped();
      const CrossedCoil coil = withCoils(test::measured(g), g);
      if (!usable(coil)) continue;
      const double resistor = invented.ohmsBetween(30, 3000);
      g.shunt[test::kFeed][test::kSender] = resistor;
      const auto changed = withFeedResistor(coil, ohms(resistor));
      QVERIFY(changed.has_value());
      if (std::abs(changed->sweep.degrees) > 175) continue;
      for (int i = 0; i < 8; ++i) QVERIFY(off(*changed, g, invented.ohmsBetween(5, 3000)) < kWithin);
      QVERIFY(off(*changed, g, kOpen) < kWithin);
      ++gauges;
    }
  }

  void a_return_magnet_makes_the_supply_matter_by_as_much_as_computed() {
    Invented invented;
    int gauges = 0;
    double most = 0;
    while (gauges < 300) {
      NodalGauge g = invented.gauge();
      CrossedCoil coil = test::measured(g);
      if (!usable(coil)) continue;
      const double atGrounded = g.field(0, 13.5).norm();
      const double weakening = inOhms(coil.half) * g.field(kOpen, 13.5).norm() / atGrounded;
      const double strength = invented.between(0.01, 0.08);
      const double pull = invented.between(-180, 180);
      coil.magnet = ReturnMagnet{strength, {pull}, ohms(weakening)};
      g.constantField =
          strength * atGrounded *
          Eigen::Vector2d(std::sin(pull * std::numbers::pi / 180), std::cos(pull * std::numbers::pi / 180));
      for (const double supply : {10.0, 13.5, 15.0}) {
        for (int i = 0; i < 3; ++i)
          QVERIFY(off(coil, g, invented.ohmsBetween(5, 3000), {.supply = volts(supply)}, supply) < kWithin);
        QVERIFY(off(coil, g, kOpen, {.supply = volts(supply)}, supply) < kWithin);
      }
      most = std::max(most, std::abs(deflection(coil, ohms(60), {.supply = volts(10)}).degrees -
                                     deflection(coil, ohms(60), {.supply = volts(15)}).degrees));
      ++gauges;
    }
    QVERIFY(most > 1);
  }

  // tests/data/crossed-coil-ngspice.csv, written by tests/gauge/crossed_coil_ngspice.py: three readings give the
  // numbers, the others check them.
  void the_law_meets_ngspice() {
    const test::ReferenceTable table("crossed-coil-ngspice.csv");
    std::map<std::string, std::map<double, double>> circuits;
    for (std::size_t i = 0; i < table.size(); ++i) {
      const double sender = table.text(i, "sender_ohms") == "open" ? kOpen : table.number(i, "sender_ohms");
      circuits[table.text(i, "circuit")][sender] = table.number(i, "degrees");
    }
    QVERIFY(circuits.size() >= 50);
    for (const auto& [name, readings] : circuits) {
      const CrossedCoil coil = test::measured(readings.at(0), readings.at(kOpen), 100, readings.at(100));
      for (const auto& [sender, degrees] : readings) {
        const double difference = test::turned(deflection(coil, ohms(sender)).degrees - degrees);
        QVERIFY2(std::abs(difference) < kWithin, qPrintable(QString("circuit %1, %2 ohms: %3 degrees off")
                                                                .arg(QString::fromStdString(name))
                                                                .arg(sender)
                                                                .arg(difference)));
      }
    }
  }

  void ngspice_run_again_gives_the_values_kept() {
    const QString python = QStandardPaths::findExecutable("python3");
    if (python.isEmpty() || QStandardPaths::findExecutable("ngspice").isEmpty())
      QSKIP("python3 and ngspice are not both installed");
    QProcess run;
    run.start(python, {OHMKIN_TEST_FOLDER "/crossed_coil_ngspice.py"});
    QVERIFY(run.waitForFinished(120000));
    QVERIFY2(run.exitCode() == 0, run.readAllStandardError().constData());
    std::map<QByteArray, double> fresh;
    for (const QByteArray& line : run.readAllStandardOutput().split('\n')) {
      const QList<QByteArray> cells = line.split(',');
      if (cells.size() >= 3 && !line.startsWith('#') && cells[0] != "circuit")
        fresh[cells[0] + '/' + cells[1]] = cells[2].toDouble();
    }
    const test::ReferenceTable table("crossed-coil-ngspice.csv");
    QCOMPARE(fresh.size(), table.size());
    for (std::size_t i = 0; i < table.size(); ++i) {
      const QByteArray key = QByteArray::fromStdString(table.text(i, "circuit") + "/" + table.text(i, "sender_ohms"));
      QVERIFY(fresh.contains(key));
      QVERIFY(std::abs(fresh[key] - table.number(i, "degrees")) < kWithin);
    }
  }
};

QTEST_APPLESS_MAIN(TestKirchhoff)
#include "tst_kirchhoff.moc"
