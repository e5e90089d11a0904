#include <pairing/verdict.h>
#include <QTest>
#include <algorithm>
#include "invented_pairs.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

const Finding* finding(const Verdict& verdict, const char* code) {
  const auto found =
      std::find_if(verdict.findings.begin(), verdict.findings.end(), [&](const Finding& f) { return f.code == code; });
  return found == verdict.findings.end() ? nullptr : &*found;
}

struct Case {
  curve::Curve sender;
  bool sameFamily = false;
  bool withTrim = true;
  Circumstances about;
};

Verdict verdictOf(const Case& given, const curve::Curve& family = betaThrough(900, 70)) {
  const auto gauge = gaugeFor(family);
  TrimOptions options;
  options.pair.sameFamily = given.sameFamily;
  const auto table = errorTable(gauge, given.sender, {}, band(80, 115), options.pair).value();
  std::optional<TrimProposal> trim;
  if (given.withTrim)
    if (auto proposal = proposeTrim(gauge, given.sender, band(80, 115), options)) trim = std::move(*proposal);
  return judge(table, trim, Limits{}, given.about);
}

curve::Curve known(const curve::Curve& curve, double standardUncertainty) {
  return curve::Curve::make(curve.model(), curve.established(), {}, standardUncertainty).value();
}

}  // namespace

class VerdictTest : public QObject {
  Q_OBJECT
 private slots:
  // The default limits: 3 K late, 6 K low, 8 K high, a judgement.
  void everyVerdictIsMetByAPairOfItsKind_data() {
    QTest::addColumn<double>("cold");
    QTest::addColumn<double>("hot");
    QTest::addColumn<bool>("same");
    QTest::addColumn<bool>("trim");
    QTest::addColumn<int>("expected");
    QTest::addColumn<QString>("code");
    QTest::newRow("own family") << 900.0 << 70.0 << true << true << int(Electrical::sameFamily) << "same-family";
    QTest::newRow("close") << 920.0 << 68.0 << false << true << int(Electrical::withinLimits) << "within-limits";
    QTest::newRow("reads high, resistor in series")
        << 800.0 << 50.0 << false << true << int(Electrical::trimmedWithinLimits) << "trimmed-within-limits";
    QTest::newRow("reads high, no resistor wanted")
        << 800.0 << 50.0 << false << false << int(Electrical::readsHigh) << "reads-high";
    QTest::newRow("late") << 1000.0 << 90.0 << false << true << int(Electrical::refused) << "hot-mark-late";
    QTest::newRow("on time but low before")
        << 2600.0 << 70.0 << false << false << int(Electrical::refused) << "reads-low";
  }
  void everyVerdictIsMetByAPairOfItsKind() {
    QFETCH(double, cold);
    QFETCH(double, hot);
    QFETCH(bool, same);
    QFETCH(bool, trim);
    QFETCH(int, expected);
    QFETCH(QString, code);
    const Verdict verdict = verdictOf({betaThrough(cold, hot), same, trim, {}});
    QVERIFY2(int(verdict.electrical) == expected, verdict.sentence.c_str());
    QVERIFY(finding(verdict, code.toUtf8().constData()) != nullptr);
    QVERIFY(!verdict.sentence.empty());
  }

  void lateHotMarkIsRefusedEvenWhereALouderTrimWouldHelp() {
    const Verdict verdict = verdictOf({betaThrough(1000, 90), false, true, {}});
    QCOMPARE(verdict.electrical, Electrical::refused);
    QVERIFY(finding(verdict, "trim-refused") != nullptr);  // a parallel resistor, opening unnoticed
  }

  void curvesNotKnownWellEnoughLeaveItUndecided() {
    const Verdict verdict =
        verdictOf({known(betaThrough(900, 71), 0.08), false, false, {}}, known(betaThrough(900, 70), 0.08));
    QCOMPARE(verdict.electrical, Electrical::undecided);
    QVERIFY(verdict.takeReadingAt);
    QVERIFY(finding(verdict, "limits-not-settled") != nullptr || finding(verdict, "hot-sign-not-settled") != nullptr);
  }

  void temperaturesNotStatedAndASignNotSettledAreUndecidedWithAReadingProposed() {
    Case given{known(betaThrough(900, 68), 0.05), false, true, {}};
    given.about.temperaturesStated = false;
    const Verdict verdict = verdictOf(given);
    QCOMPARE(verdict.electrical, Electrical::undecided);
    QCOMPARE(inCelsius(*verdict.takeReadingAt), 95.0);
    const Finding* why = finding(verdict, "hot-sign-not-settled");
    QVERIFY(why != nullptr && why->sentence.find("95 °C") != std::string::npos);
  }

  void toleranceOfTheSenderDoesNotChangeTheVerdict() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    for (const double tolerance : {0.0, 0.3}) {
      PairOptions options;
      options.inputs.senderTolerance = tolerance;
      const auto table = errorTable(gauge, betaThrough(920, 68), {}, band(80, 115), options).value();
      const Verdict verdict = judge(table, std::nullopt, {}, {});
      QCOMPARE(verdict.electrical, Electrical::withinLimits);
      QVERIFY(finding(verdict, "shared-uncertainty") != nullptr);  // told apart
    }
  }

  void needleThatFallsAsTheEngineWarmsIsRefused() {
    const Verdict verdict = verdictOf({risingThrough(70, 900), false, false, {}});
    QCOMPARE(verdict.electrical, Electrical::refused);
    QVERIFY(finding(verdict, "needle-backwards") != nullptr);
  }

  void waterThatBoilsBeforeTheMarkIsWarnedOf() {
    Case given{betaThrough(900, 70), true, false, {}};
    given.about.boiling = celsius(108);
    const Verdict low = verdictOf(given);
    const Finding* warning = finding(low, "water-boils-first");
    QVERIFY(warning != nullptr);
    QCOMPARE(warning->severity, Severity::warning);
    given.about.boiling = celsius(121);
    QVERIFY(finding(verdictOf(given), "water-boils-first") == nullptr);
  }

  void gravestFindingComesFirst() {
    for (const auto& sender : {betaThrough(1000, 90), betaThrough(920, 68), betaThrough(800, 50)}) {
      const Verdict verdict = verdictOf({sender, false, true, {}});
      QVERIFY(std::is_sorted(verdict.findings.begin(), verdict.findings.end(),
                             [](const Finding& a, const Finding& b) { return a.severity > b.severity; }));
    }
  }

  void fahrenheitIsSpokenWhereAskedFor() {
    Case given{betaThrough(1000, 90), false, false, {}};
    given.about.units.temperature = TemperatureUnit::fahrenheit;
    const Verdict verdict = verdictOf(given);
    QVERIFY(verdict.sentence.find("°F") != std::string::npos);
    QVERIFY(verdict.sentence.find("°C") == std::string::npos);
  }

  // The order of recommendation: same family, with pigtail, with bushing, other within limits, trimmed, high,
  // undecided, refused.
  void rankingFollowsTheDesign() {
    const RankKey order[] = {{rankOf(Electrical::sameFamily, false, false), 0, 5.0},
                             {rankOf(Electrical::sameFamily, true, false), 1, 0.0},
                             {rankOf(Electrical::sameFamily, false, true), 1, 0.0},
                             {rankOf(Electrical::withinLimits, false, false), 0, 1.0},
                             {rankOf(Electrical::withinLimits, false, false), 0, 2.0},
                             {rankOf(Electrical::withinLimits, true, false), 1, 1.0},
                             {rankOf(Electrical::trimmedWithinLimits, false, false), 1, 0.5},
                             {rankOf(Electrical::readsHigh, false, false), 0, 10.0},
                             {rankOf(Electrical::undecided, false, false), 0, 0.0},
                             {rankOf(Electrical::refused, false, false), 0, 0.0}};
    for (std::size_t i = 1; i < std::size(order); ++i) QVERIFY(order[i - 1] < order[i]);
    QCOMPARE(rankOf(Electrical::sameFamily, true, true), Rank::withBushing);
  }
};

QTEST_APPLESS_MAIN(VerdictTest)
#include "tst_verdict.moc"
