#include "reference_threads.h"

#include <rapidcheck.h>
#include <QTest>

using namespace ohmkin;
using namespace ohmkin::joint;

namespace {

Thread any(double pitch, double diameter, int flank, bool tapered) {
  return {
      "a", flank == 55 ? ThreadForm::bspt : ThreadForm::npt, flank, millimetres(pitch), millimetres(diameter), tapered,
      ""};
}

rc::Gen<Thread> threads() {
  return rc::gen::map(rc::gen::tuple(rc::gen::inRange(70, 200), rc::gen::inRange(800, 2400), rc::gen::element(55, 60),
                                     rc::gen::arbitrary<bool>()),
                      [](const auto& t) {
                        return any(std::get<0>(t) / 100.0, std::get<1>(t) / 100.0, std::get<2>(t), std::get<3>(t));
                      });
}

}  // namespace

/// Against ASME B1.20.1, ISO 7-1, ISO 724 and the unified series; values and provenance in tests/data/threads.csv.
class TestThread : public QObject {
  Q_OBJECT
 private slots:
  void every_published_look_alike_is_told_apart_data() {
    QTest::addColumn<QString>("a");
    QTest::addColumn<QString>("b");
    QTest::addColumn<double>("pitchOverTen");
    QTest::addColumn<double>("diameter");
    QTest::addColumn<int>("flank");
    const test::ReferenceTable pairs("thread-lookalikes.csv");
    for (std::size_t i = 0; i < pairs.size(); ++i) {
      const QString a = QString::fromStdString(pairs.text(i, "a"));
      const QString b = QString::fromStdString(pairs.text(i, "b"));
      QTest::addRow("%s and %s", qPrintable(a), qPrintable(b))
          << a << b << pairs.number(i, "error_over_10_threads_mm") << pairs.number(i, "diameter_diff_mm")
          << static_cast<int>(pairs.number(i, "angle_a_deg") - pairs.number(i, "angle_b_deg"));
    }
  }

  void every_published_look_alike_is_told_apart() {
    QFETCH(QString, a);
    QFETCH(QString, b);
    QFETCH(double, pitchOverTen);
    QFETCH(double, diameter);
    QFETCH(int, flank);
    const auto all = test::referenceThreads();
    const Thread& one = all.at(a.toStdString());
    const Thread& other = all.at(b.toStdString());

    const ThreadComparison c = compare(other, one);
    QCOMPARE(c.fit, ThreadFit::looksAlikeButDoesNot);
    QCOMPARE(compare(one, other).fit, ThreadFit::looksAlikeButDoesNot);
    QVERIFY(std::abs(std::abs(inMillimetres(c.pitchErrorOver(10))) - std::abs(pitchOverTen)) <
            0.006);  // printed to 0.01 mm
    QVERIFY(std::abs(inMillimetres(c.diameterDifference) - diameter) < 0.0015);
    QCOMPARE(c.flankDifference, flank);

    const Finding warning = threadFinding(other, one, "a port");
    QCOMPARE(warning.severity, Severity::warning);
    QVERIFY(warning.sentence.find("seem to screw together, but") != std::string::npos);
    QVERIFY(warning.sentence.find(one.designation) != std::string::npos);
    QVERIFY(warning.sentence.find(other.designation) != std::string::npos);
  }

  void half_inch_pairs_differ_only_by_flank_and_diameter() {  // ASME B1.20.1 and ISO 7-1: both 14 threads an inch
    const auto all = test::referenceThreads();
    const std::string said = threadFinding(all.at("R1/2"), all.at("1/2-14 NPT"), "").sentence;
    QVERIFY(said.find("60° and 55°") != std::string::npos);
    QVERIFY(said.find("0.27 mm larger") != std::string::npos);
    QVERIFY(said.find("pitch") == std::string::npos);
  }

  void clearly_different_sizes_are_not_called_alike_data() {
    QTest::addColumn<QString>("port");
    QTest::addColumn<QString>("sender");
    QTest::addColumn<int>("fit");
    const auto row = [](const char* port, const char* sender, ThreadFit fit) {
      QTest::addRow("%s into %s", sender, port) << QString(port) << QString(sender) << static_cast<int>(fit);
    };
    row("1/2-14 NPT", "3/8-18 NPT", ThreadFit::needsBushing);
    row("3/8-18 NPT", "1/4-18 NPT", ThreadFit::needsBushing);
    row("1/4-18 NPT", "1/8-27 NPT", ThreadFit::needsBushing);
    row("1/2-14 NPT", "1/8-27 NPT", ThreadFit::needsBushing);
    row("R1/2", "R1/4", ThreadFit::needsBushing);
    row("M16x1.5", "M12x1.5", ThreadFit::needsBushing);
    row("1/2-14 NPT", "M14x1.5", ThreadFit::needsBushing);
    row("3/8-18 NPT", "1/2-14 NPT", ThreadFit::doesNotFit);
    row("1/8-27 NPT", "3/8-18 NPT", ThreadFit::doesNotFit);
    row("M10x1", "M12x1.5", ThreadFit::doesNotFit);
    row("M12x1.5", "M14x1.5", ThreadFit::doesNotFit);
    row("M16x1.5", "M14x1.5", ThreadFit::doesNotFit);  // 14.4 mm bore: no wall left for a bushing
    row("M16x1.5", "R1/2", ThreadFit::doesNotFit);
    row("R3/8", "1/2-14 NPT", ThreadFit::doesNotFit);
  }

  void clearly_different_sizes_are_not_called_alike() {
    QFETCH(QString, port);
    QFETCH(QString, sender);
    QFETCH(int, fit);
    const auto all = test::referenceThreads();
    QCOMPARE(static_cast<int>(compare(all.at(port.toStdString()), all.at(sender.toStdString())).fit), fit);
  }

  void each_thread_fits_its_own_and_no_other_of_the_table() {
    const auto all = test::referenceThreads();
    for (const auto& [a, one] : all)
      for (const auto& [b, other] : all) QCOMPARE(compare(one, other).fit == ThreadFit::fits, a == b);
  }

  void engaged_threads_are_those_of_the_pipe_standard() {  // ASME B1.20.1: L2 in threads
    const test::ReferenceTable table("threads.csv");
    int seen = 0;
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (table.blank(i, "L2_threads")) continue;
      QVERIFY(std::abs(table.number(i, "L2_threads") - kEngagedThreads) < 0.6);
      ++seen;
    }
    QCOMPARE(seen, 4);
  }

  void whitworth_taper_seals_in_its_parallel_port_and_not_the_other_way() {  // ISO 7-1: R joins Rc and Rp
    const Thread male = test::referenceThreads().at("R1/4");
    Thread parallel = male;
    parallel.designation = "Rp1/4";
    parallel.tapered = false;
    QCOMPARE(compare(parallel, male).fit, ThreadFit::fits);
    QCOMPARE(compare(male, parallel).fit, ThreadFit::looksAlikeButDoesNot);
    QVERIFY(threadFinding(male, parallel, "").sentence.find("one is tapered, the other parallel") != std::string::npos);
  }

  void comparing_is_symmetric_but_for_bushings() {
    QVERIFY(rc::check("a fit or a look-alike does not depend on which is the port", [] {
      const Thread a = *threads();
      const Thread b = *threads();
      const ThreadFit there = compare(a, b).fit;
      const ThreadFit back = compare(b, a).fit;
      const bool whitworthTaper =
          a.flankAngle == 55 && b.flankAngle == 55 && a.tapered != b.tapered;  // joins one way only
      if (!whitworthTaper) {
        RC_ASSERT((there == ThreadFit::fits) == (back == ThreadFit::fits));
        RC_ASSERT((there == ThreadFit::looksAlikeButDoesNot) == (back == ThreadFit::looksAlikeButDoesNot));
      }
      RC_ASSERT(!(there == ThreadFit::needsBushing && back == ThreadFit::needsBushing));
      RC_ASSERT(compare(a, a).fit == ThreadFit::fits);
    }));
  }
};

QTEST_APPLESS_MAIN(TestThread)
#include "tst_thread.moc"
