#include <ceres/ceres.h>
#include <curve/fit.h>

#include <QTest>
#include <cmath>
#include <random>

/// The robust fit against the full Ceres Solver (another method: trust region on the loss itself, no reweighting),
/// which is linked here only. Uncertainties are stated larger than the noise, so that the biweight's scale is
/// exactly 1.
using namespace ohmkin;
using namespace ohmkin::curve;

namespace {

constexpr double kTukeyWidth = 4.685;

struct BetaResidual {
  double t, ln, u;
  template <class T>
  bool operator()(const T* p, T* r) const {
    r[0] = (p[0] + p[1] * 1000.0 * (1 / t - 1 / 340.0) - ln) / u;
    return true;
  }
};
struct ExponentialResidual {
  double t, ln, u;
  template <class T>
  bool operator()(const T* p, T* r) const {
    r[0] = (p[0] + p[1] * (t - 340) / (1.0 + p[2] * (t - 340)) - ln) / u;
    return true;
  }
};
struct SteinhartHartResidual {
  double t, ln, u;  // u in kelvin
  template <class T>
  bool operator()(const T* p, T* r) const {
    r[0] = ((p[0] + p[1] * ln + p[2] * ln * ln * ln) * 1e-3 - 1 / t) / (u / (t * t));
    return true;
  }
};

template <class Residual>
std::array<double, 3> byCeres(const std::vector<Sample>& samples, std::array<double, 3> p, int parameters) {
  ceres::Problem problem;
  for (const Sample& s : samples) {
    auto* residual = new Residual{inKelvin(s.at), std::log(inOhms(s.ohms)), s.uKelvin > 0 ? s.uKelvin : s.uLnOhms};
    ceres::CostFunction* cost =
        parameters == 2 ? static_cast<ceres::CostFunction*>(new ceres::AutoDiffCostFunction<BetaResidual, 1, 2>(
                              new BetaResidual{residual->t, residual->ln, residual->u}))
                        : new ceres::AutoDiffCostFunction<Residual, 1, 3>(new Residual(*residual));
    delete residual;
    problem.AddResidualBlock(cost, new ceres::TukeyLoss(kTukeyWidth), p.data());
  }
  ceres::Solver::Options options;
  options.linear_solver_type = ceres::DENSE_QR;
  options.max_num_iterations = 500;
  options.function_tolerance = 1e-16;
  options.parameter_tolerance = 1e-14;
  options.gradient_tolerance = 1e-16;
  options.logging_type = ceres::SILENT;
  ceres::Solver::Summary summary;
  ceres::Solve(options, &problem, &summary);
  return p;
}

std::vector<Sample> spoiled(const Curve& truth, bool bath, unsigned seed) {
  std::mt19937_64 random(seed);
  std::normal_distribution<double> normal;
  std::vector<Sample> out;
  for (int i = 0; i < 16; ++i) {
    const double t = 293.15 + 6 * i;
    const double noise = 0.001 * normal(random) + (i % 7 == 3 ? 0.08 * (i % 2 == 0 ? 1 : -1) : 0);
    out.push_back(
        {kelvin(t), ohms(std::exp(truth.lnOhms(t) + noise)), Direction::heating, bath ? 0.1 : 0, bath ? 0 : 0.002});
  }
  return out;
}

}  // namespace

class TestRobust : public QObject {
  Q_OBJECT

 private slots:
  void tukeysMinimumIsCeres_data() {
    QTest::addColumn<int>("form");
    for (const Form form : {Form::beta, Form::exponential, Form::steinhartHart3})
      QTest::newRow(std::string(formName(form)).c_str()) << static_cast<int>(form);
  }
  void tukeysMinimumIsCeres() {
    QFETCH(int, form);
    for (unsigned seed = 1; seed <= 20; ++seed) {
      const TemperatureSpan span{celsius(20), celsius(110)};
      const Form f = static_cast<Form>(form);
      const auto truth = f == Form::beta          ? Curve::make(Beta{ohms(300), celsius(40), 3600}, span)
                         : f == Form::exponential ? Curve::make(Exponential{0.05, 2100, -70}, span)
                                                  : Curve::make(SteinhartHart{{9.5e-4, 2.2e-4, 6e-7, 0}, 3}, span);
      QVERIFY(truth);
      const std::vector<Sample> samples = spoiled(*truth, f == Form::steinhartHart3, seed);
      const auto fitted = fit(samples, {f});
      QVERIFY(fitted);
      QCOMPARE(fitted->outliers.size(), std::size_t{2});
      // Ceres starts from the truth's neighbourhood, since a redescending loss has other minima
      std::array<double, 3> p{};
      std::function<double(double)> ln;
      if (f == Form::beta) {
        p = byCeres<BetaResidual>(samples, {truth->lnOhms(340), 3.6, 0}, 2);
        ln = [&p](double t) { return p[0] + p[1] * 1000 * (1 / t - 1 / 340.0); };
      } else if (f == Form::exponential) {
        const double gamma = 1 / (340.0 - 70);
        p = byCeres<ExponentialResidual>(samples, {truth->lnOhms(340), -2100 * gamma * gamma, gamma}, 3);
        ln = [&p](double t) { return p[0] + p[1] * (t - 340) / (1 + p[2] * (t - 340)); };
      } else {
        p = byCeres<SteinhartHartResidual>(samples, {0.95, 0.22, 6e-4}, 3);
        const auto curve = Curve::make(SteinhartHart{{p[0] * 1e-3, p[1] * 1e-3, p[2] * 1e-3, 0}, 3}, span);
        QVERIFY(curve);
        ln = [curve](double t) { return curve->lnOhms(t); };
      }
      for (double t = 295; t < 383; t += 8)
        QVERIFY2(std::abs(fitted->curve.lnOhms(t) - ln(t)) < 1e-7,
                 qPrintable(QString::number(fitted->curve.lnOhms(t) - ln(t))));
    }
  }
};

QTEST_APPLESS_MAIN(TestRobust)
#include "tst_robust.moc"
