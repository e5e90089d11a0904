#include "reference_threads.h"

#include <joint/port.h>
#include <quantity/parse.h>
#include <QTest>
#include <algorithm>

using namespace ohmkin;
using namespace ohmkin::joint;

namespace {

Thread published(const char* designation) { return test::referenceThreads().at(designation); }

Port port(const char* thread) {
  return {"casting 1, front", published(thread), millimetres(14), millimetres(34), "demo"};
}

SenderBody senderOf(const char* thread, double reach) {
  SenderBody body;
  body.part = "S-1";
  body.thread = published(thread);
  body.reach = millimetres(reach);
  body.hex = millimetres(19);
  body.source = "demo sheet";
  return body;
}

const Bushing longBushing{"AD-1", "1/2-14 NPT", "3/8-18 NPT", millimetres(12), "demo"};
const Bushing shortBushing{"AD-2", "1/2-14 NPT", "3/8-18 NPT", millimetres(7), "demo"};

std::optional<Finding> said(const ScrewJudgement& judgement, const std::string& code) {
  const auto found = std::ranges::find(judgement.findings, code, &Finding::code);
  return found == judgement.findings.end() ? std::nullopt : std::optional(*found);
}

TorqueRange upTo(const char* torque) { return {*parseTorque(torque), *parseTorque(torque), "a sheet"}; }

}  // namespace

/// Threads from tests/data/threads.csv (published); the rest are worked examples of adding and taking away.
class TestPort : public QObject {
  Q_OBJECT
 private slots:
  void a_sender_of_the_ports_thread_goes_straight_in() {
    const auto judgement = judgeScrew(port("3/8-18 NPT"), senderOf("3/8-18 NPT", 25), {});
    QCOMPARE(judgement.fit, ScrewFit::fits);
    QVERIFY(judgement.bushing.empty());
    QVERIFY(said(judgement, "seals-on-thread").has_value());
    QVERIFY(said(judgement, "hex")->sentence.find("19 mm") != std::string::npos);
  }

  void the_bushing_that_loses_least_immersion_is_taken() {
    const auto judgement =
        judgeScrew(port("1/2-14 NPT"), senderOf("3/8-18 NPT", 25), std::vector{longBushing, shortBushing});
    QCOMPARE(judgement.fit, ScrewFit::withBushing);
    QCOMPARE(judgement.bushing, std::string("AD-2"));
    QCOMPARE(inMillimetres(*judgement.immersionLost), 7.0);
    QVERIFY(!said(judgement, "thread-looks-alike"));
  }

  void a_smaller_sender_without_a_known_bushing_does_not_fit() {
    const auto judgement = judgeScrew(port("1/2-14 NPT"), senderOf("1/4-18 NPT", 25), std::vector{shortBushing});
    QCOMPARE(judgement.fit, ScrewFit::doesNotFit);
    QCOMPARE(said(judgement, "bushing-not-known")->severity, Severity::refusal);
  }

  void a_look_alike_is_warned_of_and_judged_no_further() {
    const auto judgement = judgeScrew(port("1/2-14 NPT"), senderOf("R1/2", 25), {});
    QCOMPARE(judgement.fit, ScrewFit::looksAlike);
    QCOMPARE(judgement.findings.size(), std::size_t{1});
    QCOMPARE(judgement.findings.front().severity, Severity::warning);
  }

  void a_bushing_reaches_less_far() {  // 25 − 7 − 14 = 4 mm wet; with 12 lost −1: out of the coolant
    const Port p = port("1/2-14 NPT");
    const SenderBody s = senderOf("3/8-18 NPT", 25);
    QVERIFY(std::abs(inMillimetres(*immersion(p, s, millimetres(7))) - 4) < 1e-9);
    QVERIFY(!said(judgeScrew(p, s, std::vector{shortBushing}), "reach-too-short"));
    const auto dry = judgeScrew(p, s, std::vector{longBushing});
    QCOMPARE(dry.fit, ScrewFit::doesNotFit);  // out of the coolant it reads low, the dangerous way
    QCOMPARE(said(dry, "reach-too-short")->severity, Severity::refusal);
  }

  void too_long_a_sender_strikes_the_casting() {
    QVERIFY(!said(judgeScrew(port("3/8-18 NPT"), senderOf("3/8-18 NPT", 34), {}), "reach-too-long"));
    const auto judgement = judgeScrew(port("3/8-18 NPT"), senderOf("3/8-18 NPT", 36.5), {});
    QCOMPARE(judgement.fit, ScrewFit::doesNotFit);
    QCOMPARE(said(judgement, "reach-too-long")->severity, Severity::refusal);
    QVERIFY(said(judgement, "reach-too-long")->sentence.find("2.5 mm more") != std::string::npos);
  }

  void unknown_lengths_and_threads_are_not_wrong() {
    Port blank = port("3/8-18 NPT");
    blank.depth.reset();
    blank.longestReach.reset();
    QCOMPARE(judgeScrew(blank, senderOf("3/8-18 NPT", 99), {}).fit, ScrewFit::fits);
    QVERIFY(!immersion(blank, senderOf("3/8-18 NPT", 99), millimetres(0)));
    blank.thread.reset();
    const auto judgement = judgeScrew(blank, senderOf("3/8-18 NPT", 25), {});
    QCOMPARE(judgement.fit, ScrewFit::notSeen);
    QCOMPARE(judgement.findings.front().severity, Severity::note);
  }

  void a_parallel_thread_wants_a_washer() {
    const auto judgement = judgeScrew(port("M14x1.5"), senderOf("M14x1.5", 25), {});
    QCOMPARE(said(judgement, "needs-washer")->severity, Severity::caution);
    QVERIFY(!said(judgement, "seals-on-thread"));
  }

  void sealant_is_spoken_of_only_where_the_thread_carries_the_ground() {
    SenderBody s = senderOf("3/8-18 NPT", 25);
    QCOMPARE(said(judgeScrew(port("3/8-18 NPT"), s, {}), "sealant-on-ground")->severity, Severity::caution);
    s.groundsThroughCase = false;
    QVERIFY(!said(judgeScrew(port("3/8-18 NPT"), s, {}), "sealant-on-ground"));
  }

  void twenty_pound_feet_are_too_much_for_a_small_taper_thread() {  // common practice, no source
    const Finding finding = torqueFinding(published("1/8-27 NPT"), upTo("20 lbf·ft"));
    QCOMPARE(finding.code, std::string("torque-too-much"));
    QCOMPARE(finding.severity, Severity::warning);
    QVERIFY(finding.sentence.find("27 N·m") != std::string::npos);  // 27.1 by NIST SP 811, B.8
    QCOMPARE(torqueFinding(published("1/8-27 NPT"), upTo("12 N·m")).severity, Severity::note);
    QCOMPARE(torqueFinding(published("1/2-14 NPT"), upTo("20 lbf·ft")).severity, Severity::note);
    QCOMPARE(torqueFinding(published("M14x1.5"), upTo("20 lbf·ft")).severity, Severity::note);
  }

  void twenty_pound_feet_are_27_1_newton_metres() {  // NIST SP 811 (2008) B.8: 1 lbf·ft = 1.355 818 N·m
    QVERIFY(std::abs(inNewtonMetres(upTo("20 lbf·ft").high) - 27.1) < 0.05);
    const DisplayUnits feet{.temperature = TemperatureUnit::celsius, .torque = TorqueUnit::poundFoot};
    QVERIFY(torqueFinding(published("1/8-27 NPT"), upTo("27.1 N·m"), feet).sentence.find("20 lbf·ft") !=
            std::string::npos);
  }

  void torque_carries_whose_figure_it_is() {
    SenderBody s = senderOf("M14x1.5", 25);
    s.torqueLow = newtonMetres(15);
    s.torqueHigh = newtonMetres(20);
    const auto judgement = judgeScrew(port("M14x1.5"), s, {});
    QCOMPARE(said(judgement, "torque")->source, std::string("demo sheet"));
    QVERIFY(said(judgement, "torque")->sentence.find("15 N·m to 20 N·m") != std::string::npos);
  }
};

QTEST_APPLESS_MAIN(TestPort)
#include "tst_port.moc"
