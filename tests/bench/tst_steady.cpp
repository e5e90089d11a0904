#include <bench/steady.h>
#include <rapidcheck.h>
#include <QTest>
#include <cmath>
#include <limits>
#include <random>
#include "said.h"

using namespace ohmkin;
using namespace ohmkin::bench;

namespace {

constexpr double kB = 3500;  // the sender's B-parameter

double ohmsAt(double celsiusAt) { return 100 * std::exp(kB * (1 / (celsiusAt + 273.15) - 1 / 333.15)); }

/// A bath taken to each temperature in turn: approached with a time constant, then held.
class Bath {
 public:
  explicit Bath(double start, double noise = 0) : temperature_(start), noise_(noise) {}
  Bath& ramp(double to, double seconds, double period = 5) {
    const double from = temperature_;
    for (double s = period; s <= seconds; s += period) row(from + (to - from) * s / seconds, period);
    return *this;
  }
  Bath& hold(double seconds, double period = 5) {
    for (double s = period; s <= seconds; s += period) row(temperature_, period);
    return *this;
  }
  Bath& overload(double period = 5) {
    time_ += period;
    log.push_back({time_, celsius(temperature_), std::nullopt});
    return *this;
  }
  Bath& pause(double seconds) {
    time_ += seconds;
    return *this;
  }
  std::vector<LogRow> log;

 private:
  void row(double t, double period) {
    time_ += period;
    temperature_ = t;
    log.push_back({time_, celsius(t), ohms(ohmsAt(t) * std::exp(noise_ * normal_(random_)))});
  }
  double temperature_;
  double noise_;
  double time_ = 0;
  std::mt19937 random_{11};
  std::normal_distribution<double> normal_;
};

}  // namespace

/// Logs made from a known bath: what was held must come out, and nothing else.
class TestSteady : public QObject {
  Q_OBJECT
 private slots:
  void held_temperatures_are_found_with_their_direction() {
    const auto log =
        Bath(20, 0.0005).hold(180).ramp(50, 600).hold(180).ramp(80, 600).hold(180).ramp(50, 900).hold(180).log;
    const auto points = steadyPoints(log);
    QVERIFY(points.has_value());
    QCOMPARE(points->size(), std::size_t{4});
    const std::array<double, 4> held{20, 50, 80, 50};
    for (std::size_t i = 0; i < 4; ++i) {
      const SteadyPoint& point = (*points)[i];
      QVERIFY2(std::abs(inCelsius(point.at) - held[i]) < 0.1, qPrintable(QString::number(inCelsius(point.at))));
      QVERIFY(std::abs(std::log(inOhms(point.ohms) / ohmsAt(held[i]))) < 0.003);
      QVERIFY(point.direction == (i < 3 ? Direction::heating : Direction::cooling));
      QVERIFY(point.rows >= 20);
    }
  }

  void a_log_that_is_never_still_has_no_points() {
    // 3 K a minute is 9 % of ohms a minute.
    QVERIFY(steadyPoints(Bath(20).ramp(95, 1500).log)->empty());
  }

  void half_a_percent_a_minute_divides_still_from_moving() {
    // At 60 °C a kelvin is 3.153 %; 0.4 % a minute is 0.127 K a minute, 0.6 % is 0.190 K.
    QVERIFY(!steadyPoints(Bath(60).ramp(60 - 0.127 * 3, 180).log)->empty());
    QVERIFY(steadyPoints(Bath(60).ramp(60 - 0.190 * 3, 180).log)->empty());
  }

  void slow_drift_is_cut_into_points_and_not_smeared_into_one() {
    const auto points = steadyPoints(Bath(60).ramp(61, 600).log);  // 0.1 K a minute for ten minutes: 3 % of ohms
    QVERIFY(points->size() >= 4 && points->size() <= 8);
    for (const SteadyPoint& point : *points) {
      QVERIFY(inKelvin(point.scatter) < 0.15);
      QVERIFY(point.direction == Direction::heating);
    }
  }

  void scatter_is_that_of_the_rows() {
    const auto points = steadyPoints(Bath(60, 0.002).hold(600).log);
    QVERIFY(!points->empty());
    QVERIFY2(std::abs(points->front().scatterLnOhms - 0.002) < 0.0005,
             qPrintable(QString::number(points->front().scatterLnOhms)));
    const Reading reading = points->front().reading(kelvins(0.3), 0.005);
    QVERIFY(std::abs(reading.uLnOhms - std::hypot(0.005, points->front().scatterLnOhms)) < 1e-12);
    QVERIFY(inKelvin(reading.u) >= 0.3);
  }

  void overload_and_long_gaps_end_a_dwell() {
    QCOMPARE(steadyPoints(Bath(60).hold(120).overload().hold(120).log)->size(), std::size_t{2});
    QCOMPARE(steadyPoints(Bath(60).hold(120).pause(900).hold(120).log)->size(), std::size_t{2});
    QVERIFY(steadyPoints(Bath(60).hold(40).overload().hold(40).log)->empty());
  }

  void a_slow_logger_needs_three_rows() {
    QCOMPARE(steadyPoints(Bath(60).hold(300, 60).log)->size(), std::size_t{1});
    QVERIFY(steadyPoints(Bath(60).hold(120, 60).log)->empty());
  }

  void points_do_not_overlap_and_do_not_depend_on_when_the_clock_was_started() {
    rc::check("shift of time; order and overlap", [] {
      Bath bath(*rc::gen::inRange(0, 90), 0.0005);
      const int legs = *rc::gen::inRange(1, 6);
      for (int i = 0; i < legs; ++i)
        bath.ramp(*rc::gen::inRange(0, 100), *rc::gen::inRange(60, 1200)).hold(*rc::gen::inRange(0, 300));
      const auto points = steadyPoints(bath.log);
      for (std::size_t i = 0; i < points->size(); ++i) {
        const SteadyPoint& p = (*points)[i];
        RC_ASSERT(p.firstRow < p.lastRow && p.lastRow < bath.log.size() && p.rows >= 3);
        RC_ASSERT(bath.log[p.lastRow].seconds - bath.log[p.firstRow].seconds >= 50);
        if (i > 0) RC_ASSERT((*points)[i - 1].lastRow < p.firstRow);
      }
      auto later = bath.log;
      for (LogRow& row : later) row.seconds += 4096;
      const auto again = steadyPoints(later);
      RC_ASSERT(again->size() == points->size());
      for (std::size_t i = 0; i < points->size(); ++i) RC_ASSERT((*again)[i].firstRow == (*points)[i].firstRow);
    });
  }

  void a_log_that_cannot_be_is_refused_with_its_row() {
    auto log = Bath(60).hold(60).log;
    log[5].seconds = 0;
    QCOMPARE(said::codeOf(steadyPoints(log)), QString("time-goes-back"));
    QCOMPARE(QString::fromStdString(steadyPoints(log).error().where), QString("row 6"));
    log = Bath(60).hold(60).log;
    log[2].ohms = ohms(-1);
    QCOMPARE(said::codeOf(steadyPoints(log)), QString("reading-ohms"));
    log[2].at = kelvin(std::numeric_limits<double>::quiet_NaN());
    QCOMPARE(said::codeOf(steadyPoints(log)), QString("reading-temperature"));
    QCOMPARE(said::codeOf(steadyPoints({}, {0, 60, 300})), QString("steady-options"));
    QVERIFY(steadyPoints({})->empty());
  }
};

QTEST_APPLESS_MAIN(TestSteady)
#include "tst_steady.moc"
