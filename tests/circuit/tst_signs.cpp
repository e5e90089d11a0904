#include <QTest>
#include <cmath>

#include "invented_circuits.h"

using namespace ohmkin;
using namespace ohmkin::circuit;

namespace {

double& at(Condition& condition, Part part) { return condition.ohms[static_cast<std::size_t>(part)]; }

Needle needleWith(const GaugeCircuit& circuit, const Condition& condition) {
  return circuit.needle(condition, *solve(circuit.network(condition)));
}

/// With a fault of the book, and more done to the circuit.
Needle needleWith(const GaugeCircuit& circuit, std::string_view fault, double severity,
                  const std::vector<std::pair<Part, double>>& more = {}) {
  const FaultBook book = *usualFaults();
  Condition condition = with(circuit.healthy(), book.faults[*book.faultWith(fault)], severity);
  for (const auto& [part, ohms] : more) at(condition, part) = ohms;
  return needleWith(circuit, condition);
}

double right(const GaugeCircuit& circuit) { return circuit.placeOf(circuit.facts().running); }

/// Without wires of its own, for comparing with the gauge alone.
Condition bare(const GaugeCircuit& circuit) {
  Condition condition = circuit.healthy();
  for (const Part part :
       {Part::keySwitch, Part::fuse, Part::feed, Part::feedTrack, Part::groundTrack, Part::clusterGround,
        Part::bodyGround, Part::senderTrack, Part::lead, Part::connector, Part::strap})
    at(condition, part) = 0;
  return condition;
}

}  // namespace

/// The whole circuit: against the gauge alone, and the signs by which the trade tells faults apart (common practice, no
/// source, unless said otherwise).
class TestSigns : public QObject {
  Q_OBJECT
 private slots:
  /// Source: the laws of the movements, which tests/gauge holds against ngspice.
  void without_wires_the_needle_stands_where_the_gauge_alone_has_it() {
    for (const CircuitFacts& facts : {test::crossedFacts(), test::shuntedFacts(), test::bimetalFacts()}) {
      const GaugeCircuit circuit = *GaugeCircuit::make(facts);
      const auto& dial = facts.gauge.dial();
      const double cold = dial.marks().front().angle.degrees;
      const double hot = dial.angleOf(dial.hotMark()).degrees;
      for (const double t : {45.0, 60.0, 75.0, 90.0, 105.0, 118.0}) {
        Condition condition = bare(circuit);
        condition.tipKelvin = inKelvin(celsius(t));
        const double alone = facts.gauge.indicated(*facts.sender.resistance(celsius(t))).needle.degrees;
        const double place = needleWith(circuit, condition).place;
        QVERIFY2(std::abs(place - (alone - cold) / (hot - cold)) < 1e-9,
                 qPrintable(QString("%1 °C: %2").arg(t).arg(place)));
      }
    }
  }

  /// Source: gauge::withFeedResistor, held against nodal solutions in tests/gauge.
  void a_leak_from_feed_to_lead_is_a_resistor_from_feed_to_sender_post() {
    const CircuitFacts facts = test::crossedFacts();
    const GaugeCircuit circuit = *GaugeCircuit::make(facts);
    const auto coil = std::get<gauge::CrossedCoil>(*facts.gauge.movement());
    const auto changed = gauge::withFeedResistor(coil, ohms(300));
    Condition condition = bare(circuit);
    at(condition, Part::boardLeak) = 300;
    const double alone = gauge::deflection(*changed, *facts.sender.resistance(facts.running)).degrees;
    const auto& dial = facts.gauge.dial();
    const double cold = dial.marks().front().angle.degrees;
    QVERIFY(std::abs(needleWith(circuit, condition).place -
                     (alone - cold) / (dial.angleOf(dial.hotMark()).degrees - cold)) < 1e-9);
  }

  /// Source: gauge::Conditions::groundRise, held against nodal solutions in tests/gauge.
  void lamps_in_a_shared_ground_act_as_the_rise_of_that_ground() {
    const CircuitFacts facts = test::crossedFacts();
    const GaugeCircuit circuit = *GaugeCircuit::make(facts);
    const auto& dial = facts.gauge.dial();
    const double cold = dial.marks().front().angle.degrees;
    const double hot = dial.angleOf(dial.hotMark()).degrees;
    for (const double ground : {0.05, 0.2, 0.5, 1.0}) {
      Condition condition = bare(circuit);
      at(condition, Part::battery) = 1e-9;
      for (const Part part : {Part::otherFeedCoil, Part::otherGroundCoil, Part::bodyLoad, Part::engineLoad})
        at(condition, part) = kOpen;
      at(condition, Part::clusterGround) = ground;
      at(condition, Part::lamps) = kLampOhms;
      const gauge::Conditions conditions{.groundRise = ground / (ground + kLampOhms),
                                         .groundOhms = ohms(ground * kLampOhms / (ground + kLampOhms))};
      const Angle alone =
          dial.onStops(gauge::deflection(*facts.gauge.movement(), *facts.sender.resistance(facts.running), conditions));
      const double place = needleWith(circuit, condition).place;
      QVERIFY2(std::abs(place - (alone.degrees - cold) / (hot - cold)) < 1e-6, qPrintable(QString::number(place)));
    }
  }

  void a_lost_gauge_ground_reads_hot_and_pulling_the_lead_leaves_the_needle_dead() {
    const GaugeCircuit circuit = *GaugeCircuit::make(test::crossedFacts());
    QVERIFY(needleWith(circuit, "ground-track-open", kOpen).place > 1);
    QVERIFY(!needleWith(circuit, "ground-track-open", kOpen, {{Part::connector, kOpen}}).torque);
    // A grounded lead reads hot as well, and a good gauge goes cold.
    QVERIFY(needleWith(circuit, "lead-to-chassis", 0).place > 1);
    QVERIFY(needleWith(circuit, "lead-open", kOpen).torque);
    QVERIFY(needleWith(circuit, "lead-open", kOpen).place < 0.05);
  }

  void without_feed_nothing_turns_the_needle() {
    const GaugeCircuit circuit = *GaugeCircuit::make(test::crossedFacts());
    for (const auto* fault : {"fuse-open", "key-switch-open", "feed-wire-open", "feed-track-open"})
      QVERIFY(!needleWith(circuit, fault, kOpen).torque);
    QVERIFY(circuit.needleStays());
    const GaugeCircuit bimetal = *GaugeCircuit::make(test::bimetalFacts());
    QVERIFY(!bimetal.needleStays());
    QVERIFY(needleWith(bimetal, "fuse-open", kOpen).place < 0.01);
  }

  void signs_of_single_faults_data() {
    QTest::addColumn<QString>("fault");
    QTest::addColumn<double>("severity");
    QTest::addColumn<int>("sign");
    QTest::newRow("feed shunt open reads high") << "feed-shunt-open" << kOpen << 1;
    QTest::newRow("ground shunt open reads low") << "ground-shunt-open" << kOpen << -1;
    QTest::newRow("damp board reads low") << "board-leak" << 100.0 << -1;
    QTest::newRow("ohms in the lead read low") << "lead-high" << 30.0 << -1;
    QTest::newRow("ohms at the connector read low") << "connector-high" << 30.0 << -1;
    QTest::newRow("sealant on the thread reads low") << "thread-sealant" << 100.0 << -1;
    QTest::newRow("engine above chassis reads low") << "strap-poor" << 1.0 << -1;
    QTest::newRow("leak from lead to chassis reads high") << "lead-to-chassis" << 100.0 << 1;
    QTest::newRow("air at the sender reads low") << "air-pocket" << -30.0 << -1;
    QTest::newRow("open sender reads cold") << "sender-open" << kOpen << -1;
    QTest::newRow("shorted sender reads hot") << "sender-shorted" << 0.0 << 1;
    QTest::newRow("poor gauge ground reads high") << "ground-track-high" << 30.0 << 1;
    QTest::newRow("ohms in the feed do nothing") << "feed-wire-high" << 30.0 << 0;
  }
  void signs_of_single_faults() {
    QFETCH(QString, fault);
    QFETCH(double, severity);
    QFETCH(int, sign);
    const GaugeCircuit circuit = *GaugeCircuit::make(test::shuntedFacts());
    const double off = needleWith(circuit, fault.toStdString(), severity).place - right(circuit);
    if (sign == 0) QVERIFY(std::abs(off) < 0.03);
    else QVERIFY2(off * sign > 0.03, qPrintable(QString("%1 of the dial").arg(off)));
  }

  void the_lamps_current_in_a_poor_ground_reads_hot_and_more_than_its_ohms_do() {
    const GaugeCircuit circuit = *GaugeCircuit::make(test::crossedFacts());
    const double dark = needleWith(circuit, "cluster-ground-poor", 1).place;
    const double lit = needleWith(circuit, "cluster-ground-poor", 1, {{Part::lamps, kLampOhms}}).place;
    QVERIFY(std::abs(dark - right(circuit)) < 0.03);
    QVERIFY(lit - dark > 0.1);
  }

  void a_regulator_stuck_or_ungrounded_reads_hot_on_every_gauge_and_a_dead_one_cold() {
    const GaugeCircuit circuit = *GaugeCircuit::make(test::bimetalFacts());
    const FaultBook book = *usualFaults();
    for (const auto& [code, severity, hot] : {std::tuple{"regulator-closed", 0.05, true},
                                              {"regulator-case", kOpen, true},
                                              {"regulator-dead", kOpen, false}}) {
      const Condition condition = with(circuit.healthy(), book.faults[*book.faultWith(code)], severity);
      const auto solution = *solve(circuit.network(condition));
      const double place = circuit.needle(condition, solution).place;
      const double other = circuit.otherNeedle(solution).place;
      QVERIFY(hot ? place > 1 && other > 1 : place < 0.05 && other < 0.05);
    }
  }

  // A lead grounded with the key on and a needle that does not move from the cold end: gauge, feed or lead, not the
  // sender.
  void a_grounded_lead_that_moves_nothing_clears_the_sender() {
    for (const CircuitFacts& facts : {test::crossedFacts(), test::bimetalFacts()}) {
      const Predictions predictions = test::predictionsOf(facts);
      const auto test = *predictions.tests().testWith("ground-lead");
      const std::array seen{Answer{test, 3}};
      QVERIFY(groupShare(predictions, seen, {"wrong-family", "sender", "engine-ground", "not-the-gauge"}) < 0.05);
    }
  }

  // The needle goes past hot: sender or its ground, not gauge, feed or lead.
  void a_grounded_lead_that_drives_the_needle_hot_clears_gauge_feed_and_lead() {
    const Predictions predictions = test::predictionsOf(test::crossedFacts());
    const auto test = *predictions.tests().testWith("ground-lead");
    const std::array seen{Answer{test, 2}};
    const double before = groupShare(predictions, {}, {"movement", "feed", "lead-to-chassis", "board"});
    const double after = groupShare(predictions, seen, {"movement", "feed", "lead-to-chassis", "board"});
    QVERIFY2(after < 0.05 && after < before / 2.5, qPrintable(QString("%1 %2").arg(before).arg(after)));
    const Posterior posterior = *weigh(predictions, Symptom::low, seen);
    for (const char* open : {"lead-open", "sender-track-open", "feed-coil-open", "fuse-open"})
      for (const Suspect& s : posterior.faults)
        if (predictions.faults().faults[s.fault].code == open) QVERIFY(s.probability < 0.01);
  }

  void what_cannot_be_is_refused() {
    CircuitFacts facts = test::crossedFacts();
    facts.feedShunt = ohms(80);
    QVERIFY(!GaugeCircuit::make(facts).has_value());
    facts = test::crossedFacts();
    facts.running = celsius(200);
    QVERIFY(!GaugeCircuit::make(facts).has_value());
    facts = test::crossedFacts();
    facts.supply = volts(3);
    QVERIFY(!GaugeCircuit::make(facts).has_value());
  }

  void a_gauge_of_which_only_the_family_is_known_still_makes_a_circuit_and_says_so() {
    CircuitFacts facts = test::crossedFacts();
    facts.gauge = *gauge::Gauge::trueForFamily(facts.gauge.dial(), facts.gauge.family());
    const GaugeCircuit circuit = *GaugeCircuit::make(facts);
    QVERIFY(!circuit.findings().empty());
    QVERIFY(std::abs(needleWith(circuit, circuit.healthy()).place - right(circuit)) < 0.03);
    QVERIFY(needleWith(circuit, "lead-to-chassis", 0).place > 1);
    QVERIFY(needleWith(circuit, "lead-open", kOpen).place < 0.05);
  }

 private:
  static double groupShare(const Predictions& predictions, std::span<const Answer> seen,
                           const std::vector<std::string>& groups) {
    const Posterior posterior = *weigh(predictions, Symptom::low, seen);
    double share = 0;
    for (std::size_t c = 0; c < posterior.cases.size(); ++c) {
      const Case& what = predictions.cases()[c];
      const std::string& group = predictions.faults().faults[what.faults.front()].group;
      if (what.faults.size() == 1 && std::find(groups.begin(), groups.end(), group) != groups.end())
        share += posterior.cases[c];
    }
    return share;
  }
};

QTEST_APPLESS_MAIN(TestSigns)
#include "tst_signs.moc"
