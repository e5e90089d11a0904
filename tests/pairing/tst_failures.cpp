#include <pairing/failures.h>
#include <pairing/part_loads.h>
#include <pairing/trim_proposal.h>
#include <QTest>
#include <algorithm>
#include "invented_pairs.h"

using namespace ohmkin;
using namespace ohmkin::pairing;
using namespace ohmkin::test;

namespace {

const Failure& failureOf(const TrimProposal& proposal, const char* part, FailureMode mode) {
  return *std::find_if(proposal.failures.begin(), proposal.failures.end(),
                       [&](const Failure& f) { return f.mode == mode && f.part.starts_with(part); });
}

bool says(const TrimProposal& proposal, const char* code) {
  return std::any_of(proposal.findings.begin(), proposal.findings.end(),
                     [&](const Finding& f) { return f.code == code; });
}

/// Reads low: more ohms than the gauge expects, warm.
TrimProposal repairOfALowReadingPair() {
  return judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(1000, 90), TrimNetwork::parallel(ohms(330)),
                   band(80, 115))
      .value();
}

/// Reads high: fewer ohms, and a resistor in series brings it down.
TrimProposal repairOfAHighReadingPair() {
  return judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(880, 56), TrimNetwork::series(ohms(13)), band(80, 115))
      .value();
}

}  // namespace

class FailuresTest : public QObject {
  Q_OBJECT
 private slots:
  // Common practice, no source: lead grounded, the needle goes past hot; lead open, it lies at the cold end.
  void leadGroundedGoesPastHotAndLeadOpenLiesCold() {
    const TrimProposal proposal = repairOfAHighReadingPair();
    const Failure& open = failureOf(proposal, "lead", FailureMode::leadOpens);
    QCOMPARE(open.atHotMark.where, gauge::Where::belowTheMarks);
    QVERIFY(open.noticed);
    const TrimProposal bare =
        judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(900, 70), {}, band(80, 115)).value();
    QCOMPARE(failureOf(bare, "lead", FailureMode::leadGrounded).atHotMark.where, gauge::Where::pastTheMarks);
    QCOMPARE(failureOf(bare, "lead", FailureMode::leadOpens).atHotMark.where, gauge::Where::belowTheMarks);
  }

  // The rule: a parallel repair of a low-reading pair fails silently and is no permanent repair.
  void parallelRepairThatOpensUnnoticedIsRefusedAsPermanent() {
    const TrimProposal proposal = repairOfALowReadingPair();
    const Failure& opens = failureOf(proposal, "parallel", FailureMode::opens);
    QVERIFY(opens.readsLow && !opens.noticed);
    QCOMPARE(opens.severity, Severity::warning);
    QVERIFY(forbidsStaying(opens));
    QVERIFY(!proposal.permanent);
    QVERIFY(says(proposal, "trim-fails-silently"));
    QVERIFY(opens.sentence.find("nobody notices") != std::string::npos);
  }

  void seriesRepairOfAHighReadingPairMayStay() {
    const TrimProposal proposal = repairOfAHighReadingPair();
    QVERIFY(proposal.withinLimits);
    QVERIFY(proposal.permanent);
    QVERIFY(failureOf(proposal, "series", FailureMode::opens).noticed);
    QVERIFY(!failureOf(proposal, "series", FailureMode::shorts).readsLow);  // back to reading high
  }

  void needleThatStandsStillOnTheMarksIsNotNoticedAndForbidden() {
    const TrimProposal proposal = judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(1500, 75),
                                            TrimNetwork::parallel(ohms(220)), band(80, 115))
                                      .value();
    const Failure& open = failureOf(proposal, "lead", FailureMode::leadOpens);
    QCOMPARE(open.atHotMark.where, gauge::Where::onTheMarks);
    QVERIFY(std::abs(inKelvin(open.atHotMark.shown) - inKelvin(open.atBandLow.shown)) < 1e-9);
    QVERIFY(forbidsStaying(open));
  }

  void lateHotMarkIsRefusedTrimmedOrNot() {
    const TrimProposal proposal =
        judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(900, 70), TrimNetwork::series(ohms(20)), band(80, 115))
            .value();
    QVERIFY(!proposal.withinLimits && !proposal.permanent);
    QVERIFY(says(proposal, "trim-late"));
  }

  void everyPartHasEveryFailureOnce() {
    const TrimProposal proposal = judgeTrim(gaugeFor(betaThrough(900, 70)), betaThrough(1500, 75),
                                            TrimNetwork::parallelThenSeries(ohms(470), ohms(8.2)), band(80, 115))
                                      .value();
    QCOMPARE(proposal.failures.size(), std::size_t(4 + 4 + 2));
    for (const Failure& failure : proposal.failures) QVERIFY(!failure.sentence.empty());
  }

  void feedResistorThatOpensLeavesTheBareGauge() {
    const auto family = betaThrough(900, 70);
    const auto gauge = coilGaugeFor(family);
    const auto sender = betaThrough(800, 60);
    const TrimProposal proposal =
        judgeTrim(gauge, sender, TrimNetwork::feedToSender(ohms(1500)), band(80, 115)).value();
    const Failure& opens = failureOf(proposal, "feed", FailureMode::opens);
    QVERIFY(
        std::abs(inKelvin(opens.atHotMark.shown) - inKelvin(gauge.indicated(*sender.resistance(celsius(115))).shown)) <
        3);  // the matched pair's own place is near
    QVERIFY(says(proposal, "trim-needs-fuse"));
  }

  // Joule's law by hand: 15 V straight across; (R ∥ 470) + 10 with the sender open puts 15·470/480 V on the parallel
  // one.
  void loadsAreThoseOfAPostShortedToTheFeed() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto series = partLoads(gauge, TrimNetwork::series(ohms(10)));
    QCOMPARE(series.size(), std::size_t(1));
    QVERIFY(std::abs(inWatts(series[0].shortedToFeed) - 22.5) < 1e-9);
    QVERIFY(!series[0].working);
    const auto both = partLoads(gauge, TrimNetwork::parallelThenSeries(ohms(470), ohms(10)));
    QVERIFY(std::abs(inWatts(both[0].shortedToFeed) - 22.5) < 1e-9);
    const double across = 15.0 * 470 / 480;
    QVERIFY(std::abs(inWatts(both[1].shortedToFeed) - across * across / 470) < 1e-9);
    const auto other = partLoads(gauge, TrimNetwork::seriesThenParallel(ohms(10), ohms(470)));
    QVERIFY(std::abs(inWatts(other[1].shortedToFeed) - 225.0 / 470) < 1e-9);
  }

  // By hand: coils 70 and 130 Ω at 15 V are 9.75 V behind 45.5 Ω; 13 Ω in series with the lead grounded.
  void workingLoadIsThatBehindTheCoils() {
    const auto load = partLoads(coilGaugeFor(betaThrough(900, 70)), TrimNetwork::series(ohms(13)));
    const double current = 9.75 / (45.5 + 13);
    QVERIFY(load[0].working && std::abs(inWatts(*load[0].working) - current * current * 13) < 1e-9);
  }

  // Straight derating from 70 to 155 °C leaves 50/85 at 105 °C (usual for film resistors; from memory).
  void ratingsAreDeratedForABackOfADashInTheSun() {
    QCOMPARE(inWatts(ratingFor(watts(0.14))), 0.25);
    QCOMPARE(inWatts(ratingFor(watts(0.15))), 0.5);  // 0.255 W needed
    QVERIFY(inWatts(ratingFor(watts(40))) > 50);
  }

  void toleranceWorstCaseIsTheWorstOfTheCorners() {
    const auto gauge = gaugeFor(betaThrough(900, 70));
    const auto sender = betaThrough(1500, 75);
    const auto network = TrimNetwork::parallelThenSeries(ohms(470), ohms(8.2));
    const TrimProposal proposal = judgeTrim(gauge, sender, network, band(80, 115)).value();
    QCOMPARE(proposal.tolerances.size(), std::size_t(2));
    double lowest = 1e9;
    double highest = -1e9;
    for (const double p : {0.95, 1.0, 1.05})
      for (const double s : {0.95, 1.0, 1.05}) {
        const auto table =
            errorTable(gauge, sender, TrimNetwork::parallelThenSeries(ohms(470 * p), ohms(8.2 * s)), band(80, 115));
        lowest = std::min(lowest, inKelvin(table->low.error));
        highest = std::max(highest, inKelvin(table->high.error));
      }
    QVERIFY(std::abs(inKelvin(proposal.tolerances[1].low) - lowest) < 1e-6);
    QVERIFY(std::abs(inKelvin(proposal.tolerances[1].high) - highest) < 1e-6);
  }

  void pairThatNoResistorHelpsIsSaidSo() {
    const auto family = betaThrough(900, 70);
    const auto proposal = proposeTrim(gaugeFor(family), family, band(80, 115));
    QVERIFY(!proposal);
    QCOMPARE(QString::fromStdString(proposal.error().code), QString("no-trim-helps"));
  }

  void hotMarkComesBeforeTheLeastErrorOverTheBand() {
    std::size_t rescued = 0;
    for (unsigned i = 0; i < 60; ++i) {
      const RandomPair pair = randomPair(i);
      const auto proposal = proposeTrim(pair.gauge, pair.sender, pair.band);
      if (!proposal || !proposal->withinLimits) continue;
      const auto closest = judgeTrim(pair.gauge, pair.sender, proposal->search.best.network, pair.band);
      if (closest->withinLimits) continue;
      ++rescued;
      QVERIFY(says(*proposal, "better-trim-refused"));
      QVERIFY(std::get<Reaches>(proposal->after.hot).late <= kelvins(3));
    }
    QVERIFY(rescued > 0);
  }

  void aTrimThatMayStayIsPreferredToACloserOneThatMayNot() {
    for (unsigned i = 0; i < 60; ++i) {
      const RandomPair pair = randomPair(i);
      const auto proposal = proposeTrim(pair.gauge, pair.sender, pair.band);
      if (!proposal) continue;
      if (proposal->permanent) {
        QVERIFY(proposal->withinLimits);
        QVERIFY(std::none_of(proposal->failures.begin(), proposal->failures.end(), forbidsStaying));
      } else if (!proposal->withinLimits) {
        // The optimum itself, or one with fewer parts that is as good but for 0.05 K a part.
        const int spared = proposal->search.best.network.parts() - proposal->network.parts();
        QVERIFY(proposal->network == proposal->search.best.network || spared > 0);
        QVERIFY(proposal->weightedWorst <= proposal->search.best.weightedWorst + kelvins(0.05 * spared + 1e-9));
      }
      QVERIFY(proposal->weightedWorst > proposal->search.best.weightedWorst - kelvins(1e-9));
    }
  }
};

QTEST_APPLESS_MAIN(FailuresTest)
#include "tst_failures.moc"
