#include <circuit/network.h>
#include <QProcess>
#include <QStandardPaths>
#include <QTest>
#include <cmath>
#include <limits>
#include <map>
#include <sstream>

#include "reference_table.h"

using namespace ohmkin::circuit;
using ohmkin::test::ReferenceTable;

namespace {

constexpr double kWithin = 1e-6;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

Network networkOf(const ReferenceTable& table, std::size_t row) {
  Network network{18, {{1, 0, table.number(row, "battery_ohms"), table.number(row, "battery_volts")}}, {}};
  std::istringstream parts(table.text(row, "parts"));
  for (std::string part; std::getline(parts, part, ';');) {
    Resistor r;
    std::istringstream(part) >> r.from >> r.to >> r.ohms;
    network.resistors.push_back(r);
  }
  if (!table.blank(row, "regulator_volts"))
    network.regulators.push_back({5, 6, 17, table.number(row, "regulator_volts"), 0.05});
  return network;
}

std::vector<std::string> wordsOf(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

}  // namespace

/// Source: tests/data/circuit-ngspice.csv, computed by ngspice; Kirchhoff's laws.
class TestNetwork : public QObject {
  Q_OBJECT
 private slots:
  void node_volts_meet_ngspice() {
    const ReferenceTable table("circuit-ngspice.csv");
    QVERIFY(table.size() >= 200);
    double worst = 0;
    int compared = 0;
    int floating = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      const auto solution = solve(networkOf(table, i));
      QVERIFY(solution.has_value());
      if (!table.blank(i, "regulator_volts")) QCOMPARE(solution->regulates(0), table.text(i, "regulates") == "yes");
      const auto expected = wordsOf(table.text(i, "node_volts"));
      QCOMPARE(expected.size(), std::size_t{17});
      for (Node node = 1; node < 18; ++node) {
        const std::string& text = expected[static_cast<std::size_t>(node - 1)];
        QCOMPARE(solution->volts(node).has_value(), text != "-");
        if (text == "-") {
          ++floating;
          continue;
        }
        worst = std::max(worst, std::abs(*solution->volts(node) - std::stod(text)));
        ++compared;
      }
    }
    QVERIFY2(worst < kWithin, qPrintable(QString("worst %1 V").arg(worst)));
    QVERIFY(compared > 4000);
    QVERIFY2(floating > 10, qPrintable(QString::number(floating)));
    qInfo("%zu circuits, %d node volts, worst %.1e V", table.size(), compared, worst);
  }

  void ngspice_run_again_gives_the_values_kept() {
    const QString python = QStandardPaths::findExecutable("python3");
    if (python.isEmpty() || QStandardPaths::findExecutable("ngspice").isEmpty())
      QSKIP("python3 and ngspice are not both installed");
    QProcess run;
    run.start(python, {OHMKIN_TEST_FOLDER "/circuit_ngspice.py"});
    QVERIFY(run.waitForFinished(240000));
    QVERIFY2(run.exitCode() == 0, run.readAllStandardError().constData());
    const ReferenceTable table("circuit-ngspice.csv");
    std::size_t row = 0;
    for (const QByteArray& line : run.readAllStandardOutput().split('\n')) {
      const QList<QByteArray> cells = line.split(',');
      if (cells.size() < 9 || line.startsWith('#') || cells[0] == "circuit") continue;
      QCOMPARE(cells[1].toStdString(), table.text(row, "parts"));
      const auto fresh = wordsOf(cells[6].toStdString());
      const auto kept = wordsOf(table.text(row, "node_volts"));
      for (std::size_t n = 0; n < kept.size(); ++n)
        QVERIFY(kept[n] == "-" ? fresh[n] == "-" : std::abs(std::stod(fresh[n]) - std::stod(kept[n])) < kWithin);
      ++row;
    }
    QCOMPARE(row, table.size());
  }

  void opens_and_shorts_are_exact() {
    // Battery 12 V behind 1 Ω; 3 Ω to earth through a short.
    const Network network{4, {{1, 0, 1, 12}, {1, 2, 0, 0}, {2, 0, 3, 0}, {2, 3, kInfinite, 0}}, {}};
    const auto solution = solve(network);
    QCOMPARE(*solution->volts(2), 9.0);
    QCOMPARE(*solution->amperes(2), 3.0);
    QVERIFY(!solution->amperes(1).has_value());
    QVERIFY(!solution->volts(3).has_value());
    QCOMPARE(*solution->amperes(3), 0.0);
  }

  void an_ohmmeter_reads_series_and_parallel_and_nothing() {
    const Network network{4, {{1, 0, 1, 12}, {1, 2, 2, 0}, {2, 0, 6, 0}}, {}};
    QVERIFY(std::abs(*ohmsBetween(network, 2, 0) - 2) < 1e-9);
    QVERIFY(std::isinf(*ohmsBetween(network, 3, 0)));
    QVERIFY(std::abs(*ohmsBetween(network, 1, 1)) < 1e-9);
  }

  void a_regulator_without_ground_hands_on_the_battery() {
    Network network{4, {{1, 0, 0.01, 12}, {2, 0, 13, 0}, {3, 0, 0, 0}}, {{1, 2, 3, 5, 0.05}}};
    QVERIFY(std::abs(*solve(network)->volts(2) - 5) < 1e-12);
    QVERIFY(solve(network)->regulates(0));
    network.resistors[2].ohms = kInfinite;
    QVERIFY(*solve(network)->volts(2) > 11.9);
    QVERIFY(!solve(network)->regulates(0));
    network.resistors[2].ohms = 0;
    network.resistors[0].volts = 4;
    QVERIFY(*solve(network)->volts(2) > 3.9);
  }

  void what_is_no_network_is_refused() {
    QVERIFY(!solve({2, {{0, 2, 1, 0}}, {}}).has_value());
    QVERIFY(!solve({2, {{0, 1, -1, 0}}, {}}).has_value());
    QVERIFY(!solve({2, {{0, 1, std::nan(""), 0}}, {}}).has_value());
    QVERIFY(!solve({2, {{1, 0, 0, 12}}, {}}).has_value());
    QVERIFY(!solve({2, {}, {{0, 1, 0, 5, 0}}}).has_value());
    QVERIFY(solve({1, {}, {}}).has_value());
  }
};

QTEST_APPLESS_MAIN(TestNetwork)
#include "tst_network.moc"
