#include <ceres/ceres.h>
#include <gauge/fit_movement.h>
#include <QTest>
#include <limits>
#include <random>

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
constexpr double kRadian = 3.14159265358979323846 / 180;
const CrossedCoil kCoil{{55}, {-105}, ohms(88), {}, {}, {}};
const Bimetal kBimetal{{-42}, {50}, ohms(14), volts(5)};
const std::vector<double> kBox{10, 22, 47, 68, 100, 150, 220, 330, 680};

std::vector<BoxReading> taken(const Movement& movement, const std::vector<double>& box, double noise,
                              std::mt19937_64& random) {
  std::normal_distribution<double> off(0, 1);
  std::vector<BoxReading> readings;
  readings.reserve(box.size());
  for (const double r : box)
    readings.push_back(
        {ohms(r), {deflection(movement, ohms(r)).degrees + noise * off(random)}, noise > 0 ? noise : 0.5, Rests::free});
  return readings;
}

std::vector<BoxReading> exact(const Movement& movement, const std::vector<double>& box = kBox) {
  std::mt19937_64 random(1);
  return taken(movement, box, 0, random);
}

/// The law written once more, for Ceres to differentiate: the tests' own, not the product's.
struct CoilCost {
  BoxReading reading;
  template <class T>
  bool operator()(const T* p, T* residual) const {
    using std::atan2, std::cos, std::sin, std::exp;
    const T x = T(inOhms(reading.box)) * exp(-p[2]);
    const T delta = p[1] * kRadian;
    residual[0] =
        (p[0] + atan2(x * sin(delta), T(1) + x * cos(delta)) / kRadian - reading.needle.degrees) / reading.uncertainty;
    return true;
  }
};

struct BimetalCost {
  BoxReading reading;
  template <class T>
  bool operator()(const T* p, T* residual) const {
    using std::exp;
    const T share = T(1) / (T(1) + inOhms(reading.box) * exp(-p[2]));
    residual[0] = (p[0] + (p[1] - p[0]) * share * share - reading.needle.degrees) / reading.uncertainty;
    return true;
  }
};

struct ByCeres {
  std::array<double, 3> at;
  std::vector<double> covariance = std::vector<double>(9);
};

template <class Cost>
ByCeres byCeres(const std::vector<BoxReading>& readings, std::array<double, 3> start) {
  ByCeres out{start};
  ceres::Problem problem;
  for (const BoxReading& reading : readings)
    problem.AddResidualBlock(new ceres::AutoDiffCostFunction<Cost, 1, 3>(new Cost{reading}), nullptr, out.at.data());
  ceres::Solver::Options options;
  options.linear_solver_type = ceres::DENSE_QR;
  options.function_tolerance = options.gradient_tolerance = options.parameter_tolerance = 1e-15;
  options.max_num_iterations = 500;
  options.logging_type = ceres::SILENT;
  ceres::Solver::Summary summary;
  ceres::Solve(options, &problem, &summary);
  ceres::Covariance::Options how;
  how.algorithm_type = ceres::DENSE_SVD;
  ceres::Covariance covariance(how);
  const std::vector<std::pair<const double*, const double*>> blocks{{out.at.data(), out.at.data()}};
  covariance.Compute(blocks, &problem);
  covariance.GetCovarianceBlock(out.at.data(), out.at.data(), out.covariance.data());
  return out;
}

bool near(double a, double b, double relative) {
  return std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b));
}

bool sameCovariance(const std::vector<double>& a, const std::vector<double>& b, double scale) {
  for (std::size_t i = 0; i < 9; ++i) {
    const double size = scale * std::sqrt(b[(i / 3) * 4] * b[(i % 3) * 4]);
    if (std::abs(a[i] - scale * b[i]) > 1e-3 * size) return false;
  }
  return true;
}

std::string code(const Expected<MovementFit>& fit) { return fit ? std::string("taken") : fit.error().code; }

bool finds(const MovementFit& fit, const std::string& what) {
  return std::any_of(fit.findings.begin(), fit.findings.end(), [&](const Finding& f) { return f.code == what; });
}

}  // namespace

class TestFitMovement : public QObject {
  Q_OBJECT
 private slots:
  void exact_readings_give_the_crossed_coil_back() {
    const auto fit = fitCrossedCoil(exact(kCoil));
    QVERIFY(fit.has_value());
    const auto& coil = std::get<CrossedCoil>(fit->movement);
    QVERIFY(std::abs(coil.grounded.degrees - 55) < 1e-6);
    QVERIFY(std::abs(coil.sweep.degrees + 105) < 1e-6);
    QVERIFY(near(inOhms(coil.half), 88, 1e-8));
    QVERIFY(fit->chiSquare < 1e-12);
    QCOMPARE(fit->freedom, 6);
    QVERIFY(fit->findings.empty());
  }

  void exact_readings_give_the_bimetal_back() {
    const auto fit = fitBimetal(exact(kBimetal, {2, 5, 10, 20, 40, 80, kOpen}), volts(5));
    QVERIFY(fit.has_value());
    const auto& bimetal = std::get<Bimetal>(fit->movement);
    QVERIFY(std::abs(bimetal.rest.degrees + 42) < 1e-6);
    QVERIFY(std::abs(bimetal.grounded.degrees - 50) < 1e-6);
    QVERIFY(near(inOhms(bimetal.heater), 14, 1e-8));
  }

  void three_free_points_are_enough_for_a_crossed_coil_and_said_to_be_unchecked() {
    const auto fit = fitCrossedCoil(exact(kCoil, {30, 90, 300}));
    QVERIFY(fit.has_value());
    QVERIFY(near(inOhms(std::get<CrossedCoil>(fit->movement).half), 88, 1e-6));
    QCOMPARE(fit->freedom, 0);
    QVERIFY(finds(*fit, "fit-unchecked"));
  }

  // Oracle: Ceres Solver, automatic derivatives, its own covariance.
  void noisy_readings_fit_as_ceres_fits_them() {
    std::mt19937_64 random(1959);
    for (int i = 0; i < 100; ++i) {
      const auto readings = taken(kCoil, kBox, 0.8, random);
      const auto fit = fitCrossedCoil(readings);
      QVERIFY(fit.has_value());
      const ByCeres oracle = byCeres<CoilCost>(readings, {50, -100, std::log(80)});
      const CrossedCoil expected{{oracle.at[0]}, {oracle.at[1]}, ohms(std::exp(oracle.at[2])), {}, {}, {}};
      for (const double r : kBox)
        QVERIFY(std::abs((deflection(fit->movement, ohms(r)) - deflection(expected, ohms(r))).degrees) < 1e-5);
      QVERIFY(sameCovariance(fit->covariance, oracle.covariance, std::max(1.0, fit->chiSquare / fit->freedom)));
    }
  }

  void noisy_bimetal_readings_fit_as_ceres_fits_them() {
    std::mt19937_64 random(1959);
    for (int i = 0; i < 100; ++i) {
      const auto readings = taken(kBimetal, {2, 5, 10, 20, 40, 80}, 0.5, random);
      const auto fit = fitBimetal(readings, volts(5));
      QVERIFY(fit.has_value());
      const ByCeres oracle = byCeres<BimetalCost>(readings, {-40, 50, std::log(15)});
      const Bimetal expected{{oracle.at[0]}, {oracle.at[1]}, ohms(std::exp(oracle.at[2])), volts(5)};
      for (const double r : {2.0, 15.0, 80.0})
        QVERIFY(std::abs((deflection(fit->movement, ohms(r)) - deflection(expected, ohms(r))).degrees) < 1e-5);
      QVERIFY(sameCovariance(fit->covariance, oracle.covariance, std::max(1.0, fit->chiSquare / fit->freedom)));
    }
  }

  // Normal distribution: 95.45 % within two standard uncertainties; growing the covariance by χ²/freedom only adds to
  // it.
  void the_stated_knowledge_holds_the_truth_as_often_as_it_should() {
    std::mt19937_64 random(7);
    int held = 0;
    const int runs = 1000;
    for (int i = 0; i < runs; ++i) {
      const auto fit = fitCrossedCoil(taken(kCoil, kBox, 0.5, random));
      const double off = (deflection(fit->movement, ohms(85)) - deflection(kCoil, ohms(85))).degrees;
      held += std::abs(off) <= 2 * fit->knowledge(ohms(85)) ? 1 : 0;
    }
    QVERIFY2(held > 0.935 * runs && held < 0.99 * runs, qPrintable(QString::number(held)));
  }

  void points_on_a_stop_are_left_out_but_must_agree() {
    auto readings = exact(kCoil, {60, 100, 150, 220});
    readings.push_back({ohms(0), {30}, 0.5, Rests::onRightStop});  // the law says 55: past it
    readings.push_back({ohms(kOpen), {-40}, 0.5, Rests::onLeftStop});
    const auto fit = fitCrossedCoil(readings);
    QVERIFY(fit.has_value());
    QCOMPARE(fit->onStops, std::size_t(2));
    QCOMPARE(fit->freedom, 1);
    QVERIFY(!finds(*fit, "stop-contradicts-fit"));
    QVERIFY(near(inOhms(std::get<CrossedCoil>(fit->movement).half), 88, 1e-6));
  }

  void a_stop_reached_where_the_law_would_not_take_the_needle_is_found() {
    auto readings = exact(kCoil);
    readings.push_back({ohms(90), {60}, 0.5, Rests::onRightStop});  // by the law it stands near 2° there
    const auto fit = fitCrossedCoil(readings);
    QVERIFY(fit.has_value());
    QVERIFY(finds(*fit, "stop-contradicts-fit"));
  }

  void readings_that_scatter_more_than_they_say_are_found_and_the_worst_is_named() {
    auto readings = exact(kCoil);
    readings[4].needle.degrees += 8;
    const auto fit = fitCrossedCoil(readings);
    QVERIFY(fit.has_value());
    QVERIFY(finds(*fit, "readings-scatter"));
    QVERIFY(fit->findings.front().sentence.find("100 Ω") != std::string::npos);
    QVERIFY(fit->knowledge(ohms(85)) > 2 * fitCrossedCoil(exact(kCoil))->knowledge(ohms(85)));
  }

  void bench_points_go_through_the_readings_and_leave_the_stops_out() {
    auto readings = exact(kCoil);
    readings.push_back(readings[2]);
    readings.back().needle.degrees += 1;
    readings.push_back({ohms(2), {50}, 0.5, Rests::onRightStop});
    readings.push_back({ohms(kOpen), deflection(kCoil, ohms(kOpen)), 0.5, Rests::free});
    const auto bench = benchPointsOf(readings);
    QVERIFY(bench.has_value());
    QCOMPARE(bench->points.size(), kBox.size() + 1);
    QCOMPARE(bench->points.back().first, 1.0);
    QVERIFY(std::abs((deflection(*bench, ohms(47)) - deflection(kCoil, ohms(47))).degrees - 0.5) <
            1e-9);  // the mean of two
    QVERIFY(std::abs((deflection(*bench, ohms(330)) - deflection(kCoil, ohms(330))).degrees) < 1e-9);
  }

  void readings_that_do_not_carry_a_movement_are_refused() {
    QCOMPARE(code(fitCrossedCoil({})), std::string("readings-too-few"));
    QCOMPARE(code(fitCrossedCoil(exact(kCoil, {30, 90}))), std::string("readings-too-few"));
    QCOMPARE(code(fitCrossedCoil(exact(kCoil, {30, 90, 90, 30}))), std::string("readings-too-few"));
    auto stopped = exact(kCoil, {30, 90, 300});
    stopped[0].rests = Rests::onRightStop;
    QCOMPARE(code(fitCrossedCoil(stopped)), std::string("readings-too-few"));
    QCOMPARE(code(fitCrossedCoil(exact(kCoil, {85, 86, 87, 88}))), std::string("readings-too-close"));
    QCOMPARE(code(fitBimetal(exact(kBimetal, {13, 13.2, 13.4}), volts(5))), std::string("readings-too-close"));
    QCOMPARE(code(fitCrossedCoil(exact(kCoil, {-5, 90, 300}))), std::string("reading-no-number"));
    auto certain = exact(kCoil);
    certain[1].uncertainty = 0;
    QCOMPARE(code(fitCrossedCoil(certain)), std::string("reading-uncertainty"));
    QCOMPARE(code(fitBimetal(exact(kBimetal), volts(0))), std::string("movement-out-of-range"));
    QCOMPARE(benchPointsOf(exact(kCoil, {30, 90, 300})).error().code, std::string("readings-too-few"));
    auto toAndFro = exact(kCoil);
    std::swap(toAndFro[3].needle, toAndFro[4].needle);
    QCOMPARE(benchPointsOf(toAndFro).error().code, std::string("movement-out-of-range"));
  }
};

QTEST_APPLESS_MAIN(TestFitMovement)
#include "tst_fit_movement.moc"
