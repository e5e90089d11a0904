#include "demo_catalogue.h"

#include <workflow/deciding_look.h>
#include <workflow/match.h>
#include <QTest>
#include <cmath>
#include <map>
#include <numbers>
#include <random>

using namespace ohmkin;
using workflow::ColdOhms;
using workflow::Possibility;
using workflow::Question;
using workflow::Unknowns;

namespace {

Possibility way(double weight, std::string act, std::string terminal, std::string inHand = {}) {
  return {weight, std::move(act), {}, {}, {}, std::move(terminal), std::move(inHand)};
}

double seeTerminal(const std::vector<Possibility>& ways) {
  return workflow::gainOfSeeing(ways, [](const Possibility& w) { return std::string_view(w.terminal); });
}

bool near(double a, double b, double tolerance) { return std::abs(a - b) <= tolerance; }

/// Another way to the same: readings drawn at random, for each the bits by which it raises what is then known of the
/// act (log2 of posterior over prior), averaged. Densities, no steps.
double drawn(const Unknowns& unknowns, int draws) {
  std::mt19937 random(20);
  std::map<std::string, double> prior;
  std::vector<double> weights;
  for (const Possibility& w : unknowns.ways) {
    prior[w.act] += w.weight;
    weights.push_back(w.weight);
  }
  std::discrete_distribution<std::size_t> pick(weights.begin(), weights.end());
  const auto coldOf = [&](const Possibility& w) -> const ColdOhms& {
    return *std::find_if(unknowns.cold.begin(), unknowns.cold.end(),
                         [&](const ColdOhms& cold) { return cold.family == w.inHand; });
  };
  double bits = 0;
  for (int i = 0; i < draws; ++i) {
    const Possibility& truth = unknowns.ways[pick(random)];
    const double x = std::normal_distribution(coldOf(truth).lnOhms, coldOf(truth).spread)(random);
    std::map<std::string, double> after;
    double total = 0;
    for (const Possibility& w : unknowns.ways) {
      const ColdOhms& cold = coldOf(w);
      const double z = (x - cold.lnOhms) / cold.spread;
      const double density = w.weight * std::exp(-z * z / 2) / cold.spread;
      after[w.act] += density;
      total += density;
    }
    bits += std::log2(after[truth.act] / total / prior[truth.act]);
  }
  return bits / draws;
}

}  // namespace

class TestDecidingLook : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  catalog::Catalogue catalogue_ = demo_.open();

  workflow::Answer ask(const Question& question) {
    const auto answer = workflow::match(catalogue_, question);
    if (!answer) qFatal("%s", answer.error().sentence().c_str());
    return *answer;
  }
  static Question utility() {
    Question question;
    question.line = "ridgeway utility";
    question.year = ModelYear{1968};
    question.casting = "30418";
    question.terminal = "blade 6.3 mm";
    return question;
  }

 private slots:
  void what_a_look_gains_is_worked_by_hand() {
    // Shannon 1948: mutual information. H(0.5) = 1; H(0.75) = 0.811278; one outcome settles, the other leaves even odds
    // in half of all cases: 0.811278 − 0.5.
    QVERIFY(near(seeTerminal({way(0.5, "X", "a"), way(0.5, "Y", "b")}), 1, 1e-12));
    QVERIFY(near(seeTerminal({way(0.5, "X", "a"), way(0.25, "Y", "b"), way(0.25, "X", "b")}), 0.3112781245, 1e-9));
    QVERIFY(near(seeTerminal({way(0.25, "X", "a"), way(0.25, "Y", "a"), way(0.25, "X", "b"), way(0.25, "Y", "b")}), 0,
                 1e-12));
    QVERIFY(near(seeTerminal({way(0.5, "X", "a"), way(0.5, "X", "b")}), 0, 1e-12));  // whatever is seen, X is done
  }
  void where_there_is_nothing_to_see_nothing_is_learnt() {
    // Half of all cases are blind and want X: they show a and b evenly, as the others do. So a (half of all) is X for
    // certain, b (the other half) X or Y at even odds: 0.811278 − 0.5 by hand.
    const std::vector<Possibility> ways{way(0.5, "X", ""), way(0.25, "X", "a"), way(0.25, "Y", "b")};
    QVERIFY(near(seeTerminal(ways), 0.3112781245, 1e-9));
  }
  void cold_ohms_agree_with_readings_drawn_at_random() {
    for (const double apart : {0.05, 0.1, 0.2, 0.6}) {
      Unknowns unknowns;
      unknowns.cold = {
          {"A", std::log(318), 0.05}, {"B", std::log(318) + apart, 0.06}, {"C", std::log(318) - apart, 0.05}};
      unknowns.ways = {way(0.4, "keep", "", "A"), way(0.3, "X", "", "B"), way(0.1, "X", "", "C"),
                       way(0.2, "Y", "", "C")};
      const double drawnBits = drawn(unknowns, 200'000);
      QVERIFY2(near(workflow::gainOfColdOhms(unknowns), drawnBits, 0.012),
               qPrintable(QString("%1 against %2").arg(workflow::gainOfColdOhms(unknowns)).arg(drawnBits)));
    }
  }
  void cold_ohms_far_apart_settle_all_and_alike_ones_nothing() {
    Unknowns unknowns;
    unknowns.cold = {{"A", 5, 0.05}, {"B", 7, 0.05}};
    unknowns.ways = {way(0.5, "keep", "", "A"), way(0.5, "X", "", "B")};
    QVERIFY(near(workflow::gainOfColdOhms(unknowns), 1, 1e-6));
    unknowns.cold[1].lnOhms = 5;
    QVERIFY(near(workflow::gainOfColdOhms(unknowns), 0, 1e-6));
  }
  void two_clusters_with_nothing_in_common_are_one_bit() {
    // A lamp wants no sender, a gauge wants one: even odds, so 1 bit whatever else is open.
    const auto answer = ask(utility());
    QCOMPARE(answer.branches.size(), std::size_t{2});
    QCOMPARE(answer.look->field, std::string("cluster"));
    QVERIFY(near(answer.look->gain, 1, 1e-9));
  }
  void an_unknown_gauge_gains_the_entropy_of_what_could_be_handed_over() {
    Question question;
    question.casting = "30418";
    const auto answer = ask(question);
    // Counted here from the answer itself: families by their senders that screw in, each with a best part of its own.
    std::map<std::string, double> families;
    double all = 0;
    for (const auto& candidate : answer.branches.front().ranked) {
      if (candidate.kind != "variable sender" || candidate.family.empty()) continue;
      if (candidate.screw.state == workflow::JointState::cut) continue;
      families[candidate.family] += 1;
      all += 1;
    }
    double entropy = 0;
    for (const auto& [family, count] : families) entropy -= count / all * std::log2(count / all);
    QVERIFY(families.size() > 2);
    QCOMPARE(answer.look->field, std::string("gauge"));
    QVERIFY2(near(answer.look->gain, entropy, 1e-9), qPrintable(QString::number(answer.look->gain)));
  }
  void the_sender_in_the_head_is_measured_where_nothing_else_is_open() {
    Question question = utility();
    question.cluster = "gauge package";
    const auto answer = ask(question);
    QCOMPARE(answer.look->field, std::string("reading"));
    QVERIFY(answer.look->gain > 0 && answer.look->gain < 1);
    QVERIFY2(answer.look->because.find(workflow::kKeep) != std::string::npos, answer.look->because.c_str());
    question.readings.emplace_back(celsius(40), ohms(320));  // measured already
    const auto measured = ask(question);
    QVERIFY(!measured.look || measured.look->field != "reading");
  }
  void no_look_is_asked_for_where_none_would_change_anything() {
    Question question = utility();
    question.cluster = "standard";  // a lamp
    QVERIFY(!ask(question).look);
  }
};

QTEST_APPLESS_MAIN(TestDecidingLook)
#include "tst_deciding_look.moc"
